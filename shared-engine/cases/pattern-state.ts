import { RowFootings } from '../ground/row-footings.ts'
import type { Machine } from '../machine/parts.ts'
import { windingResistanceAt } from '../motor/constants.ts'
import { Motion } from '../vehicle/motion.ts'
import { setPropulsion } from '../vehicle/propulsion.ts'
import { setRow } from '../vehicle/pattern-row.ts'
import { type DriveMoment, RowState } from '../vehicle/row-state.ts'

/** A drive pattern as steady rows, and its means over time; SI, of one motor where it says so. */
export class PatternState {
  readonly motion = new Motion()
  readonly throttled = new Motion()
  readonly footings = new RowFootings()
  /** As many as have ever been needed; `count` of them are in use. */
  readonly rows: RowState[] = []
  count = 0
  /** s of a round. */
  seconds = 0
  turnSeconds = 0
  /** A of one motor, RMS. */
  motorAmpsRms = NaN
  /** A of the pack with accessories. */
  packAmpsRms = NaN
  packAmpsMean = NaN
  /** W of one motor and one controller. */
  ironLoss = NaN
  copperLoss = NaN
  controllerLoss = NaN
  /** m/s. */
  speed = NaN
  /** s until the usable charge is drawn, m until then, J/m; NaN where nothing is drawn. */
  life = NaN
  reach = NaN
  energyPerMetre = NaN
}

/**
 * Fills the rows of the build's pattern and their means.
 *
 * I_rms = √(Σ t I²/Σ t), and likewise the others;  life = Q/mean pack amps;  energy per way = V_oc · mean/v.
 *
 * @param topSpeed the build's, m/s; NaN without one
 * *Source:* `docs/model.md` §7: charge half way between full and reserve, service temperatures; acceleration left out.
 */
export function setPattern(state: PatternState, machine: Machine, from: Motion, topSpeed: number): void {
  const { pack, service } = machine
  const { rows } = service.pattern
  const { motion } = state
  setPropulsion(motion, machine, pack.middleVolts, service.windingTemperature, machine.controller.throttleCap)
  motion.airDragFactor = from.airDragFactor
  motion.equivalentMass = from.equivalentMass
  state.count = rows.length
  state.footings.standOn(machine)
  for (let index = 0; index < rows.length; index += 1) {
    const row = rows[index]
    const into = (state.rows[index] ??= new RowState())
    if (row !== undefined) setRow(into, machine, row, motion, state.throttled, state.footings, topSpeed)
  }
  setMeans(state)
  setReach(state, machine)
}

const sums = { ampsSquared: 0, iron: 0, controller: 0, pack: 0, packSquared: 0, way: 0 }

function setMeans(state: PatternState): void {
  sums.ampsSquared = sums.iron = sums.controller = sums.pack = sums.packSquared = sums.way = 0
  let seconds = 0
  let turning = 0
  for (let index = 0; index < state.count; index += 1) {
    const row = state.rows[index]
    if (row === undefined) break
    const straight = row.seconds * (1 - row.turnShare)
    seconds += row.seconds
    addMoment(row.straight, straight)
    sums.way += row.straight.groundSpeed * straight
    if (!(row.turnShare > 0)) continue
    turning += row.seconds * row.turnShare
    addMoment(row.turn, row.seconds * row.turnShare)
  }
  state.seconds = seconds
  state.turnSeconds = turning
  state.motorAmpsRms = Math.sqrt(sums.ampsSquared / seconds)
  state.packAmpsRms = Math.sqrt(sums.packSquared / seconds)
  state.packAmpsMean = sums.pack / seconds
  state.ironLoss = sums.iron / seconds
  state.controllerLoss = sums.controller / seconds
  state.speed = sums.way / seconds
}

function addMoment(moment: DriveMoment, seconds: number): void {
  sums.ampsSquared += moment.motorAmps * moment.motorAmps * seconds
  sums.iron += moment.ironLoss * seconds
  sums.controller += moment.controllerLoss * seconds
  sums.pack += moment.packAmps * seconds
  sums.packSquared += moment.packAmps * moment.packAmps * seconds
}

function setReach(state: PatternState, machine: Machine): void {
  const { pack, motor, service } = machine
  const mean = state.packAmpsMean
  const drawn = mean > 0
  state.copperLoss =
    state.motorAmpsRms *
    state.motorAmpsRms *
    windingResistanceAt(motor.resistance, service.windingTemperature)
  state.life = drawn ? pack.usable / mean : NaN
  state.reach = state.life * state.speed
  state.energyPerMetre = state.speed > 0 ? (pack.middleVolts * mean) / state.speed : NaN
}

/** Mean square of the amps of one motor through a row, and its mean iron and controller losses. */
export function rowAmpsSquared(row: RowState): number {
  const { straight, turn, turnShare } = row
  const along = straight.motorAmps * straight.motorAmps
  return turnShare > 0 ? along + turnShare * (turn.motorAmps * turn.motorAmps - along) : along
}

/** W of one motor's iron through a row. */
export function rowIronLoss({ straight, turn, turnShare }: RowState): number {
  return turnShare > 0
    ? straight.ironLoss + turnShare * (turn.ironLoss - straight.ironLoss)
    : straight.ironLoss
}

/** W of one controller through a row. */
export function rowControllerLoss({ straight, turn, turnShare }: RowState): number {
  const along = straight.controllerLoss
  return turnShare > 0 ? along + turnShare * (turn.controllerLoss - along) : along
}
