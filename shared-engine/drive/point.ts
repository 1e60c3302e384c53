import { DriveLine, noLoadAmpsAt, setDriveLine } from '../motor/drive-line.ts'
import { accessoryAmpsOf } from '../pack/accessories.ts'
import { openCircuitVolts } from '../reference/chemistry.ts'
import { internalDragAt } from '../track/drag.ts'
import { driverTime, place } from './drive.ts'
import type { DriveSetting, SettledRow } from './setting.ts'
import { dutyOf, setAskedTraction, setThrottleTraction, type Traction } from './traction.ts'
import { setThrustLine, ThrustLine } from '../vehicle/thrust-line.ts'

/** Everything at one instant of a drive; filled again and again. */
export class DrivePoint {
  readonly drive = new DriveLine()
  readonly line = new ThrustLine()
  readonly traction: Traction = { thrust: 0, beltSpeed: 0, amps: 0 }
  /** 0 to 1. */
  charge = 0
  openVolts = 0
  accessoryAmps = 0
  packAmps = 0
  packVolts = 0
  duty = 0
  /** rad/s. */
  motorSpeed = 0
  /** m/s, not negative. */
  speed = 0
  /** R(v), N. */
  resistance = 0
  /** N left to speed up: at rest, whether it sets off. */
  surplus = 0
}

const coasting: Traction = { thrust: 0, beltSpeed: 0, amps: 0 }
const coastDrive = new DriveLine()
const coastLine = new ThrustLine()

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
  const { pack, accessories, controller } = machine
  const { ask } = settled.row
  point.speed = Math.max(0, state[place.speed] ?? 0)
  point.charge = pack.stateOfCharge - (state[place.chargeDrawn] ?? 0) / pack.capacity
  point.openVolts = pack.series * openCircuitVolts(setting.chemistry, point.charge)
  point.accessoryAmps = accessoryAmpsOf(accessories.power, point.openVolts, pack.resistance)
  const volts = point.openVolts - point.accessoryAmps * pack.resistance
  const winding = state[place.winding] ?? 0
  const duty =
    'throttle' in ask
      ? Math.min(ask.throttle, controller.throttleCap)
      : ask.speed > 0
        ? controller.throttleCap
        : 0
  setDriveLine(point.drive, machine, volts, winding, duty)
  setThrustLine(point.line, machine, point.drive)
  setThrottleTraction(point.traction, setting, settled, point.drive, point.line, point.speed)
  point.resistance = settled.footing.standingResistance + setting.airDragFactor * point.speed * point.speed
  if ('speed' in ask && ask.speed > 0) holdSpeed(point, setting, settled, volts, winding, ask.speed)
  const { traction } = point
  point.surplus = traction.thrust - point.resistance
  point.motorSpeed = traction.beltSpeed * point.line.motorPerBelt
  point.duty = dutyOf(point.drive, point.line, traction)
  point.packAmps = point.drive.count * point.duty * traction.amps + point.accessoryAmps
  point.packVolts = point.openVolts - point.packAmps * pack.resistance
}

/** Less than full throttle where that is enough. */
function holdSpeed(
  point: DrivePoint,
  setting: DriveSetting,
  settled: SettledRow,
  volts: number,
  winding: number,
  wanted: number,
): void {
  const { traction, drive, line, speed } = point
  const asked = point.resistance + (setting.mass * (wanted - speed)) / driverTime
  if (asked >= traction.thrust) return
  setDriveLine(coastDrive, setting.machine, volts, winding, 0)
  setThrustLine(coastLine, setting.machine, coastDrive)
  setThrottleTraction(coasting, setting, settled, coastDrive, coastLine, speed)
  if (asked <= coasting.thrust) Object.assign(traction, coasting)
  else setAskedTraction(traction, setting, settled, drive, line, speed, asked)
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
  const { drive, traction, openVolts, packAmps, accessoryAmps, motorSpeed } = point
  const speed = moving ? point.speed : 0
  const { amps, beltSpeed } = traction
  const thrust = moving ? traction.thrust : Math.max(0, traction.thrust)
  const count = drive.count
  const noLoad = noLoadAmpsAt(drive, motorSpeed)
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
