import { controllerLossAt } from '../motor/controller-loss.ts'
import { windingResistanceAt } from '../motor/constants.ts'
import type { DriveLine } from '../motor/drive-line.ts'
import { internalDragAt } from '../track/drag.ts'
import type { Propulsion } from '../vehicle/propulsion.ts'
import { place } from './drive.ts'
import { setHeatSlopes } from './heat-flow.ts'
import type { DriveModel, SettledRow } from './model.ts'
import type { Draw, Moment } from './moment.ts'

/** Means over straight travel and turns, of one motor and of the pack. */
const mean = { copper: 0, iron: 0, controller: 0, cells: 0 }

/**
 * Writes how fast each state changes, from what happens at the instant; means are weighted by the share of turns.
 *
 * *Source:* `docs/model.md` §7; each term is the power of its part.
 */
export function setDriveSlopes(
  slope: Float64Array,
  moment: Moment,
  model: DriveModel,
  row: SettledRow,
  propulsion: Propulsion,
  state: Float64Array,
): void {
  slope.fill(0)
  mean.copper = mean.iron = mean.controller = mean.cells = 0
  const { turnShare } = row
  const winding = windingResistanceAt(model.machine.motor.resistance, state[place.winding] as number)
  addDraw(slope, moment, moment.straight, 1 - turnShare, model, winding, propulsion)
  if (turnShare > 0) addDraw(slope, moment, moment.turn, turnShare, model, winding, propulsion)
  const straight = 1 - turnShare
  const speed = moment.speed * straight
  slope[place.speed] = moment.acceleration
  slope[place.belt] = moment.spinning ? moment.beltAcceleration : 0
  slope[place.distance] = speed
  slope[place.height] = speed * row.ground.sine
  slope[place.turnSeconds] = turnShare
  slope[place.spinSeconds] = moment.spinning ? straight : 0
  addMotion(slope, moment, model, row, propulsion, straight)
  const { motor, ground } = model.machine
  setHeatSlopes(slope, model.heat, state, mean, motor.count, ground.airTemperature)
  if (model.held.charge === true) slope[place.chargeDrawn] = 0
  if (model.held.packTemperature === true) slope[place.packTemperature] = 0
}

/** Electrics of straight travel or of a turn, by its share of the time. */
function addDraw(
  slope: Float64Array,
  moment: Moment,
  draw: Draw,
  share: number,
  { machine }: DriveModel,
  windingResistance: number,
  { drive }: Propulsion,
): void {
  const { controller } = machine
  const { amps, packAmps, packVolts, motorSpeed } = draw
  const { count } = drive
  const squared = share * amps * amps
  const packSquared = share * packAmps * packAmps
  const iron = share * motorSpeed * drive.torqueConstant * draw.noLoadAmps
  add(slope, place.chargeDrawn, share * packAmps)
  add(slope, place.packEnergy, share * moment.openVolts * packAmps)
  add(slope, place.packLoss, packSquared * moment.packResistance)
  add(slope, place.accessories, share * packVolts * moment.accessoryAmps)
  add(slope, place.copper, count * squared * drive.motorResistance)
  add(slope, place.controllerLoss, count * squared * controller.resistance)
  add(slope, place.iron, count * iron)
  add(slope, place.ironOfOne, iron)
  add(slope, place.motorAmpsSquared, squared)
  add(slope, place.packAmpsSquared, packSquared)
  const terminals = count * amps * (motorSpeed * drive.torqueConstant + amps * drive.seriesResistance)
  add(slope, place.capped, share * (terminals - draw.packDriveAmps * packVolts))
  if (amps < 0) add(slope, place.back, -share * draw.packDriveAmps * packVolts)
  mean.copper += squared * windingResistance
  mean.iron += iron
  mean.controller += share * controllerLossAt(controller, amps, packVolts)
  mean.cells += packSquared * moment.cellsResistance
}

function add(slope: Float64Array, at: number, value: number): void {
  slope[at] = (slope[at] as number) + value
}

/** Where the shafts' work goes. */
function addMotion(
  slope: Float64Array,
  moment: Moment,
  model: DriveModel,
  row: SettledRow,
  { drive }: Propulsion,
  straight: number,
): void {
  const { thrust, force, brakeForce, beltSpeed, speed } = moment
  const { machine, airDragFactor } = model
  const { ground } = row
  const drag = internalDragAt(machine.track, beltSpeed) * beltSpeed
  slope[place.stages] = straight * (shaftPower(moment.straight, drive) - force * beltSpeed - drag)
  slope[place.trackDrag] = straight * drag
  slope[place.wheelBrake] = straight * brakeForce * speed
  slope[place.slip] = straight * thrust * (beltSpeed - speed)
  const rotors = (force - thrust) * beltSpeed - brakeForce * speed
  slope[place.rotors] = rotors
  slope[place.ground] = straight * ground.footing.groundResistance * speed
  slope[place.air] = straight * airDragFactor * speed ** 3
  slope[place.climb] = straight * ground.slopeForce * speed
  slope[place.tow] = straight * ground.tow * speed
  // Speed changes through all of the time, though straight travel alone pushes: turns are credited with their part.
  const motion = ground.mass * moment.acceleration * speed + rotors
  slope[place.turns] = row.turnShare > 0 ? row.turnShare * (shaftPower(moment.turn, drive) - motion) : 0
}

/** W at the shafts of all motors. */
function shaftPower(draw: Draw, { count, torqueConstant }: DriveLine): number {
  return count * torqueConstant * (draw.amps - draw.noLoadAmps) * draw.motorSpeed
}
