import type { CoolingPart, Machine } from '../machine/parts.ts'
import { coolantViscosity } from '../reference/coolants.ts'
import type { Held } from './model.ts'

/** The coolant's round, as far as it stays the same. */
export interface CircuitModel {
  /** V̇ at the temperature of its test, m³/s, and the viscosity there. */
  readonly flow: number
  readonly testViscosity: number
  readonly viscosityAt: (temperature: number) => number
  /** ρ c_p, J/(m³·K). */
  readonly volumetricHeat: number
  /** J/K of all coolant. */
  readonly tankCapacity: number
  /** m³/s at which the jacket was measured; null where it is laminar. */
  readonly testFlow: number | null
  /** UA and the heat capacity rate of its air, W/K; null: unlimited. */
  readonly radiator: number
  readonly airCapacity: number | null
}

/** Where heat is stored and what it passes; null: that node stays as it was and its heat goes on at once. */
export interface HeatModel {
  /** Winding and case apart, or one node that is called winding. */
  readonly twoNodes: boolean
  readonly winding: Lump | null
  /** Of the two; always null with one node. */
  readonly case: Lump | null
  readonly controller: Lump | null
  /** J/K of the cells, and K/W to the air; Infinity: none leaves. */
  readonly pack: Lump
  readonly circuit: CircuitModel | null
}

/** A node and the resistance behind it. */
interface Lump {
  /** J/K. */
  readonly capacity: number
  /** K/W. */
  readonly resistance: number
}

const lump = (capacity: number | null, resistance: number | null): Lump | null =>
  capacity === null || resistance === null ? null : { capacity, resistance }

/** Works out which temperatures are followed. */
export function heatModelOf(machine: Machine, held: Held): HeatModel {
  const { motor, controller, pack, cooling } = machine
  const twoNodes = motor.windingToCase !== null && motor.caseToSink !== null
  return {
    twoNodes,
    winding: twoNodes
      ? lump(motor.windingHeatCapacity, motor.windingToCase)
      : lump(motor.heatCapacity, motor.thermalResistance),
    case: twoNodes ? lump(motor.caseHeatCapacity, motor.caseToSink) : null,
    controller: lump(controller.heatCapacity, controller.thermalResistance),
    pack: { capacity: pack.heatCapacity, resistance: pack.thermalResistance ?? Infinity },
    circuit: cooling === null ? null : circuitModelOf(cooling, held),
  }
}

function circuitModelOf(cooling: CoolingPart, held: Held): CircuitModel {
  const { coolant, flow, density, specificHeat, volume, radiator, airCapacity, testFlow } = cooling
  const testViscosity = coolantViscosity(coolant, cooling.flowTestTemperature)
  const volumetricHeat = density * specificHeat
  return {
    flow,
    testViscosity,
    viscosityAt: held.flow === true ? () => testViscosity : (celsius) => coolantViscosity(coolant, celsius),
    volumetricHeat,
    tankCapacity: volumetricHeat * volume,
    testFlow,
    radiator,
    airCapacity,
  }
}
