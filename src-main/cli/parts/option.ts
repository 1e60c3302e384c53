import type { JobRange } from '../../../shared-engine/jobs/job.ts'
import type { OptionValues } from '../command.ts'
import type { Io } from '../io.ts'
import { mistake, report } from '../trouble.ts'

/** Most parts that a run may be divided into. */
const mostParts = 100_000

/** One of so many parts, counted from 1. */
export interface WhichPart {
  readonly number: number
  readonly of: number
}

/** The option of commands whose work several computers can share. */
export const partOption = {
  flags: '--part <k/n>',
  about: 'do the k-th of n parts and print it, for merge to put together',
}

/** The part that is asked for: null where none is, undefined after what is allowed has been stated. */
export function partOf(options: OptionValues, io: Io): WhichPart | null | undefined {
  const typed = options['part']
  if (typeof typed !== 'string') return null
  const [, number = NaN, of = NaN] = (/^(\d+)\/(\d+)$/.exec(typed) ?? []).map(Number)
  if (of >= 1 && of <= mostParts && number >= 1 && number <= of) return { number, of }
  const allowed = `k/n, as 3/16: the k-th of n parts, n up to ${mostParts.toLocaleString('en')}`
  report(io, 'pitchline', [
    mistake('option-not-understood', { path: '--part', value: `"${typed}"`, allowed }),
  ])
  return undefined
}

/** The items of a part: neighbours, as many in each part as in any other, or one more. */
export function rangeOf({ number, of }: WhichPart, total: number): JobRange {
  return { from: Math.floor((total * (number - 1)) / of), to: Math.floor((total * number) / of) }
}
