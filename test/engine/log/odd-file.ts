import { expect } from 'vitest'
import type { LogResult } from '../../../shared-engine/log/result.ts'
import { countOf } from './reading.ts'

// What odd files are written with, and what is looked at in their results.

export const rows = (count: number, line: (row: number) => string) =>
  Array.from({ length: count }, (_, row) => line(row))
export const plain = (count: number) =>
  rows(count, (row) => `${(row / 5).toFixed(1)},${1500 + 10 * row},48.${row % 10}`)
export const heading = 'Time [s],Motor rpm,Pack volts [V]'
export const file = (...lines: (string | readonly string[])[]) => `${lines.flat().join('\n')}\n`

/** Every number in a result, at any depth, is finite. */
export function oddNumbers(value: unknown, at = ''): readonly string[] {
  if (typeof value === 'number') return Number.isFinite(value) ? [] : [`${at}: ${value}`]
  if (typeof value !== 'object' || value === null) return value === undefined ? [`${at}: undefined`] : []
  return Object.entries(value).flatMap(([key, one]) => oddNumbers(one, `${at}.${key}`))
}

export type Check = (result: LogResult) => void
export const repaired =
  (code: string, count: number, channel: string | null = null): Check =>
  (result) =>
    expect(countOf(result, code, channel)).toBe(count)
export const segments =
  (count: number): Check =>
  (result) =>
    expect(result.segments).toHaveLength(count)
export const channels =
  (...ids: (string | null)[]): Check =>
  (result) =>
    expect(result.columns.map(({ channel }) => channel)).toEqual(ids)
export const stepOf =
  (seconds: number): Check =>
  (result) =>
    expect(result.reading.stepSeconds).toBeCloseTo(seconds, 9)
export const peak =
  (name: string, value: number): Check =>
  (result) =>
    expect(result.facts.peaks[name]?.value).toBeCloseTo(value, 9)
export const reading =
  (key: keyof LogResult['reading'], value: unknown): Check =>
  (result) =>
    expect(result.reading[key]).toBe(value)

/** A name, a text, and what its result has to be. */
export type OddFile = readonly [name: string, text: string, ...checks: Check[]]

export const withRow = (at: number, row: string) => [...plain(at), row, ...plain(40).slice(at)]
export const swapped = (separator: string) =>
  file(
    heading.replaceAll(',', separator),
    plain(40).map((line) => line.replaceAll(',', separator)),
  )
