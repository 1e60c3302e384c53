import type { UnitSystem } from '../../shared-engine/units/kinds.ts'
import type { OptionValues } from './command.ts'
import type { Io } from './io.ts'
import { mostThreads, usualThreads } from './threads.ts'
import { mistake, report } from './trouble.ts'

/** The units that a text is asked for in. */
export function systemOf(options: OptionValues): UnitSystem {
  return options['units'] === 'imperial' ? 'imperial' : 'metric'
}

/** A whole number that an option was given, or null after what is allowed has been stated. */
export function wholeOf(
  path: string,
  typed: string | boolean | undefined,
  low: number,
  high: number,
  io: Io,
): number | null {
  const value = typeof typed === 'string' && typed.trim() !== '' ? Number(typed) : NaN
  if (Number.isInteger(value) && value >= low && value <= high) return value
  const [least, most] = [low.toLocaleString('en'), high.toLocaleString('en')]
  const allowed = `a whole number, ${least} to ${most}`
  report(io, 'pitchline', [mistake('out-of-range', { path, value: `"${typed}"`, allowed })])
  return null
}

/** How many threads are wanted; one for each core where nothing was said. */
export function threadsOf(options: OptionValues, io: Io): number | null {
  return wholeOf('--workers', options['workers'] ?? `${usualThreads()}`, 1, mostThreads, io)
}
