import { mapped } from '../mapped.ts'
import { fullTurn } from '../../constants.ts'
import type { LimitId } from '../../limits/id.ts'
import type { LimitRow } from '../../limits/ledger.ts'
import { angularSpeedOf } from '../../units/rpm.ts'
import { currentsOf } from '../derive/current.ts'
import { loadCourseOf, type LoadCourse } from '../derive/load-course.ts'
import type { Episode } from '../episodes/episode.ts'
import { trackOnUntil } from '../facts/facts.ts'
import type { ReadLog } from '../read.ts'
import { basquinLives } from './miner.ts'
import { eachCycle } from './rainflow.ts'
import type { InPieces } from '../pieces.ts'

/** Part of its life that a run took of something. */
export interface LifeUsed {
  /** Limit that says what it bears once. */
  readonly limit: LimitId
  /** One pass a turn of a tooth, or cycles of a load that goes up and down. */
  readonly by: 'passes' | 'cycles'
  readonly count: number
  /** D of Miner's rule: 1 is its whole life. */
  readonly used: number
  /** Largest load over what it bears for long. */
  readonly most: number
}

/** Lives at the two ends of a straight line in logarithms. *Source:* Shigley, as in miner.ts: f S_ut at 1e3, lasting at 1e6. */
const [fewCycles, manyCycles] = [1e3, 1e6]
/** f: part of what breaks once that is borne a thousand times. *Source:* Shigley, from memory. */
const thousandfold = 0.9

/** What something bears a few times and for long, and the stress that one unit of load puts on it; Pa, or N of a loop. */
interface Strength {
  readonly limit: LimitId
  readonly once: number
  readonly lasting: number
  readonly perLoad: number
}

/** Loads of a run at its samples, with the turns that the motor makes for each. */
interface Course extends LoadCourse {
  /** rad of the motor. */
  readonly turned: Float64Array
}

function courseOf(log: ReadLog, episodes: readonly Episode[]): Course | null {
  const { data, model } = log
  const rpm = data.channels.get('rpm')
  const currents = currentsOf(data, model)
  if (rpm === undefined || currents.source === null) return null
  const { t, segmentOf } = data.timeline
  const { samples, values, reach } = rpm
  const turned = mapped(samples, (row, place) => {
    const next = samples[place + 1] ?? row
    const seconds = segmentOf[next] === segmentOf[row] ? (t[next] ?? 0) - (t[row] ?? 0) : 0
    return seconds > reach ? NaN : angularSpeedOf(values[row] ?? NaN) * seconds
  })
  return { ...loadCourseOf(log, currents, trackOnUntil(episodes)), turned }
}

const livesOf = (strength: Strength) =>
  basquinLives({
    first: [thousandfold * strength.once, fewCycles],
    second: [strength.lasting, manyCycles],
    // No endurance limit is counted on: plastics, rubber and light metals have none.
    endurance: 0,
  })

/** One pass a turn: each pass bears what the moment of it bears. */
function byPasses(
  strength: Strength,
  load: Float64Array,
  turned: Float64Array,
  turnsPerPass: number,
): LifeUsed {
  let [count, most, used] = [0, 0, 0]
  const lifeAt = livesOf(strength)
  for (let at = 0; at < load.length; at += 1) {
    const value = load[at] ?? NaN
    const passes = (turned[at] ?? NaN) / fullTurn / turnsPerPass
    if (!(passes > 0) || !Number.isFinite(value)) continue
    const stress = Math.max(0, value) * strength.perLoad
    count += passes
    most = Math.max(most, stress / strength.lasting)
    // Miner's sum, added up at once: a long log has a million passes.
    if (stress > 0) used += passes / lifeAt(stress)
  }
  return { limit: strength.limit, by: 'passes', count, used, most }
}

/**
 * Cycles of a load that goes up and down, each with its mean: S = S_a/(1 − S_m/S_u).
 *
 * *Source:* ASTM E1049 for the cycles; Goodman's line for the mean.
 */
