import type { LogData } from '../data.ts'
import type { LogModel } from '../model.ts'
import { atOnce, samplesBetween, type InPieces } from '../pieces.ts'
import type { Currents } from './current.ts'
import { LoggedLoad, Loads } from './loads.ts'

/** What track and motor bore through a log, by place among its rpm samples; NaN where it is not known, or the load is gone. */
export interface LoadCourse {
  /** N on the most loaded tooth. */
  readonly tooth: Float64Array
  /** N of one loop. */
  readonly tension: Float64Array
  /** N at the sprocket, of one loop; negative where the ground drives the motor. */
  readonly force: Float64Array
  /** N·m of one motor. */
  readonly torque: Float64Array
}

/** A log as far as loads need it. */
interface Logged {
  readonly data: LogData
  readonly model: LogModel
}

/**
 * Loads at every rpm sample of a log, as if the load had always been there.
 *
 * @param aside A at the pack by which the current is taken to be another; 0: as it is
 */
function* courseBy({ data, model }: Logged, currents: Currents, aside: number): InPieces<LoadCourse> {
  const rpm = data.channels.get('rpm')
  const samples = rpm?.samples ?? new Int32Array()
  const loads = new Loads(model)
  const load = new LoggedLoad()
  const list = () => new Float64Array(samples.length)
  const course = { tooth: list(), tension: list(), force: list(), torque: list() }
  for (let place = 0; place < samples.length; place += 1) {
    if (place % samplesBetween === samplesBetween - 1) yield
    const amps = currents.motorAt(place, aside)
    if (!Number.isFinite(amps)) {
      course.tooth[place] = course.tension[place] = course.force[place] = course.torque[place] = NaN
      continue
    }
    loads.set(load, amps, rpm?.values[samples[place] ?? 0] ?? NaN)
    course.tooth[place] = load.tooth
    course.tension[place] = load.tension
    course.force[place] = load.forcePerLoop
    course.torque[place] = load.torque
  }
  return course
}

const known = new WeakMap<Currents, LoadCourse>()

/** The loads of a log as they are, worked out once; never changed by whoever has them. */
export function* wholeCourseOf(log: Logged, currents: Currents): InPieces<LoadCourse> {
  const found = known.get(currents) ?? (yield* courseBy(log, currents, 0))
  known.set(currents, found)
  return found
}

/**
 * Loads at every rpm sample of a log while the load was there.
 *
 * @param until s of a segment, from 0, up to which it was
 * @param aside A at the pack by which the current is taken to be another; 0: as it is
 */
export function loadCourseOf(
  log: Logged,
  currents: Currents,
  until: (segment: number) => number,
  aside = 0,
): LoadCourse {
  const course = atOnce(aside === 0 ? wholeCourseOf(log, currents) : courseBy(log, currents, aside))
  const { segments, segmentOf, t } = log.data.timeline
  if (segments.every((_, segment) => until(segment) === Infinity)) return course
  const samples = log.data.channels.get('rpm')?.samples ?? new Int32Array()
  const cut = (values: Float64Array) =>
    values.map((value, place) => {
      const row = samples[place] ?? 0
      return (t[row] ?? 0) > until(segmentOf[row] ?? 0) ? NaN : value
    })
  const { tooth, tension, force, torque } = course
  return { tooth: cut(tooth), tension: cut(tension), force: cut(force), torque: cut(torque) }
}
