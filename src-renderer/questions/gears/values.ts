import type { SpaceValues } from '../../../shared-engine/search/space-schema.ts'

const range =
  /^(\d+(?:\.\d+)?)\s*(?:\.\.\.?|…|–|-|to)\s*(\d+(?:\.\d+)?)(?:\s*(?:step|by)\s*(\d+(?:\.\d+)?))?$/i
const number = /^\d+(?:\.\d+)?$/

/** What may be typed, for the sentence under a wrong entry. */
export const valuesAllowed =
  'a range (9..24), with a step (60..100 step 5), a list (12, 15, 18), or the name of a list you own'

/**
 * Values to try as a builder types them: one range with its step, a list of numbers and whole-number ranges, or the name
 * of a list owned. Null where it cannot be read.
 *
 * @example readValues('60..100 step 5', []) // { from: 60, to: 100, step: 5 }
 */
export function readValues(typed: string, lists: readonly string[]): SpaceValues | null {
  const text = typed.trim()
  const named = lists.find((name) => name.toLowerCase() === text.toLowerCase())
  if (named !== undefined) return named
  const parts = text.split(/[,;]/).map((part) => part.trim())
  const [only = ''] = parts
  const whole = range.exec(only)
  if (parts.length === 1 && whole !== null) return rangeOf(whole)
  const values: number[] = []
  for (const part of parts) {
    const span = range.exec(part)
    if (span !== null) {
      const { from, to, step } = rangeOf(span)
      if (!(step > 0) || (to - from) / step > 1000) return null
      for (let value = from; value <= to + 1e-9; value += step) values.push(Number(value.toPrecision(12)))
    } else if (number.test(part)) values.push(Number(part))
    else return null
  }
  return [...new Set(values)]
}

function rangeOf(match: RegExpExecArray): { from: number; to: number; step: number } {
  const [, from, to, step] = match
  return { from: Number(from), to: Number(to), step: step === undefined ? 1 : Number(step) }
}

/** Values as the field shows them; what {@link readValues} reads back. */
export function valuesText(values: SpaceValues): string {
  if (typeof values === 'string') return values
  if (Array.isArray(values)) return values.join(', ')
  const { from, to, step } = values
  return step === 1 ? `${from}..${to}` : `${from}..${to} step ${step}`
}

/** Lists of teeth owned, one a line: "pinions: 12, 15, 18". Lines that cannot be read are told. */
export function readOwned(text: string): { lists: Record<string, number[]>; wrong: readonly string[] } {
  const lists: Record<string, number[]> = {}
  const wrong: string[] = []
  for (const line of text.split('\n').filter((one) => one.trim() !== '')) {
    const [name = '', ...rest] = line.split(':')
    const values = readValues(rest.join(':'), [])
    if (name.trim() === '' || values === null || typeof values === 'string') wrong.push(line.trim())
    else lists[name.trim()] = Array.isArray(values) ? values : spread(values)
  }
  return { lists, wrong }
}

function spread({ from, to, step }: { from: number; to: number; step: number }): number[] {
  const count = step > 0 ? Math.min(1000, Math.floor((to - from) / step + 1e-9) + 1) : 0
  return Array.from({ length: Math.max(0, count) }, (_, place) =>
    Number((from + place * step).toPrecision(12)),
  )
}
