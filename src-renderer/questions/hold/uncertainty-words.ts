import { percentText } from '../../../shared-engine/units/percent.ts'

const words = [
  [0.01, 'very unlikely'],
  [0.1, 'unlikely'],
  [0.4, 'quite possible'],
  [0.6, 'about as likely as not'],
  [0.9, 'likely'],
  [0.99, 'very likely'],
] as const

/** A probability in words. */
export function probabilityWords(probability: number): string {
  return words.find(([below]) => probability < below)?.[1] ?? 'practically certain'
}

/** A rank correlation with the margin: "more of it, less in hand", and how strictly. */
export function correlationWords(correlation: number): string {
  return correlation < 0 ? 'more of it, less in hand' : 'more of it, more in hand'
}

/** With its sign, in two digits. */
export function correlationText(correlation: number): string {
  return `${correlation < 0 ? '−' : '+'}${Math.abs(correlation).toFixed(2)}`
}

/** Correlations below this are the noise of the draws. */
export const noise = 0.05

/** Width of a band in points of margin: "6.1 points". */
export function pointsText(width: number): string {
  return `${percentText(width)} points`
}
