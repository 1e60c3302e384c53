import { check } from '../check.ts'
import type { Build } from '../entries/schema.ts'

/** What lifts the front, over throttle. */
export interface LiftCurve {
  /** 0 to 1, rising. */
  readonly throttle: readonly number[]
  /** N: thrust on the ground from rest. */
  readonly thrust: readonly (number | null)[]
  /** N: thrust at which the front comes up. */
  readonly liftThrust: number | null
  /** N·m: moment of thrust and the loops' own reaction while they spin up; null where the track grips. */
  readonly spinUp: readonly (number | null)[]
  /** N·m: moment of the weight, which holds the front down. */
  readonly heldDown: number | null
}

/** Throttles tried. */
const steps = 25
/** Least throttle that a build can be capped at, %. */
const leastCap = 1

/**
 * Thrust from rest and nose-up moment over the throttle cap, all else as built.
 *
 * @returns null where the centre of mass is not known
 * *Source:* front lift and spin-up of `docs/model.md` §5 at every cap.
 */
export function liftCurveOf(build: Build): LiftCurve | null {
  const most = build.controller.throttleCapPercent
  const caps = Array.from({ length: steps }, (_, at) => leastCap + ((most - leastCap) * at) / (steps - 1))
  const tried = caps.map((throttleCapPercent) => {
    const { limits } = check({ ...build, controller: { ...build.controller, throttleCapPercent } })
    const row = (id: string) => limits.find((one) => one.id === id)
    return { lift: row('vehicle.front-lift'), spinUp: row('vehicle.spin-up-lift') }
  })
  const lifts = tried.map(({ lift }) => lift)
  if (lifts.every((lift) => lift === undefined)) return null
  return {
    throttle: caps.map((cap) => cap / 100),
    thrust: lifts.map((lift) => lift?.actual ?? null),
    liftThrust: lifts.findLast((lift) => lift !== undefined)?.allowed ?? null,
    spinUp: tried.map(({ spinUp }) => spinUp?.actual ?? null),
    heldDown: tried.findLast(({ spinUp }) => spinUp !== undefined)?.spinUp?.allowed ?? null,
  }
}
