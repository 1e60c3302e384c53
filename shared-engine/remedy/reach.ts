import type { Build } from '../entries/schema.ts'
import type { Field } from '../entries/fields.ts'
import type { Lever } from './levers.ts'

/**
 * Nobody buys or cuts a part of more than so many times, or less than such a part of, the one that is there, where its
 * row does not say less.
 *
 * *Source:* engineering judgement, no source.
 */
const farthest = 8

/** The sprocket's tooth has to fit between two lugs: the most of a pitch that a lug's root takes. *Source:* the same. */
const rootOfPitch = 0.65

/** Where a number may go, in the entry's bench unit; either end is `from` where it may not go that way. */
interface Reach {
  readonly least: number
  readonly most: number
}

/**
 * How far a builder can change a number: inside the entry's range, the lever's own bounds and a sensible multiple of what
 * is there. A number beyond those bounds already stays where it is on that side.
 *
 * @param from today's value, bench unit
 */
export function reachOf(
  { track }: Build,
  { path, way, least = -Infinity, most = Infinity, times = farthest, step = 1, sizes }: Lever,
  { low = -Infinity, high = Infinity, whole }: Field,
  from: number,
): Reach {
  const nearest = whole === true ? Math.ceil(from / times) : from / times
  const lowest = Math.max(low, least, from > 0 ? nearest : -Infinity)
  const room = path === 'track.tooth.rootMm' ? rootOfPitch * track.pitchMm : Infinity
  const highest = Math.min(high, most, room, from > 0 ? from * times : Infinity)
  const grain = sizes === undefined ? step : 0
  return {
    least: way === 'more' ? from : Math.min(from, inwards(lowest, grain, Math.ceil)),
    most: way === 'less' ? from : Math.max(from, inwards(highest, grain, Math.floor)),
  }
}

/** An end that can be had: a third of 40 rpm/V is none. @param step 0: sizes are looked up in a list */
function inwards(end: number, step: number, round: (steps: number) => number): number {
  if (step === 0 || !Number.isFinite(end)) return end
  const steps = end / step
  const nearest = Math.round(steps)
  const whole = Math.abs(steps - nearest) < 1e-9 * Math.max(1, Math.abs(steps)) ? nearest : round(steps)
  return Number((whole * step).toPrecision(10))
}
