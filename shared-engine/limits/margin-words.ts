import { format } from '../units/display.ts'
import { percentText } from '../units/percent.ts'
import type { LimitSense } from './limit.ts'

/** A margin further past than this is said as a multiple: nobody pictures 690 % over. *Source:* assumption. */
const mostPercent = 2

/** What is compared, as many times what is allowed. */
const multiples: Readonly<Record<LimitSense, { readonly alone: string; readonly beside: string }>> = {
  maximum: { alone: 'what it bears', beside: 'that' },
  minimum: { alone: 'too little', beside: 'too little' },
  temperature: { alone: 'the rise it bears', beside: 'that rise' },
  coldness: { alone: 'the cold it bears', beside: 'that cold' },
}

/** Where nine tenths of the samples of a margin lie; null ends are past any number. */
export interface MarginBand {
  readonly margin5: number | null
  readonly margin95: number | null
}

/**
 * How many times over a limit is, "7.9", where that is more than 200 % past it; null where a percentage says it better.
 *
 * Times = 1 − margin: actual/allowed of a maximum, allowed/actual of a minimum, the rises of temperatures.
 *
 * @param margin 1 − actual/allowed or its like
 */
export function timesOver(margin: number): string | null {
  if (!(margin < -mostPercent)) return null
  const times = 1 - margin
  if (times >= 1000) return '> 1,000'
  return times >= 10 ? String(Math.round(times)) : times.toFixed(1)
}

/**
 * "12 % in hand", "8 % over", for a least value "8 % short"; "7.9 times what it bears" from 200 % on; "exceeded" where no
 * margin can be formed: nothing is allowed.
 *
 * @param place `beside` the allowed value, which is then not named again: "7.9 times that"
 */
export function marginWords(
  margin: number | null,
  sense: LimitSense = 'maximum',
  place: 'alone' | 'beside' = 'alone',
): string {
  if (margin === null) return 'exceeded'
  const times = timesOver(margin)
  if (times !== null) return `${times} times ${multiples[sense][place]}`
  const past = sense === 'minimum' ? 'short' : 'over'
  return `${percentText(margin)}\u202F% ${margin < 0 ? past : 'in hand'}`
}

/** "27 to 21 % over", "14 % over to 24 % in hand", "7.9 to 6.1 times"; as one number where both ends read alike. */
export function bandWords({ margin5, margin95 }: MarginBand, sense: LimitSense = 'maximum'): string {
  const [from, to] = [marginWords(margin5, sense), marginWords(margin95, sense)]
  if (margin5 === null || margin95 === null) return `${from} to ${to}`
  const [times, timesTo] = [timesOver(margin5), timesOver(margin95)]
  // Of what it bears: the margin beside it says so, and the line has no room for it twice.
  if (times !== null && timesTo !== null)
    return times === timesTo ? `${times} times` : `${times} to ${timesTo} times`
  if (from === to) return from
  const sameSide = times === null && timesTo === null && margin5 < 0 === margin95 < 0
  return `${sameSide ? from.split('\u202F%')[0] : from} to ${to}`
}

/** A margin for columns of them: "−8.4 %", "7.9 times" from 200 % over on, of a least value "1/7.9"; "–" where there is none. */
export function marginText(margin: number | null, sense: LimitSense = 'maximum'): string {
  if (margin === null) return '–'
  const times = timesOver(margin)
  if (times !== null) return sense === 'minimum' ? `1/${times}` : `${times} times`
  // One decimal, so that margins line up; more where the sign alone would be left.
  const text =
    Math.abs(margin) < 0.01
      ? format(margin, 'fraction', 'metric', '%').text
      : (100 * margin).toFixed(1).replace('-', '−')
  return `${text} %`
}
