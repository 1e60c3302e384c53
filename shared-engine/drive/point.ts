import { resistanceAt } from '../ground/resistance.ts'
import { openCircuitVolts } from '../reference/chemistry.ts'
import { internalDragAt } from '../track/drag.ts'
import { Propulsion, setPropulsion } from '../vehicle/propulsion.ts'
import { StateAtSpeed } from '../vehicle/state-at-speed.ts'
import { driverTime, place } from './drive.ts'
import type { DriveSetting, SettledRow } from './setting.ts'
import { setAskedTraction, setThrottleTraction } from './traction.ts'

/** Everything at one instant of a drive; filled again and again. */
export class DrivePoint {
  readonly propulsion = new Propulsion()
  /** Of this instant; its ground speed is not negative, its motors feed nothing back. */
  readonly state = new StateAtSpeed()
  /** 0 to 1. */
  charge = 0
  /** A with accessories. */
  packAmps = 0
  packVolts = 0
  /** R(v), N. */
  resistance = 0
  /** N left to speed up: at rest, whether it sets off. */
  surplus = 0
}

const coasting = new Propulsion()
const coastingState = new StateAtSpeed()

/**
 * Fills a point from the state of a drive.
 *
 * V_0 = V_oc(charge) − I_a R_b, I_a from the accessories' power at that V_oc;  K_t and R_m at the winding's temperature.
 * A throttle row asks for its duty. A speed row asks for the thrust R(v) + m_e (v* − v)/τ, τ = 1 s [assumption], held
 * between coasting and full throttle; a speed row of 0 coasts to a stop. Nothing is fed back, and no brake acts but at rest,
 * where the machine does not roll back [assumption].
 */
export function setDrivePoint(
  point: DrivePoint,
  setting: DriveSetting,
  settled: SettledRow,
  state: Float64Array,
): void {
  const { machine } = setting
  const { pack, controller } = machine
  const { propulsion } = point
  const { ask } = settled.row
  const speed = Math.max(0, state[place.speed] ?? 0)
  point.charge = pack.stateOfCharge - (state[place.chargeDrawn] ?? 0) / pack.capacity
  const openVolts = pack.series * openCircuitVolts(setting.chemistry, point.charge)
  const winding = state[place.winding] ?? 0
  const duty =
    'throttle' in ask
      ? Math.min(ask.throttle, controller.throttleCap)
      : ask.speed > 0
        ? controller.throttleCap
        : 0
  setPropulsion(propulsion, machine, openVolts, winding, duty)
  setThrottleTraction(point.state, setting, settled, propulsion, speed)
  point.resistance = resistanceAt(settled.footing, setting.airDragFactor, speed)
  if ('speed' in ask && ask.speed > 0) holdSpeed(point, setting, settled, winding, ask.speed)
  point.surplus = point.state.thrust - point.resistance
  point.packAmps = point.state.packDriveAmps + propulsion.accessoryAmps
  point.packVolts = openVolts - point.packAmps * pack.resistance
}

/** Less than full throttle where that is enough. */
function holdSpeed(
  point: DrivePoint,
  setting: DriveSetting,
  settled: SettledRow,
  winding: number,
  wanted: number,
): void {
  const { state, propulsion, resistance } = point
  const speed = state.groundSpeed
  const asked = resistance + (setting.mass * (wanted - speed)) / driverTime
  if (asked >= state.thrust) return
  setPropulsion(coasting, setting.machine, propulsion.openVolts, winding, 0)
  setThrottleTraction(coastingState, setting, settled, coasting, speed)
  if (asked <= coastingState.thrust) Object.assign(state, coastingState)
  else setAskedTraction(state, setting, settled, propulsion, speed, asked)
}

