import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { peakNames } from '../../../../shared-engine/drive/reading.ts'
import { readPattern } from '../../../../shared-engine/drive/read.ts'
import { runDrive, type DriveOptions } from '../../../../shared-engine/drive/run.ts'
import type { DriveRun } from '../../../../shared-engine/drive/result.ts'
import { readBuild } from '../../../../shared-engine/entries/read.ts'

// The full run of each NN.pattern.json against an independent implementation of docs/model.md (see README.md here): a
// reading of the same text, no evidence that the text is right.

const here = new URL('.', import.meta.url)
const numbers = readdirSync(here)
  .map((name) => /^(\d\d)\.pattern\.json$/.exec(name)?.[1])
  .filter((number) => number !== undefined)

interface Owed {
  readonly pattern: Readonly<Record<string, number | string | null>> & {
    readonly peaks: Readonly<Record<string, number | null>>
  }
}

const bytesOf = (name: string) => readFileSync(new URL(name, here))

function driven(number: string, options: DriveOptions = {}): DriveRun {
  const build = readBuild(bytesOf(`${number}.build.json`))
  const pattern = readPattern(bytesOf(`${number}.pattern.json`))
  if (!build.ok || !pattern.ok) throw new Error(JSON.stringify([build, pattern]))
  return runDrive(build.value, pattern.value, options)
}

/** Steps of 1e-8 and 1e-10 of the other implementation differ by 1e-7; the floor is 1e-6 in each unit. */
const runCloseness = 1e-5
/** Peaks lie between steps, and these are another implementation's. */
const peakCloseness = 1e-3

function differs(found: number | null | undefined, owed: number | null, closeness: number): boolean {
  if (owed === null) return found !== null
  if (found === null || found === undefined) return true
  return !(Math.abs(found - owed) <= Math.max(closeness * Math.abs(owed), 1e-6))
}

it('there are six', () => {
  expect(numbers).toHaveLength(6)
})

describe.each(numbers)('the drive of golden build %s', (number) => {
  const run = driven(number)
  const { peaks, end, ...owed } = (JSON.parse(bytesOf(`${number}.expected.json`).toString()) as Owed).pattern

  it('ends as owed, with every number', () => {
    expect(run.end).toBe(end)
    const found = run as unknown as Readonly<Record<string, number | null>>
    const wrong = Object.entries(owed)
      .filter(([name, value]) => differs(found[name], value as number | null, runCloseness))
      .map(([name, value]) => `${name}: ${found[name]} instead of ${value}`)
    expect(wrong).toEqual([])
  })

  it('has the peaks', () => {
    expect(Object.keys(peaks).sort()).toEqual([...peakNames].sort())
    const wrong = peakNames
      .filter((name) => differs(run.peaks[name]?.value ?? null, peaks[name] ?? null, peakCloseness))
      .map((name) => `${name}: ${run.peaks[name]?.value} instead of ${peaks[name]}`)
    expect(wrong).toEqual([])
  })

  it('is the same to 1e-6 with steps a hundred times as exact', () => {
    const finer = driven(number, { relative: 1e-10 }) as unknown as Readonly<Record<string, number | null>>
    const found = run as unknown as Readonly<Record<string, number | null>>
    const wrong = Object.keys(owed).filter((name) => differs(found[name], finer[name] ?? null, 1e-6))
    expect(wrong).toEqual([])
  })
})
