import type { TestId } from '../reference/measurements.ts'
import type { Fitted } from '../numeric/linear-fit.ts'
import type { Bench } from './bench.ts'

/** Standing of a measurement; the worst of its results' is the whole's. */
export type Verdict = 'good' | 'weak' | 'retake'

/** What is to be said of readings or of a result. */
export interface Remark {
  readonly code: NoteCode
  /** The reading, row, column or result that it is about. */
  readonly about: string
  /** What it makes of every result; absent: nothing. */
  readonly verdict?: Verdict
}

export const noteCodes = [
  'few',
  'spread',
  'time',
  'sign',
  'range',
  'held',
  'uncertain',
  'rough',
  'too-short',
  'not-whole',
  'no-instrument',
  'no-scatter',
  'once',
  'bent',
  'one-way',
  'odd',
  'left-out',
  'offset',
  'few-repeats',
] as const
export type NoteCode = (typeof noteCodes)[number]

/** One number that a test works out: a result or a figure. */
export interface Output {
  /** In the unit of its entry or figure; NaN where it cannot be formed. */
  readonly value: number
  /** Plain algebra that gives it with the numbers of `put`, which are in the units of the readings. */
  readonly formula: string
  readonly put: Readonly<Record<string, number>>
}

/** Results and figures by name; one that these readings do not give is absent. */
export type Outputs = Readonly<Record<string, Output>>

/** An output with its formula. */
export function output(value: number, formula: string, put: Readonly<Record<string, number>>): Output {
  return { value, formula, put }
}

/** Points of a straight line: y against x. */
interface Points {
  readonly x: readonly number[]
  readonly y: readonly number[]
}

/** What the formulas of one guided test do; what it reads and how it is done stand in its guide. */
export interface GuidedTest {
  readonly id: TestId
  /**
   * What the fit is drawn over and what it is fitted to: names of readings, or words where it is worked out of them. Absent
   * where what is fitted is no reading.
   */
  readonly axes?: readonly [x: string, y: string]
  /** Rows that take part, by place; chosen once, so that no small change of a reading chooses others. */
  readonly choose?: (bench: Bench) => readonly number[]
  /** The line that is fitted; coefficients are its intercept and slope. */
  readonly line?: (bench: Bench, chosen: readonly number[]) => Points
  /** Another fit than a line. */
  readonly fit?: (bench: Bench, chosen: readonly number[]) => Fitted
  /** Results and figures of readings and a fit's coefficients. */
  readonly outputs: (bench: Bench, coefficients: readonly number[], chosen: readonly number[]) => Outputs
  /** The strength of the next piece is asked for, not the mean of those that were torn. */
  readonly ofTheNext?: true
  /** Values whose mean is a figure: their scatter is its own. */
  readonly repeats?: { readonly of: string; readonly values: (bench: Bench) => readonly number[] }
  /** Names of outputs that are exact: counts. */
  readonly exact?: readonly string[]
  /** Where the results come from; absent: measured. */
  readonly origin?: 'stated'
  /** What this test alone has to say. */
  readonly remarks?: (
    bench: Bench,
    values: Readonly<Record<string, number>>,
    chosen: readonly number[],
  ) => readonly Remark[]
}
