import type { Sheet } from '../../../../shared-engine/report/block.ts'
import type { Writer } from './writer.ts'

/** What stands for a letter that the typeface lacks. */
const standIn = '?'

/** The sheet as the typeface can show it, and the letters that it lacks: they must not come out as empty boxes. */
export function readable(
  sheet: Sheet,
  writer: Writer,
): { readonly sheet: Sheet; readonly lacking: readonly string[] } {
  const text = JSON.stringify(sheet)
  const letters = new Set([...text].filter((letter) => letter > '~'))
  const lacking = [...letters].filter((letter) => !writer.hasLetter(letter))
  if (lacking.length === 0) return { sheet, lacking }
  const gone = new Set(lacking)
  const shown = replaced(sheet, (words) =>
    [...words].map((letter) => (gone.has(letter) ? standIn : letter)).join(''),
  ) as Sheet
  return { sheet: { ...shown, made: `${shown.made} · ${lackingWords(lacking)}` }, lacking }
}

/** Letters named where they cannot be shown. */
const mostNamed = 12
const codeOf = (letter: string) =>
  `U+${(letter.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, '0')}`

/** "? stands for letters that this typeface lacks (U+6F22, U+5B57); the sheet as HTML or Markdown has them". */
function lackingWords(lacking: readonly string[]): string {
  const more = lacking.length - mostNamed
  const named = `${lacking.slice(0, mostNamed).map(codeOf).join(', ')}${more > 0 ? ` and ${more} more` : ''}`
  return `${standIn} stands for letters that this typeface lacks (${named}); the sheet as HTML or Markdown has them`
}

/** Plain data with each of its texts changed. */
function replaced(value: unknown, change: (text: string) => string): unknown {
  if (typeof value === 'string') return change(value)
  if (Array.isArray(value)) return value.map((one) => replaced(one, change))
  if (value === null || typeof value !== 'object') return value
  return Object.fromEntries(Object.entries(value).map(([key, inner]) => [key, replaced(inner, change)]))
}
