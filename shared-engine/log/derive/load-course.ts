import type { ReadLog } from '../read.ts'
import type { Currents } from './current.ts'
import { LoggedLoad, Loads } from './loads.ts'

/** What track and motor bore through a log, by place among its rpm samples; NaN where it is not known, or the load is gone. */
export interface LoadCourse {
  /** N on the most loaded tooth. */
  readonly tooth: Float64Array
  /** N of one loop. */
  readonly tension: Float64Array
  /** N·m of one motor. */
  readonly torque: Float64Array
}

/**
 * Loads at every rpm sample of a log.
 *
 * @param until s of a segment, from 0, up to which the load was there
 * @param aside A at the pack by which the current is taken to be another; 0: as it is
 */
export function loadCourseOf(
  { data, model }: ReadLog,
  currents: Currents,
  until: (segment: number) => number,
  aside = 0,
): LoadCourse {
  const rpm = data.channels.get('rpm')
  const { t, segmentOf } = data.timeline
  const samples = rpm?.samples ?? new Int32Array()
  const loads = new Loads(model)
  const load = new LoggedLoad()
  const filled = () => new Float64Array(samples.length).fill(NaN)
  const course = { tooth: filled(), tension: filled(), torque: filled() }
  for (let place = 0; place < samples.length; place += 1) {
    const row = samples[place] ?? 0
    const amps = currents.motorAt(place, aside)
    if (!Number.isFinite(amps) || (t[row] ?? 0) > until(segmentOf[row] ?? 0)) continue
    loads.set(load, amps, rpm?.values[row] ?? NaN)
    course.tooth[place] = load.tooth
    course.tension[place] = load.tension
    course.torque[place] = load.torque
  }
  return course
}
