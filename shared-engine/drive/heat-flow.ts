import { inletResistance, jacketFactor, radiatorConductance } from '../heat/stream.ts'
import { place } from './drive.ts'
import type { CircuitModel, HeatModel } from './heat-model.ts'

/** Heat made at an instant, W: of one motor, one controller, and of the cells. */
interface HeatMade {
  readonly copper: number
  readonly iron: number
  readonly controller: number
  readonly cells: number
}

/**
 * How fast each temperature changes.
 *
 * C_w Ṫ_w = copper − (T_w − T_c)/R_wc;  C_c Ṫ_c = iron + (T_w − T_c)/R_wc − (T_c − T_1)/R′ (one node: both in one);
 * C_e Ṫ_e = loss − (T_e − T_2)/R′;  ρ c_p V Ṫ_1 = M (Q_m + Q_e) − q;  C_p Ṫ_p = cells − (T_p − T_air)/R.
 *
 * *Source:* heat balances of lumps; `docs/model.md` §7.
 */
export function setHeatSlopes(
  slope: Float64Array,
  heat: HeatModel,
  state: Float64Array,
  made: HeatMade,
  count: number,
  airTemperature: number,
): void {
  const { circuit } = heat
  const feed = circuit === null ? airTemperature : (state[place.coolant] as number)
  const flow = circuit === null ? 0 : flowAt(circuit, feed)
  const capacityRate = circuit === null ? Infinity : circuit.volumetricHeat * flow
  const shared = capacityRate / count
  const factor = circuit === null || !heat.twoNodes ? 1 : jacketFactor(circuit.testFlow, flow)
  const jacket = heat.twoNodes ? heat.case : heat.winding
  const wall =
    circuit === null || jacket === null
      ? jacket?.resistance
      : inletResistance(jacket.resistance * factor, shared)
  const fromMotor = setMotorSlopes(slope, heat, state, made, feed, wall ?? NaN)
  const second = feed + (count * fromMotor) / capacityRate
  const { controller } = heat
  let fromController = made.controller
  slope[place.controller] = 0
  if (controller !== null) {
    const plate = circuit === null ? controller.resistance : inletResistance(controller.resistance, shared)
    fromController = ((state[place.controller] as number) - second) / plate
    slope[place.controller] = (made.controller - fromController) / controller.capacity
  }
  const toCircuit = count * (fromMotor + fromController)
  let toAir = toCircuit
  slope[place.coolant] = 0
  if (circuit !== null) {
    const hot = second + (count * fromController) / capacityRate
    toAir = radiatorConductance(circuit.radiator, circuit.airCapacity, capacityRate) * (hot - airTemperature)
    slope[place.coolant] = (toCircuit - toAir) / circuit.tankCapacity
  }
  const packWarmth = (state[place.packTemperature] as number) - airTemperature
  const fromPack = packWarmth / heat.pack.resistance
  slope[place.packTemperature] = (made.cells - fromPack) / heat.pack.capacity
  slope[place.heatMade] = count * (made.copper + made.iron + made.controller) + made.cells
  slope[place.heatToAir] = toAir + fromPack
}

/** Winding and case; gives the heat of one motor into its sink, W. */
function setMotorSlopes(
  slope: Float64Array,
  heat: HeatModel,
  state: Float64Array,
  made: HeatMade,
  feed: number,
  wall: number,
): number {
  const winding = state[place.winding] as number
  slope[place.winding] = slope[place.case] = 0
  if (!heat.twoNodes) {
    const made1 = made.copper + made.iron
    if (heat.winding === null) return made1
    const out = (winding - feed) / wall
    slope[place.winding] = (made1 - out) / heat.winding.capacity
    return out
  }
  const shell = state[place.case] as number
  let toCase = made.copper
  if (heat.winding !== null) {
    toCase = (winding - shell) / heat.winding.resistance
    slope[place.winding] = (made.copper - toCase) / heat.winding.capacity
  }
  if (heat.case === null) return toCase + made.iron
  const out = (shell - feed) / wall
  slope[place.case] = (made.iron + toCase - out) / heat.case.capacity
  return out
}

/**
 * Flow of the coolant as it thickens.
 *
 * V̇ min(1, μ(T_test)/μ(T)).
 *
 * *Source:* Hagen-Poiseuille: the same pump pressure through laminar passages.
 */
function flowAt(circuit: CircuitModel, temperature: number): number {
  return circuit.flow * Math.min(1, circuit.testViscosity / circuit.viscosityAt(temperature))
}
