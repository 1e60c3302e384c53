import type { Build, Tolerance } from '../entries/schema.ts'
import { keysOf, valueAt } from '../entries/path.ts'
import { sumOfSquares } from '../numeric/linear-fit.ts'
import type { Bench } from './bench.ts'
import { evaluated, valuesOf, type Evaluated } from './evaluate.ts'
import type { GuidedTest } from './kind.ts'
import { standardUncertaintyOf, type Readings } from './readings.ts'

type PartKind = 'scatter' | 'fit' | 'gain' | 'counts' | 'rounding' | 'given'

/** One independent part of an uncertainty. */
export interface BudgetPart {
  /** Reading, rows, or path of what was given. */
  readonly input: string
  readonly kind: PartKind
  readonly standardUncertainty: number
  /** ν; null where it is taken as infinite. */
  readonly degreesOfFreedom: number | null
}

/** Parts of each output by its name. */
type Budgets = Readonly<Record<string, readonly BudgetPart[]>>

/** Step of the differences, as a share of the largest reading of a column. */
const share = 1e-5

type Values = Readonly<Record<string, number>>

/** Everything that the parts are worked out from. */
interface Work {
  readonly test: GuidedTest
  readonly readings: Readings
  readonly build: Build | null
  readonly bench: Bench
  readonly chosen: readonly number[]
  readonly base: Evaluated
}

/** Derivatives of all outputs by central differences. */
function slopes(work: Work, altered: (by: number) => Bench, h: number): Values {
  const above = valuesOf(evaluated(work.test, altered(h), work.chosen).outputs)
  const below = valuesOf(evaluated(work.test, altered(-h), work.chosen).outputs)
  return Object.fromEntries(
    Object.keys(work.base.outputs).map((name) => [
      name,
      ((above[name] ?? NaN) - (below[name] ?? NaN)) / (2 * h),
    ]),
  )
}

/** A step that is not 0 where all readings are. */
const stepOf = (values: readonly number[]) =>
  share * (values.reduce((most, value) => Math.max(most, Math.abs(value)), 0) || 1)

interface Adder {
  (name: string, part: BudgetPart): void
}

/**
 * What an instrument's errors do to the outputs, by the sensitivities c_i of its readings x_i.
 *
 * gain |Σ c_i x_i| percent/100/√3; counts w (digits · resolution + plusMinus)/√3; rounding w · resolution/√12, with
 * w = √max((Σ c_i)², Σ c_i²): as a shift common to all readings or as noise of each, whichever is worse.
 *
 * *Source:* ISO/IEC Guide 98-3 (JCGM 100:2008), 4.3.7, F.2.2.1; the worse of two ways: our own, on the safe side.
 */
function addInstrument(
  work: Work,
  input: string,
  readingsOf: readonly number[],
  c: readonly Values[],
  add: Adder,
): void {
  const instrument = work.readings.instruments.get(input)
  if (instrument === undefined) return
  const { percent, digits, resolution, plusMinus } = instrument
  for (const name of Object.keys(work.base.outputs)) {
    const slope = c.map((values) => values[name] ?? NaN)
    const total = slope.reduce((sum, value) => sum + value, 0)
    const scaled = slope.reduce((sum, value, at) => sum + value * (readingsOf[at] ?? 0), 0)
    const w = Math.sqrt(Math.max(total * total, sumOfSquares(slope)))
    const part = (kind: PartKind, standardUncertainty: number) =>
      add(name, { input, kind, standardUncertainty, degreesOfFreedom: null })
    part('gain', (Math.abs(scaled) * percent) / 100 / Math.sqrt(3))
    part('counts', (w * (digits * resolution + plusMinus)) / Math.sqrt(3))
    part('rounding', (w * resolution) / Math.sqrt(12))
  }
}

function addColumns(work: Work, add: Adder): void {
  for (const name of work.bench.columns) {
    if (!work.readings.instruments.has(name)) continue
    const values = work.bench.column(name)
    const h = stepOf(values)
    const c = values.map((value, row) =>
      slopes(work, (by) => work.bench.withColumn(name, values.with(row, value + by)), h),
    )
    addInstrument(work, name, values, c, add)
  }
}

/**
 * Lists: their instruments, and the scatter of their means, |Σ c_i| s/√n with n − 1 degrees of freedom; of the next
 * piece instead of the mean, √(n + 1) times as much.
 *
 * *Source:* ISO/IEC Guide 98-3 (JCGM 100:2008), 4.2.3; prediction interval s √(1 + 1/n), any text on statistics.
 */
