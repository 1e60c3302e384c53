/** Control characters, line separators and text-direction marks: what could break a line or drive a terminal. */
const unprintable = /[\p{Cc}\p{Cf}\p{Zl}\p{Zp}\p{Cs}]/gu

/** Text in as many lines as it has, every other control character and direction mark made visible. */
export function printable(text: string): string {
  return text.replace(unprintable, (mark, at: number) =>
    mark === '\n' || (mark === '\r' && text[at + 1] === '\n') ? mark : '\uFFFD',
  )
}

/** Text on one line and no longer than `most` characters, whatever was in it. */
export function oneLine(text: string, most: number): string {
  const clean = text.slice(0, 4 * most).replace(unprintable, '\uFFFD')
  const characters = [...clean]
  return characters.length <= most ? clean : `${characters.slice(0, most - 1).join('')}…`
}

/**
 * What was found in a file, short enough to stand in a sentence: numbers as written, text in quotes, lists and groups
 * by their size.
 *
 * @example shown([1, 2]) // 'a list of 2'
 */
export function shown(value: unknown): string {
  if (typeof value === 'string') return `"${oneLine(value, 40)}"`
  if (value === null) return 'null'
  if (Array.isArray(value)) return value.length === 0 ? 'an empty list' : `a list of ${value.length}`
  if (typeof value === 'object') return 'a group of entries'
  if (value === undefined) return 'nothing'
  return oneLine(String(value), 40)
}
