import { writeFileSync } from 'node:fs'
import { cpuUsage, hrtime } from 'node:process'
import type { Measured } from '../../scripts/bench-table.ts'

/** Several runs of one thing: how long each took, in the same unit. */
export interface Runs {
  readonly median: number
  readonly low: number
  readonly high: number
}

/** Median and spread; spread is the least and the most seen. */
export function runsOf(values: readonly number[]): Runs {
  const sorted = [...values].sort((one, other) => one - other)
  const at = (share: number): number => sorted[Math.round(share * (sorted.length - 1))] ?? NaN
  return { median: at(0.5), low: at(0), high: at(1) }
}

/** The value below which 95 of a hundred runs lie. */
export function percentile95(values: readonly number[]): number {
  const sorted = [...values].sort((one, other) => one - other)
  return sorted[Math.ceil(0.95 * sorted.length) - 1] ?? NaN
}

/** Wall seconds of one run. */
export function wallSeconds(work: () => void): number {
  const start = hrtime.bigint()
  work()
  return Number(hrtime.bigint() - start) / 1e9
}

/** Processor seconds of one run: what it would take on a machine that does nothing else. */
export function processorSeconds(work: () => void): number {
  const start = cpuUsage()
  work()
  const { user, system } = cpuUsage(start)
  return (user + system) / 1e6
}

/** Runs after each other, the first of them to warm up and not counted. */
export function repeated(times: number, measure: () => number): Runs {
  measure()
  return runsOf(Array.from({ length: times }, measure))
}

/** `1.23 M/s (1.10 to 1.31)`. */
export function told({ median, low, high }: Runs, unit: string, digits = 2): string {
  const [middle, least, most] = [median, low, high].map((value) => value.toFixed(digits))
  return `${middle} ${unit} (${least} to ${most})`
}

const kept: Measured[] = []

/** Keeps a number under its own name for `npm run bench -- --keep`, in the file that it names; says it as `told` does. */
export function keptAs(name: string, runs: Runs, unit: string, digits = 2): string {
  const file = process.env['PITCHLINE_BENCH_KEEP']
  kept.push({ name, unit, better: unit === 'M/s' ? 'more' : 'less', ...runs })
  if (file) writeFileSync(file, JSON.stringify(kept))
  return told(runs, unit, digits)
}