function addLists(work: Work, add: Adder): void {
  for (const [name, list] of work.readings.lists) {
    const count = list.length
    const ofMean = slopes(work, (by) => work.bench.withMean(name, work.bench.mean(name) + by), stepOf(list))
    const each = Object.fromEntries(Object.entries(ofMean).map(([key, slope]) => [key, slope / count]))
    addInstrument(
      work,
      name,
      list,
      list.map(() => each),
      add,
    )
    if (count < 2) continue
    const mean = work.bench.mean(name)
    const deviation = Math.sqrt(sumOfSquares(list.map((value) => value - mean)) / (count - 1))
    const next = work.test.ofTheNext === true ? Math.sqrt(count + 1) : 1
    for (const [key, slope] of Object.entries(ofMean)) {
      add(key, {
        input: name,
        kind: 'scatter',
        standardUncertainty: (Math.abs(slope) * deviation * next) / Math.sqrt(count),
        degreesOfFreedom: count - 1,
      })
    }
  }
}

/**
 * The fit's own scatter: √(gᵀ V g), g the derivatives by its coefficients.
 *
 * *Source:* ISO/IEC Guide 98-3 (JCGM 100:2008), 5.2.2 and H.3.
 */
function addFit(work: Work, add: Adder): void {
  const { fit } = work.base
  if (fit === null || fit.freedom <= 0) return
  const gradients = fit.coefficients.map((value, at) => {
    const h = 1e-6 * (Math.abs(value) || Math.sqrt(fit.covariance[at]?.[at] ?? 0) || 1)
    const shifted = (by: number) =>
      valuesOf(work.test.outputs(work.bench, fit.coefficients.with(at, value + by), work.chosen))
    const [above, below] = [shifted(h), shifted(-h)]
    return (name: string) => ((above[name] ?? NaN) - (below[name] ?? NaN)) / (2 * h)
  })
  for (const name of Object.keys(work.base.outputs)) {
    const g = gradients.map((gradient) => gradient(name))
    const variance = fit.covariance.reduce(
      (sum, row, at) => sum + row.reduce((inner, v, k) => inner + (g[at] ?? 0) * v * (g[k] ?? 0), 0),
      0,
    )
    add(name, {
      input: 'rows',
      kind: 'fit',
      standardUncertainty: Math.sqrt(Math.max(0, variance)),
      degreesOfFreedom: fit.freedom,
    })
  }
}

/** Scatter of values that are only averaged. */
function addRepeats(work: Work, add: Adder): void {
  if (work.test.repeats === undefined) return
  const values = work.test.repeats.values(work.bench)
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length
  const variance = sumOfSquares(values.map((value) => value - mean)) / (values.length - 1)
  add(work.test.repeats.of, {
    input: 'rows',
    kind: 'scatter',
    standardUncertainty: Math.sqrt(variance / values.length),
    degreesOfFreedom: values.length - 1,
  })
}

const toleranceAt = (build: Build, path: string): Tolerance | undefined => build.tolerances[path]

/** What was given beside the readings, and what the build says with a tolerance: each through all that reads it. */
function addGiven(work: Work, add: Adder): void {
  const { bench, readings, build } = work
  const part = (input: string, u: number, altered: (by: number) => Bench, value: number) => {
    if (!(u > 0)) return
    for (const [name, slope] of Object.entries(slopes(work, altered, share * (Math.abs(value) || u))))
      add(name, { input, kind: 'given', standardUncertainty: Math.abs(slope) * u, degreesOfFreedom: null })
  }
  for (const [name, { value, standardUncertainty }] of readings.given) {
    const altered = (by: number) =>
      name.includes('.') ? bench.withEntry(name, value + by) : bench.withPlain(name, value + by)
    part(name, standardUncertainty, altered, value)
  }
  if (build === null) return
  for (const path of Object.keys(build.tolerances)) {
    const value = valueAt(build, keysOf(path))
    const tolerance = toleranceAt(build, path)
    if (readings.given.has(path) || typeof value !== 'number' || tolerance === undefined) continue
    const altered = (by: number) => bench.withEntry(path, value + by)
    part(path, standardUncertaintyOf(value, tolerance), altered, value)
  }
}

/**
 * Independent parts of the uncertainty of every output, largest first; parts that are nothing are left out.
 *
 * *Source:* ISO/IEC Guide 98-3 (JCGM 100:2008), 5.1.2, sensitivities by differences as in its 5.1.3, note 2.
 */
export function budgetsOf(work: Work): Budgets {
  const parts = new Map<string, BudgetPart[]>(Object.keys(work.base.outputs).map((name) => [name, []]))
  const exact = work.test.exact ?? []
  const add: Adder = (name, part) => {
    if (part.standardUncertainty > 0 && !exact.includes(name)) parts.get(name)?.push(part)
  }
  addFit(work, add)
  addRepeats(work, add)
  addLists(work, add)
  addColumns(work, add)
  addGiven(work, add)
  return Object.fromEntries(
    [...parts].map(([name, list]) => [
      name,
      list.sort((one, other) => other.standardUncertainty - one.standardUncertainty),
    ]),
  )
}
