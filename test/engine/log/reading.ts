import { readFileSync } from 'node:fs'
import path from 'node:path'
import { readBuild } from '../../../shared-engine/entries/read.ts'
import type { Build } from '../../../shared-engine/entries/schema.ts'
import type { ColumnsChoice } from '../../../shared-engine/log/columns/choice.ts'
import { readAlarms } from '../../../shared-engine/log/facts/alarms.ts'
import { logOf } from '../../../shared-engine/log/log.ts'
import { refusalCodeOf } from '../../../shared-engine/log/refusal.ts'
export { atOnce } from '../../../shared-engine/log/pieces.ts'
import type { LogResult } from '../../../shared-engine/log/result.ts'
import { sentenceOf } from '../../../shared-engine/mistakes/catalogue.ts'

const root = path.resolve(import.meta.dirname, '../../..')
export const logFolder = path.join(root, 'test/golden/logs')
export const logNumbers = ['01', '02', '03', '04', '05', '06', '07', '08', '09', '10', '11', '12'] as const

/** A build of the goldens or of the examples. */
export function buildFrom(file: string): Build {
  const read = readBuild(readFileSync(file))
  if (!read.ok) throw new Error(`${file}: ${read.mistakes.map(sentenceOf).join(' ')}`)
  return read.value
}

/** A demo machine of the examples. */
export const demoBuild = buildFrom(path.join(root, 'examples/hut-hauler.build.json'))

/** A golden log as the engine reads it. */
export function goldenResult(number: string): LogResult {
  const alarms = readAlarms(readFileSync(path.join(logFolder, `${number}.alarms.json`)))
  if (!alarms.ok) throw new Error('the golden card of alarms cannot be read')
  const bytes = readFileSync(path.join(logFolder, `${number}.csv`))
  const build = buildFrom(path.join(logFolder, `${number}.build.json`))
  const result = logOf({ build, bytes, choice: {}, alarms: alarms.value })
  if (!result.ok) throw new Error(result.mistakes.map(sentenceOf).join(' '))
  return result.value
}

const encoder = new TextEncoder()

/** A log written in a test, read for the demo machine: its result, or the code of its refusal. */
export function readText(
  text: string | Uint8Array,
  choice: ColumnsChoice = {},
  build: Build = demoBuild,
): LogResult | string {
  const bytes = typeof text === 'string' ? encoder.encode(text) : text
  const result = logOf({ build, bytes, choice, alarms: null })
  if (result.ok) return result.value
  const [first] = result.mistakes
  return (first === undefined ? null : refusalCodeOf(first)) ?? 'refused without a code'
}

/** The same where the log has to be readable. */
export function resultOfText(
  text: string | Uint8Array,
  choice: ColumnsChoice = {},
  build: Build = demoBuild,
): LogResult {
  const result = readText(text, choice, build)
  if (typeof result === 'string') throw new Error(`refused: ${result}`)
  return result
}

/** Count of a repair; 0 where it was not made. */
export function countOf(result: LogResult, code: string, channel: string | null = null): number {
  return result.repairs.find((one) => one.code === code && one.channel === channel)?.count ?? 0
}
