import { currentsOf } from '../derive/current.ts'
import type { Episode } from '../episodes/episode.ts'
import type { ReadLog } from '../read.ts'
import type { ChannelId } from '../../reference/columns.ts'
import { chargeCourseOf } from './charge-course.ts'
import type { Compared } from './quantity.ts'
import type { Against, ChangesNote } from './result.ts'
import type { Course, Measure, Stretch } from './stretch.ts'

/** A log that was read, with what happened on it. */
export interface ToldRun {
  readonly log: ReadLog
  readonly episodes: readonly Episode[]
}

/** Part of its mean by which the speed of a steady stretch changes at most. *Source:* common practice, no source. */
const steadyPart = 0.2
/** Part of the free belt speed below which a machine stands. */
const standing = 0.03

/** Works out of a run what its stretches are made of. */
export function courseOf({ log, episodes }: ToldRun): Course {
  const currents = currentsOf(log.data, log.model)
  return { log, episodes, currents, charge: chargeCourseOf(log, currents) }
}

/** Whether a log has samples of a channel. */
export function has({ log }: Course, id: ChannelId): boolean {
  return (log.data.channels.get(id)?.samples.length ?? 0) > 0
}

const needs: Readonly<Partial<Record<Measure, readonly ChannelId[]>>> = {
  packAmps: ['amps'],
  consumption: ['amps', 'volts'],
  dutyVolts: ['duty', 'volts'],
  throttleVolts: ['throttle', 'volts'],
  volts: ['volts'],
  motorWarming: ['motorC'],
  controllerWarming: ['controllerC'],
}

/** Whether a log has what a quantity is made of. */
export function hasAll(course: Course, { of, at }: Compared): boolean {
  return [of, at].every((measure) =>
    measure === 'motorAmps' || measure === 'heatAmps'
      ? course.currents.source !== null
      : (needs[measure] ?? []).every((id) => has(course, id)),
  )
}

/** Whether a stretch shows what a quantity asks for: moving, and steadily where that matters. */
export function isUsable(
  { steady, seconds }: Compared,
  { speed, acceleration }: Stretch['means'],
  { log }: Course,
): boolean {
  if (!steady) return true
  return speed >= standing * log.model.freeBeltSpeed && Math.abs(acceleration) * seconds <= steadyPart * speed
}

/** What has to be said beside a comparison. */
export function notesOf(
  against: Against,
  courses: readonly Course[],
  bySensor: boolean,
): readonly ChangesNote[] {
  const found: readonly (readonly [boolean, ChangesNote])[] = [
    [against === 'log', 'other-days'],
    [against === 'build', 'on-the-level'],
    [!bySensor, 'speed-by-rpm'],
    [!courses.every((one) => has(one, 'motorC')), 'no-temperature'],
    [courses.some(({ charge }) => charge.from === null), 'no-charge'],
    [courses.some(({ charge }) => charge.startAssumed), 'charge-assumed'],
    [courses.some(({ currents }) => currents.source === 'sag'), 'amps-by-sag'],
  ]
  return found.flatMap(([holds, note]) => (holds ? [note] : []))
}
