import type { Mistake } from '../mistakes/mistake.ts'
import { coarse } from './order.ts'

/** How the candidates of a part of a search fare with what they have to hold; plain data that crosses threads. */
export interface TallyPart {
  /** Candidates whose build breaks none of its rules. */
  sound: number
  /** Of these, those that hold everything. */
  holding: number
  /** For each hold: how many break it. */
  readonly breaking: Float64Array
  /** For each hold: how many break it and nothing else. */
  readonly breakingAlone: Float64Array
  /** For each hold: the closest to it that any candidate comes (margin or figure), and the lowest number of one that does. */
  readonly best: Float64Array
  readonly bestIndex: Float64Array
  /** Bits: for each hold a row of words, in which each hold has a bit that is set where some candidate holds both. */
  readonly together: Uint32Array
  /** The candidate that comes closest to holding everything: its worst shortfall, and its number. */
  closest: number
  closestIndex: number
  /** Rules of the build that candidates break: how many, and the first of them. */
  readonly unsound: UnsoundCount[]
}

/** Candidates that are no valid build, by the rule that they break. */
interface UnsoundCount {
  readonly mistake: Mistake
  count: number
  /** The first of them. */
  index: number
}

/** Words of 32 bits for so many holds. */
export const wordsFor = (holds: number) => Math.ceil(holds / 32)

/** A tally of nothing yet. */
export function emptyTally(holds: number): TallyPart {
  return {
    sound: 0,
    holding: 0,
    breaking: new Float64Array(holds),
    breakingAlone: new Float64Array(holds),
    best: new Float64Array(holds).fill(-Infinity),
    bestIndex: new Float64Array(holds).fill(-1),
    together: new Uint32Array(holds * wordsFor(holds)),
    closest: -Infinity,
    closestIndex: -1,
    unsound: [],
  }
}

/** Whether a candidate comes closer to a hold than all before it: of equal ones, but for rounding, the first one counts. */
export function comesCloser(closeness: number, best: number, bestIndex: number): boolean {
  // the first comparison settles nearly all
  if (closeness > best) return coarse(closeness) > coarse(best)
  return closeness === -Infinity && bestIndex === -1
}

/** Adds a part to a tally; the sum does not depend on the order. */
export function addTally(into: TallyPart, part: TallyPart): void {
  into.sound += part.sound
  into.holding += part.holding
  for (let hold = 0; hold < into.best.length; hold += 1) {
    into.breaking[hold] = (into.breaking[hold] ?? 0) + (part.breaking[hold] ?? 0)
    into.breakingAlone[hold] = (into.breakingAlone[hold] ?? 0) + (part.breakingAlone[hold] ?? 0)
    const index = part.bestIndex[hold] ?? -1
    if (
      index >= 0 &&
      isCloser(part.best[hold] ?? 0, index, into.best[hold] ?? 0, into.bestIndex[hold] ?? -1)
    ) {
      into.best[hold] = part.best[hold] ?? 0
      into.bestIndex[hold] = index
    }
  }
  for (let word = 0; word < into.together.length; word += 1) {
    into.together[word] = (into.together[word] ?? 0) | (part.together[word] ?? 0)
  }
  if (part.closestIndex >= 0 && isCloser(part.closest, part.closestIndex, into.closest, into.closestIndex)) {
    into.closest = part.closest
    into.closestIndex = part.closestIndex
  }
  for (const rule of part.unsound) addUnsound(into.unsound, rule)
}

/** Whether one candidate comes closer than another: by its number where both come as close, but for rounding. */
function isCloser(value: number, index: number, than: number, thanIndex: number): boolean {
  const [here, there] = [coarse(value), coarse(than)]
  return thanIndex < 0 || here > there || (here === there && index < thanIndex)
}

function addUnsound(into: UnsoundCount[], { mistake, count, index }: UnsoundCount): void {
  const at = into.findIndex((one) => one.mistake.path === mistake.path && one.mistake.code === mistake.code)
  const there = into[at]
  if (there === undefined) into.push({ mistake, count, index })
  else
    into[at] = {
      mistake: index < there.index ? mistake : there.mistake,
      count: there.count + count,
      index: Math.min(index, there.index),
    }
}

/** Pairs of holds that candidates hold one by one and never together. */
export function pairsNeverTogether(tally: TallyPart): (readonly [number, number])[] {
  const holds = tally.best.length
  const words = wordsFor(holds)
  const held = (hold: number) => (tally.breaking[hold] ?? 0) < tally.sound
  const both = (one: number, other: number) =>
    (((tally.together[one * words + (other >> 5)] ?? 0) >>> (other & 31)) & 1) === 1
  const pairs: (readonly [number, number])[] = []
  for (let one = 0; one < holds; one += 1) {
    for (let other = one + 1; other < holds; other += 1) {
      if (held(one) && held(other) && !both(one, other)) pairs.push([one, other])
    }
  }
  return pairs
}