function byCycles(strength: Strength, torque: Float64Array): LifeUsed {
  let [whole, most, used] = [0, 0, 0]
  const lifeAt = livesOf(strength)
  eachCycle(torque, (one, two, count) => {
    const share = Math.min(0.99, (Math.abs(one + two) * strength.perLoad) / (2 * strength.once))
    const stress = ((Math.abs(two - one) / 2) * strength.perLoad) / (1 - share)
    whole += count
    if (stress > most * strength.lasting) most = stress / strength.lasting
    // Miner's sum, added up at once.
    if (stress > 0) used += count / lifeAt(stress)
  })
  return { limit: strength.limit, by: 'cycles', count: whole, used, most }
}

/** What a pair of limits says of one thing: what breaks it once, what it bears for long, and its stress for a load. */
function strengthOf(
  rows: readonly LimitRow[],
  once: string,
  lasting: string,
  loadAt: (state: string) => number,
): Strength | null {
  const [first, long] = [rows.find(({ id }) => id === once), rows.find(({ id }) => id === lasting)]
  if (first === undefined || long === undefined) return null
  const perLoad = [long, first]
    .map(({ actual, case: state }) => (actual ?? NaN) / loadAt(state))
    .find((value) => Number.isFinite(value) && value > 0)
  const [breaks, bears] = [first.allowed ?? NaN, long.allowed ?? NaN]
  // Where what is borne for long is hardly less than what breaks, there is no line between the two.
  if (perLoad === undefined || !(bears > 0) || !(thousandfold * breaks > bears)) return null
  return { limit: first.id, once: breaks, lasting: bears, perLoad }
}

/**
 * Part of their lives that a run took of drive teeth, gear teeth, loops and shafts. Rough: within a factor of ten either way
 * is usual.
 *
 * Teeth and loops come round: one pass a turn. Shafts twist with the torque: its cycles by rainflow counting. Lives from
 * what breaks once (0.9 of it a thousand times) and what is borne for long (a million times), damage by Miner's rule.
 *
 * @returns those whose strengths the build gives; none without a current
 * *Source:* ASTM E1049-85 (2017), 5.4.4; Palmgren and Miner; Basquin; Shigley for the two points.
 */
export function* lifeUsedOf(log: ReadLog, episodes: readonly Episode[]): InPieces<readonly LifeUsed[]> {
  const course = courseOf(log, episodes)
  if (course === null) return []
  yield
  const { machine, checked } = log.model
  const { limits, evaluation } = checked
  const { track, train, stages } = machine
  const toothAt = (state: string) =>
    state === 'launch'
      ? evaluation.launchLoad.toothForce
      : state === 'top'
        ? evaluation.topLoad.toothForce
        : NaN
  const torqueAt = (state: string) => (state === 'launch' ? evaluation.launchTorque : NaN)
  // One turn of the loop is so many of the motor.
  const turnsOfLoop = (track.length / track.advance) * train.ratio
  const lives: LifeUsed[] = []
  for (const what of ['shear', 'bending', 'bearing']) {
    const tooth = strengthOf(limits, `track.tooth-${what}`, `track.tooth-${what}-lasts`, toothAt)
    if (tooth === null) continue
    lives.push(byPasses(tooth, course.tooth, course.turned, turnsOfLoop))
    yield
  }
  const loop = strengthOf(limits, 'track.tension', 'track.tension-lasts', () => 1)
  if (loop !== null) lives.push(byPasses({ ...loop, perLoad: 1 }, course.tension, course.turned, turnsOfLoop))
  yield
  let ratio = 1
  for (const [at, stage] of stages.entries()) {
    const id = `stage.${at + 1}`
    const before = ratio
    ratio *= stage.ratio
    const root = strengthOf(limits, `${id}.bending`, `${id}.bending-lasts`, torqueAt)
    // The driver turns fastest: its teeth are in mesh most often.
    if (root !== null) lives.push(byPasses(root, course.torque, course.turned, before))
    yield
    const { shaft } = stage
    const row = limits.find((one) => one.id === `${id}.shaft`)
    const perLoad = (row?.actual ?? NaN) / torqueAt(row?.case ?? '')
    if (row === undefined || shaft === null || !Number.isFinite(perLoad) || !(perLoad > 0)) continue
    const twisted = {
      limit: row.id,
      once: shaft.material.tensile,
      lasting: shaft.material.endurance,
      perLoad,
    }
    lives.push(byCycles(twisted, course.torque))
    yield
  }
  return lives.toSorted((one, other) => other.used - one.used)
}
