import { angularSpeedOf } from '../../units/rpm.ts'
import type { Channel } from '../channel.ts'
import { currentsOf } from '../derive/current.ts'
import { loadCourseOf, type LoadCourse } from '../derive/load-course.ts'
import type { Episode } from '../episodes/episode.ts'
import { trackOnUntil } from '../facts/facts.ts'
import { mapped } from '../mapped.ts'
import type { ReadLog } from '../read.ts'

/** What a run loads its machine with, by place among its rpm samples; NaN where it is not known, or the load is gone. */
export interface Course extends LoadCourse {
  readonly rpm: Channel
  /** rad/s of the motor, whichever way it turns. */
  readonly speed: Float64Array
  /** s in each segment up to which the track was on. */
  readonly until: (segment: number) => number
}

/** Loads and speed of a run; null without an rpm or a current. */
export function courseOf(log: ReadLog, episodes: readonly Episode[]): Course | null {
  const { data, model } = log
  const rpm = data.channels.get('rpm')
  const currents = currentsOf(data, model)
  if (rpm === undefined || currents.source === null) return null
  const until = trackOnUntil(episodes)
  const speed = mapped(rpm.samples, (row) => Math.abs(angularSpeedOf(rpm.values[row] ?? NaN)))
  return { ...loadCourseOf(log, currents, until), rpm, speed, until }
}

/** N·m that a motor's torque is behind some stages: where the track drives the motor, losses count the other way. */
export function through(torque: number, ratio: number, efficiency: number): number {
  return torque * ratio * (torque < 0 ? 1 / efficiency : efficiency)
}
