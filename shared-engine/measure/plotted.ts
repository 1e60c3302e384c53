import type { Build } from '../entries/schema.ts'
import { guideOf } from '../reference/measurements.ts'
import { evaluated } from './evaluate.ts'
import { layReadings } from './lay.ts'
import type { Readings } from './readings.ts'
import { guidedTests } from './tests/table.ts'
import { readingLabel } from './words.ts'

/** Readings to be drawn: what was read against what, and what was fitted at the same places. */
export interface PlottedReadings {
  readonly x: string
  readonly y: string
  readonly xs: readonly number[]
  readonly ys: readonly number[]
  /** At `xs`; absent where nothing was fitted, or nothing could be. */
  readonly fitted?: readonly number[]
}

/**
 * The readings of a test as points with what was fitted to them; null where there are too few to draw.
 *
 * @param build as `measure` takes it
 */
export function plottedReadings(readings: Readings, build: Build | null): PlottedReadings | null {
  return readings.columns.size > 0 ? ofRows(readings, build) : ofList(readings)
}

function ofRows(readings: Readings, build: Build | null): PlottedReadings | null {
  const laid = layReadings(readings, build)
  if (!laid.ok || laid.value.rows < 2) return null
  const bench = laid.value
  const test = guidedTests[readings.test]
  const [first = '', second = ''] = guideOf(readings.test).rows
  const [x, y] = test.axes ?? [first, second]
  const chosen = test.choose?.(bench) ?? []
  const { x: xs, y: ys } = test.line?.(bench, chosen) ?? { x: bench.column(x), y: bench.column(y) }
  if (xs.length < 2) return null
  const read = { x: readingLabel(x), y: readingLabel(y), xs, ys }
  if (test.axes === undefined) return read
  const residuals = evaluated(test, bench, chosen).fit?.residuals ?? []
  const isFitted = residuals.length === ys.length && residuals.every(Number.isFinite)
  return isFitted ? { ...read, fitted: ys.map((value, at) => value - (residuals[at] ?? 0)) } : read
}

/** The list with most repeats, in the order in which it was read, and its mean. */
function ofList({ lists }: Readings): PlottedReadings | null {
  const [longest] = [...lists].toSorted(([, one], [, other]) => other.length - one.length)
  if (longest === undefined || longest[1].length < 2) return null
  const [name, ys] = longest
  const mean = ys.reduce((sum, value) => sum + value, 0) / ys.length
  return {
    x: 'Reading',
    y: readingLabel(name),
    xs: ys.map((_, at) => at + 1),
    ys,
    fitted: ys.map(() => mean),
  }
}
