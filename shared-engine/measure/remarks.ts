import { type Fitted, lineFit, linearFit } from '../numeric/linear-fit.ts'
import { studentFactor } from '../numeric/student.ts'
import { type Guide, guideOf, withoutInstrument } from '../reference/measurements.ts'
import type { Bench } from './bench.ts'
import type { Evaluated } from './evaluate.ts'
import type { GuidedTest, Remark } from './kind.ts'
import type { Readings } from './readings.ts'
import { runsOf } from './tests/runs.ts'

const retake = (code: Remark['code'], about: string): Remark => ({ code, about, verdict: 'retake' })
const weak = (code: Remark['code'], about: string): Remark => ({ code, about, verdict: 'weak' })

/** Fewest readings of a list. */
const leastOf = (guide: Guide, name: string) =>
  guide.once.includes(name) || guide.rows.length > 0 ? 1 : guide.least

/** What keeps the readings from being worked out at all. */
export function obstaclesOf(readings: Readings, bench: Bench): readonly Remark[] {
  const guide = guideOf(readings.test)
  const remarks: Remark[] = []
  if (guide.rows.length > 0 && bench.rows < guide.least) remarks.push(retake('few', 'rows'))
  for (const [name, list] of readings.lists)
    if (list.length < leastOf(guide, name)) remarks.push(retake('few', name))
  if (guide.fitOn !== null && !isSpread(bench.column(guide.fitOn)))
    remarks.push(retake('spread', guide.fitOn))
  if (guide.rows.includes('seconds') && !isInTime(readings, bench)) remarks.push(retake('time', 'seconds'))
  return remarks
}

/** Whether a column runs over a quarter of its largest reading: a line through less says nothing. */
function isSpread(column: readonly number[]): boolean {
  const most = Math.max(...column)
  return (most - Math.min(...column)) / most >= 0.25
}

function isInTime(readings: Readings, bench: Bench): boolean {
  const seconds = bench.column('seconds')
  const fewest = readings.test === 'cool-down' ? 2 : 3
  return runsOf(bench).every(
    (rows) =>
      rows.length >= fewest &&
      rows.every((row, at) => at === 0 || (seconds[row] ?? 0) > (seconds[rows[at - 1] ?? 0] ?? 0)),
  )
}

/** What is to be said of the readings as they are. */
export function remarksOnReadings(readings: Readings, bench: Bench): readonly Remark[] {
  const guide = guideOf(readings.test)
  const lists = [...readings.lists]
  const unread = [...bench.columns, ...readings.lists.keys()].filter(
    (name) => !withoutInstrument(name) && !readings.instruments.has(name),
  )
  return [
    ...unread.map((name) => weak('no-instrument', name)),
    ...lists
      .filter(([, list]) => list.length === 1)
      .map(([name]) =>
        guide.once.includes(name) ? ({ code: 'once', about: name } as const) : weak('once', name),
      ),
    ...lists.flatMap(([name, list]) =>
      list.length < 5 ? [] : oddPlaces(list).map((at) => ({ code: 'odd', about: `${name}.${at}` }) as const),
    ),
  ]
}

/** What is to be said of the fit. */
export function remarksOnFit(
  test: GuidedTest,
  bench: Bench,
  chosen: readonly number[],
  base: Evaluated,
): readonly Remark[] {
  const { fit } = base
  if (fit === null) return []
  const remarks: Remark[] = []
  if (fit.freedom === 0) remarks.push(weak('no-scatter', 'rows'))
  if (test.line !== undefined) {
    const { x, y } = test.line(bench, chosen)
    if (x.length >= 5 && isBent(x, y)) remarks.push(weak('bent', 'rows'))
  }
  if (base.outputs['offsetVolts'] !== undefined && isOffset(fit))
    remarks.push({ code: 'offset', about: 'volts' })
  // A line of fewer rows than the readings' own goes by the chosen ones.
  const rowOf = (at: number) => (fit.residuals.length < bench.rows ? (chosen[at] ?? at) : at)
  if (fit.freedom >= 4)
    for (const at of oddPlaces(fit.residuals)) remarks.push({ code: 'odd', about: `rows.${rowOf(at)}` })
  return remarks
}

/** Whether a line's intercept is beyond the 95.45 % of its own scatter. */
function isOffset({ coefficients, covariance, freedom }: Fitted): boolean {
  if (freedom < 1) return false
  return Math.abs(coefficients[0] ?? NaN) > studentFactor(freedom) * Math.sqrt(covariance[0]?.[0] ?? NaN)
}

const medianOf = (values: readonly number[]): number => {
  const sorted = [...values].sort((one, other) => one - other)
  const half = sorted.length >> 1
  return sorted.length % 2 === 1
    ? (sorted[half] ?? NaN)
    : ((sorted[half - 1] ?? NaN) + (sorted[half] ?? NaN)) / 2
}

/**
 * Places of values that stand apart from the rest: modified z over 3.5.
 *
 * z = 0.6745 |x − median|/MAD.
 *
 * *Source:* B. Iglewicz and D. C. Hoaglin, *How to Detect and Handle Outliers* (1993); NIST/SEMATECH e-Handbook, 1.3.5.17.
 */
function oddPlaces(values: readonly number[]): readonly number[] {
  const middle = medianOf(values)
  const away = values.map((value) => Math.abs(value - middle))
  const typical = medianOf(away)
  if (!(typical > 0)) return []
  return away.flatMap((distance, at) => ((0.6745 * distance) / typical > 3.5 ? [at] : []))
}

/**
 * Whether points lie on a curve rather than on a line: over x brought to −1 … 1, a parabola's square term is beyond four
 * of its standard errors and 2 % of the line's rise.
 *
 * *Source:* F test of one more term in a regression, any text; the two bounds are ours.
 */
function isBent(x: readonly number[], y: readonly number[]): boolean {
  const [least, most] = [Math.min(...x), Math.max(...x)]
  const u = x.map((value) => (2 * value - least - most) / (most - least))
  const rise = 2 * (lineFit(u, y).coefficients[1] ?? NaN)
  const { coefficients, covariance } = linearFit([u.map(() => 1), u, u.map((value) => value * value)], y)
  const square = Math.abs(coefficients[2] ?? NaN)
  return square > 4 * Math.sqrt(covariance[2]?.[2] ?? NaN) && square > 0.02 * Math.abs(rise)
}