/** Writes how fast each state changes; at rest the machine stays where it is. */
export function setDriveSlopes(
  slope: Float64Array,
  point: DrivePoint,
  setting: DriveSetting,
  settled: SettledRow,
  state: Float64Array,
  moving: boolean,
): void {
  const { machine } = setting
  const { packAmps } = point
  const { drive, openVolts, accessoryAmps } = point.propulsion
  const { motorAmps: amps, noLoadAmps: noLoad, motorSpeed, beltSpeed } = point.state
  const speed = moving ? point.state.groundSpeed : 0
  const thrust = moving ? point.state.thrust : Math.max(0, point.state.thrust)
  const count = drive.count
  const drag = internalDragAt(machine.track, beltSpeed) * beltSpeed
  const shaft = count * drive.torqueConstant * (amps - noLoad) * motorSpeed
  const copper = amps * amps * drive.motorResistance
  const controller = amps * amps * machine.controller.resistance
  const iron = motorSpeed * drive.torqueConstant * noLoad
  slope[place.chargeDrawn] = packAmps
  slope[place.speed] = moving ? point.surplus / setting.mass : 0
  slope[place.distance] = speed
  slope[place.packEnergy] = openVolts * packAmps
  slope[place.packLoss] = packAmps * packAmps * machine.pack.resistance
  slope[place.accessories] = point.packVolts * accessoryAmps
  slope[place.copper] = count * copper
  slope[place.controllerLoss] = count * controller
  slope[place.iron] = count * iron
  slope[place.stages] = shaft - thrust * beltSpeed - drag
  slope[place.trackDrag] = drag
  slope[place.slip] = thrust * (beltSpeed - speed)
  slope[place.ground] = settled.footing.groundResistance * speed
  slope[place.air] = setting.airDragFactor * speed ** 3
  slope[place.climb] = settled.slopeForce * speed
  slope[place.tow] = machine.vehicle.towForce * speed
  slope[place.motorAmpsSquared] = amps * amps
  slope[place.packAmpsSquared] = packAmps * packAmps
  setHeatSlopes(slope, setting, state, copper + iron, controller)
}

/**
 * Heat of one motor and its controller, and of the coolant.
 *
 * C_m dT_w/dt = P_fe + I² R_m(T_w) − (T_w − T_s)/R_m,th;  C_e dT_e/dt = I² R_esc − (T_e − T_s)/R_e,th;
 * T_s = T_air, or the coolant's: C_c dT_c/dt = M (q_m + q_e) − UA (T_c − T_air), C_c = ρ c_p V̇ · 20 s [assumption].
 * What has no heat capacity or no thermal resistance keeps its temperature, and its loss goes to the sink at once.
 *
 * @param motorHeat, controllerHeat W of one motor and one controller
 * *Source:* `docs/model.md` §7, heat balances of lumps.
 */
function setHeatSlopes(
  slope: Float64Array,
  setting: DriveSetting,
  state: Float64Array,
  motorHeat: number,
  controllerHeat: number,
): void {
  const { machine, followsWinding, followsController, coolantCapacity } = setting
  const { motor, controller, cooling, ground } = machine
  const sink = cooling === null ? ground.airTemperature : (state[place.coolant] ?? 0)
  const fromMotor = followsWinding
    ? ((state[place.winding] ?? 0) - sink) / (motor.thermalResistance ?? 1)
    : motorHeat
  const fromController = followsController
    ? ((state[place.controller] ?? 0) - sink) / (controller.thermalResistance ?? 1)
    : controllerHeat
  const toSink = motor.count * (fromMotor + fromController)
  const toAir = cooling === null ? toSink : cooling.radiator * (sink - ground.airTemperature)
  slope[place.winding] = followsWinding ? (motorHeat - fromMotor) / (motor.heatCapacity ?? 1) : 0
  slope[place.controller] = followsController
    ? (controllerHeat - fromController) / (controller.heatCapacity ?? 1)
    : 0
  slope[place.coolant] = cooling === null ? 0 : (toSink - toAir) / coolantCapacity
  slope[place.heatMade] = motor.count * (motorHeat + controllerHeat)
  slope[place.heatToAir] = toAir
}
