import { logUnits, missingWords, type LogUnit } from '../../reference/columns.ts'
import { sha256, utf8Bytes } from './sha256.ts'
import { unitKey } from './number.ts'

/**
 * The unit in a heading: what follows the first bracket, slash, underscore or blank after which it is one. A heading that
 * is a unit is both name and unit.
 *
 * @example unitInHeading('Pack current [A]')?.key // 'a'
 */
export function unitInHeading(heading: string): LogUnit | null {
  for (let place = 0; place < heading.length; place += 1) {
    if (!/[([{/_\s]/.test(heading[place] ?? '')) continue
    const unit = logUnits.get(unitKey(heading.slice(place + 1)))
    if (unit !== undefined) return unit
  }
  return logUnits.get(unitKey(heading)) ?? null
}

/** The unit that a cell of a row of units names, in brackets or not. */
export function unitInCell(cell: string): LogUnit | null {
  return logUnits.get(unitKey(cell.trim().replace(/^[([{]+/, ''))) ?? null
}

/** Whether a row holds units alone, at least two of them; blanks and dashes count for nothing. */
export function isUnitsRow(cells: readonly string[]): boolean {
  const filled = cells.filter((cell) => !/^[\s\-\u2013\u2014]*$/.test(cell))
  return filled.length >= 2 && filled.every((cell) => unitInCell(cell) !== null)
}

/** Whether a row draws a line under the one above it, in dashes, underscores or equals signs alone. */
export function isRuledRow(cells: readonly string[]): boolean {
  const filled = cells.map((cell) => cell.trim()).filter((cell) => cell !== '')
  return filled.length > 0 && filled.every((cell) => /^[-_=\u2013\u2014]{2,}$/.test(cell))
}

/**
 * What a heading says of its numbers' unit or scale where it is no unit that is known: what stands in brackets at its end,
 * or a power of ten behind a sign; null where it says nothing of the kind.
 *
 * @example unknownUnitIn('Pack current [dA]') // 'dA'
 */
export function unknownUnitIn(heading: string): string | null {
  if (unitInHeading(heading) !== null) return null
  const bracketed = /[([{]\s*([^()[\]{}]{1,12}?)\s*[)\]}]\s*$/.exec(heading)?.[1]
  const scaled = /(?:[x\u00d7*]\s?10+|[/\u00f7]\s?10+)$/i.exec(heading.trim())?.[0]
  return bracketed ?? scaled ?? null
}

/** Text as names are compared: compatibility forms unified, blanks joined, lower case. *Source:* Unicode Annex 15, NFKC. */
export function foldedName(text: string): string {
  return text.normalize('NFKC').trim().replace(/\s+/g, ' ').toLowerCase()
}

/**
 * By what a layout of columns is known again: a digest of its headings and units.
 *
 * @returns 16 hexadecimal digits
 * *Source:* FIPS 180-4, SHA-256; names joined by U+001F, the unit separator of ECMA-48.
 */
export function fingerprintOf(headings: readonly string[], units: readonly string[] | null): string {
  const names = [...headings, ...(units ?? [])].map(foldedName)
  return sha256(utf8Bytes(names.join('\u001f'))).slice(0, 16)
}

/** Cells that are filled: neither blank nor a sign for "missing". */
export function filledCells(cells: readonly string[]): number {
  return cells.filter((cell) => !missingWords.has(cell.trim().toLowerCase())).length
}
