import type { Build } from '../entries/schema.ts'
import { succeeded, type Result } from '../mistakes/mistake.ts'
import { guideOf } from '../reference/measurements.ts'
import type { Bench } from './bench.ts'
import { budgetsOf, type BudgetPart } from './budget.ts'
import { combined, type Combined } from './combine.ts'
import { evaluated, valuesOf } from './evaluate.ts'
import { judged, worstOf } from './judge.ts'
import type { Output, Outputs, Remark, Verdict } from './kind.ts'
import { layReadings } from './lay.ts'
import type { Readings } from './readings.ts'
import { obstaclesOf, remarksOnFit, remarksOnReadings } from './remarks.ts'
import { noteOf, type Note } from './sentences.ts'
import { guidedTests } from './tests/table.ts'

/** A number that was measured, in its own unit; null where it cannot be formed. */
export interface MeasuredNumber {
  readonly name: string
  readonly unit: string
  readonly value: number | null
  readonly standardUncertainty: number | null
  /** null: infinite, or no value. */
  readonly degreesOfFreedom: number | null
  readonly coverageFactor: number | null
  /** k u, to be taken as a normal tolerance of two standard deviations. */
  readonly plusMinus: number | null
  /** Largest part first. */
  readonly budget: readonly BudgetPart[]
}

/** A number that an entry of the build can take over. */
export interface MeasuredResult extends MeasuredNumber {
  readonly path: string
  readonly verdict: Verdict
}

/** What came of a guided test. */
export interface Measurement {
  readonly test: Readings['test']
  readonly verdict: Verdict
  readonly origin: 'measured' | 'stated'
  readonly results: readonly MeasuredResult[]
  readonly figures: Readonly<Record<string, MeasuredNumber>>
  readonly notes: readonly Note[]
  /** Each output as its formula gives it, with the numbers put in; without those that come to no number. */
  readonly formulas: Outputs
}

/**
 * Works out a guided test: results with their uncertainty, what they are worth, and what is to be said of them.
 *
 * @param build of which entries and tolerances are read that the readings do not give; null where there is none
 * @returns the measurement; mistakes where something is missing
 * *Source:* formulas as each test names them; ISO/IEC Guide 98-3 (JCGM 100:2008) for the uncertainty.
 */
export function measure(readings: Readings, build: Build | null): Result<Measurement> {
  const laid = layReadings(readings, build)
  return laid.ok ? succeeded(measurementOf(readings, build, laid.value)) : laid
}

function measurementOf(readings: Readings, build: Build | null, bench: Bench): Measurement {
  const test = guidedTests[readings.test]
  const obstacles = obstaclesOf(readings, bench)
  const onReadings = remarksOnReadings(readings, bench)
  if (obstacles.length > 0) return withoutResult(readings, [...obstacles, ...onReadings])
  const chosen = test.choose?.(bench) ?? []
  const base = evaluated(test, bench, chosen)
  const values = valuesOf(base.outputs)
  const own = test.remarks?.(bench, values, chosen) ?? []
  const general = [...onReadings, ...remarksOnFit(test, bench, chosen, base), ...own]
  const budgets = budgetsOf({ test, readings, build, bench, chosen, base })
  const numbers = new Map(
    Object.entries(base.outputs).map(([name, output]) => [name, numberOf(output, budgets[name] ?? [])]),
  )
  const formed = Object.entries(base.outputs).filter(([name]) => numbers.get(name) !== null)
  return assembled(readings, numbers, general, Object.fromEntries(formed))
}

/** A number with its uncertainty; null where it or its uncertainty is none. */
interface Formed {
  readonly value: number
  readonly budget: readonly BudgetPart[]
  readonly combined: Combined
}

function numberOf(output: Output, budget: readonly BudgetPart[]): Formed | null {
  const total = combined(budget)
  if (!Number.isFinite(output.value) || !Number.isFinite(total.plusMinus)) return null
  return { value: output.value, budget, combined: total }
}

const nothing = {
  value: null,
  standardUncertainty: null,
  degreesOfFreedom: null,
  coverageFactor: null,
  plusMinus: null,
} as const

function assembled(
  readings: Readings,
  numbers: ReadonlyMap<string, Formed | null>,
  general: readonly Remark[],
  formulas: Outputs,
): Measurement {
  const guide = guideOf(readings.test)
  const ofAll = general.map((remark) => remark.verdict)
  const remarks = [...general]
  const results = guide.results
    .filter(({ name }) => numbers.has(name))
    .map(({ name, path, unit }): MeasuredResult => {
      const formed = numbers.get(name) ?? null
      if (formed === null) {
        remarks.push({ code: 'sign', about: name, verdict: 'retake' })
        return { name, path, unit, ...nothing, budget: [], verdict: 'retake' }
      }
      const { value, remarks: said } = judged({ name, path, value: formed.value }, formed.combined)
      remarks.push(...said)
      const verdict = worstOf([...ofAll, ...said.map((remark) => remark.verdict)])
      return { name, path, unit, value, ...formed.combined, budget: formed.budget, verdict }
    })
  const figures = guide.figures
    .filter(({ name }) => numbers.has(name))
    .map(({ name, unit }): MeasuredNumber => {
      const formed = numbers.get(name) ?? null
      return formed === null
        ? { name, unit, ...nothing, budget: [] }
        : { name, unit, value: formed.value, ...formed.combined, budget: formed.budget }
    })
  return {
    test: readings.test,
    verdict: worstOf(results.map(({ verdict }) => verdict)),
    origin: guidedTests[readings.test].origin ?? 'measured',
    results,
    figures: Object.fromEntries(figures.map((figure) => [figure.name, figure])),
    notes: remarks.map((remark) => noteOf(readings, remark)),
    formulas,
  }
}

function withoutResult(readings: Readings, remarks: readonly Remark[]): Measurement {
  const { results } = guideOf(readings.test)
  // Of results that go with optional lists, or with a material, only the first is sure to be asked for.
  const [first] = results
  const always = results.filter((result) => result === first || isAlways(readings, result.name))
  return {
    test: readings.test,
    verdict: 'retake',
    origin: guidedTests[readings.test].origin ?? 'measured',
    results: always.map(({ name, path, unit }) => ({
      name,
      path,
      unit,
      ...nothing,
      budget: [],
      verdict: 'retake',
    })),
    figures: {},
    notes: remarks.map((remark) => noteOf(readings, remark)),
    formulas: {},
  }
}

/** Results that stand beside the first one only with their list. */
const withList: Readonly<Record<string, string | null>> = {
  error: 'sprocketMm',
  perMetre: 'loopKg',
  knockdown: null,
}

function isAlways({ lists }: Readings, name: string): boolean {
  const list = withList[name]
  return list === undefined || (list !== null && lists.has(list))
}
