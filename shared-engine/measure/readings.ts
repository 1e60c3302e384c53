import type { TestId } from '../reference/measurements.ts'

export const readingsFormat = 'pitchline-readings'
export const readingsVersion = 1

/** What an instrument is good for; every number is in the unit of what it reads. */
export interface Instrument {
  /** Of the reading: one error common to all readings of the instrument. */
  readonly percent: number
  /** Last digits of the display by which it may be off. */
  readonly digits: number
  /** One step of the display. */
  readonly resolution: number
  /** Off by, whatever it shows. */
  readonly plusMinus: number
}

/** A number that was given beside the readings. */
export interface GivenNumber {
  readonly value: number
  /** One standard uncertainty, in the same unit; 0 where none was given. */
  readonly standardUncertainty: number
}

/** Readings of one guided test, as typed: units as the test's guide says. */
export interface Readings {
  readonly test: TestId
  readonly name: string
  readonly notes: string
  /** Columns of the rows, each as long as there are rows. */
  readonly columns: ReadonlyMap<string, readonly number[]>
  readonly lists: ReadonlyMap<string, readonly number[]>
  readonly instruments: ReadonlyMap<string, Instrument>
  readonly given: ReadonlyMap<string, GivenNumber>
  readonly words: ReadonlyMap<string, string>
}

/** A tolerance as entered: a half width, and what shape it has. */
export interface GivenTolerance {
  readonly plusMinus?: number | undefined
  readonly plusMinusPercent?: number | undefined
  readonly shape?: 'uniform' | 'normal' | undefined
}

/**
 * Standard uncertainty of a half width: over √3 of a uniform one, over 2 of a normal one.
 *
 * *Source:* ISO/IEC Guide 98-3 (JCGM 100:2008), 4.3.7 and 4.3.4.
 * @example standardUncertaintyOf(10, { plusMinus: 2, shape: 'normal' }) // 1
 */
export function standardUncertaintyOf(
  value: number,
  { plusMinus, plusMinusPercent = 0, shape = 'uniform' }: GivenTolerance,
): number {
  const half = plusMinus ?? (Math.abs(value) * plusMinusPercent) / 100
  return shape === 'normal' ? half / 2 : half / Math.sqrt(3)
}
