import type { Pattern } from './drive.ts'
import { readPatternValue } from './read.ts'
import stored from './demos.json' with { type: 'json' }

/** Drive patterns of our own, all invented demo data, by name. */
export const demoPatterns: readonly Pattern[] = stored.map((value) => {
  const read = readPatternValue(value)
  if (!read.ok) throw new Error(`drive/demos.json: ${JSON.stringify(read.mistakes)}`)
  return read.value
})

/** The demo pattern of a name, capitals forgiven. */
export function demoPatternOf(name: string): Pattern | undefined {
  return demoPatterns.find((pattern) => pattern.name.toLowerCase() === name.toLowerCase())
}
