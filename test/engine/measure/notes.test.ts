import { readdirSync, readFileSync } from 'node:fs'
import { expect, it } from 'vitest'
import { noteCodes } from '../../../shared-engine/measure/kind.ts'
import { measure } from '../../../shared-engine/measure/measure.ts'
import { readReadings } from '../../../shared-engine/measure/read.ts'
import type { TestId } from '../../../shared-engine/reference/measurements.ts'

// Every code of a note stands for something that readings can have: the golden ones have most, these the rest.

/** Notes of readings typed here, as `code about`. */
function notesOf(test: TestId, parts: Record<string, unknown>): readonly string[] {
  const value = { format: 'pitchline-readings', version: 1, test, ...parts }
  const read = readReadings(test, new TextEncoder().encode(JSON.stringify(value)), null)
  if (!read.ok) throw new Error(JSON.stringify(read.mistakes))
  const result = measure(read.value, null)
  if (!result.ok) throw new Error(JSON.stringify(result.mistakes))
  return result.value.notes.map(({ code, about }) => `${code} ${about}`)
}

const freeRun = (amps: readonly number[]) =>
  notesOf('free-run', {
    rows: amps.map((amps, at) => ({ volts: 8 + at, rpm: 960 * (8 + at), amps })),
  })
const straight = [0.6, 0.64, 0.68, 0.72, 0.76, 0.8]

const coolDown = (seconds: readonly number[], sink = 20) =>
  notesOf('cool-down', {
    rows: seconds.map((seconds, at) => ({ seconds, celsius: 80 - at })),
    lists: { sinkCelsius: [sink, sink] },
    given: { 'motor.thermalResistanceKPerW': 0.5 },
  })

const own: readonly (readonly [code: string, notes: () => readonly string[], about: string])[] = [
  ['bent', () => freeRun(straight.map((amps, at) => amps + 0.02 * (at - 2.5) ** 2)), 'rows'],
  ['held', () => freeRun([0.7, 0.702, 0.699, 0.701, 0.698, 0.7]), 'viscous'],
  ['time', () => coolDown([60, 60, 60, 60, 60]), 'seconds'],
  // Nothing is above the sink: no logarithm of it exists.
  ['sign', () => coolDown([60, 120, 180, 240, 300], 90), 'capacity'],
]

it.each(own)('%s is noted', (code, notes, about) => {
  expect(notes()).toContain(`${code} ${about}`)
})

it('a straight line is not bent, nor held', () => {
  expect(freeRun(straight).filter((note) => /^(bent|held)/.test(note))).toEqual([])
})

it('every code is one of these, or of the golden readings', () => {
  const folder = new URL('../../golden/measure/', import.meta.url)
  const golden = readdirSync(folder)
    .filter((name) => /^\d\d\.expected\.json$/.test(name))
    .flatMap((name) => {
      const { notes } = JSON.parse(readFileSync(new URL(name, folder), 'utf8')) as {
        notes: { code: string }[]
      }
      return notes.map(({ code }) => code)
    })
  const found = new Set([...golden, ...own.map(([code]) => code)])
  expect(noteCodes.filter((code) => !found.has(code))).toEqual([])
})
