import { lineFit, type Fitted } from '../numeric/linear-fit.ts'
import type { Bench } from './bench.ts'
import type { GuidedTest, Outputs } from './kind.ts'

/** A test worked out: its fit, where it has one, and its outputs. */
export interface Evaluated {
  readonly fit: Fitted | null
  readonly outputs: Outputs
}

/** The fit of a test to readings; null where it has none. */
function fitOf(test: GuidedTest, bench: Bench, chosen: readonly number[]): Fitted | null {
  if (test.fit !== undefined) return test.fit(bench, chosen)
  if (test.line === undefined) return null
  const { x, y } = test.line(bench, chosen)
  return lineFit(x, y)
}

/** Works a test out, the rows that it chose before staying chosen. */
export function evaluated(test: GuidedTest, bench: Bench, chosen: readonly number[]): Evaluated {
  const fit = fitOf(test, bench, chosen)
  return { fit, outputs: test.outputs(bench, fit?.coefficients ?? [], chosen) }
}

/** Values of all outputs by name. */
export function valuesOf(outputs: Outputs): Readonly<Record<string, number>> {
  return Object.fromEntries(Object.entries(outputs).map(([name, { value }]) => [name, value]))
}
