import {
  allowedOf,
  fieldOf,
  fieldPatterns,
  groups,
  isRequired,
} from '../../../shared-engine/entries/fields.ts'
import type { Field } from '../../../shared-engine/entries/fields.ts'
import { wrapped } from '../../../shared-engine/explain/wrap.ts'

const width = 80

/**
 * A page of plain text that lists every entry of a build: path, what it is called, range and unit, whether it has to be
 * there, what it means and what it would bring. Made from the table that also makes the file's checks, so that it is
 * never behind them.
 */
export function entriesPage(): string {
  const blocks = fieldPatterns.map((pattern) => {
    const field = fieldOf(pattern)
    return field === undefined ? '' : shownEntry(pattern, field)
  })
  const head = wrapped(
    'Every entry of a build file. A star in a path stands for a place in a list, counted from 0. An entry that does not have to be there may be left out.',
    width,
  )
  return `${head.join('\n')}\n\n${blocks.join('\n')}`
}

function shownEntry(pattern: string, field: Field): string {
  const group = groups[pattern.split('.').slice(0, -1).join('.')]
  const where = group === undefined ? '' : `${group.label}, `
  const text = [
    pattern,
    ...wrapped(`${where}${field.label}: ${allowedOf(field)}; ${needOf(field)}.`, width, '  ', '  '),
    ...wrapped(field.help, width, '  ', '  '),
    ...(field.brings === undefined ? [] : wrapped(`Brings: ${field.brings}`, width, '  ', '  ')),
  ]
  return `${text.join('\n')}\n`
}

function needOf(field: Field): string {
  const { onlyWith, requiredWith } = field
  const only = onlyWith === undefined ? '' : ` where ${onlyWith.entry} is ${onlyWith.among.join(' or ')}`
  if (requiredWith !== undefined) {
    return `has to be there where ${requiredWith.entry} is ${requiredWith.among.join(' or ')}`
  }
  if (isRequired(field)) return `has to be there${only}`
  const { default: plain, defaultFrom } = field
  const byDefault = plain === undefined ? defaultFrom?.says : String(plain)
  const standard = byDefault === undefined || byDefault === '' ? '' : `${byDefault} if left out`
  return `${standard === '' ? 'may be left out' : standard}${only}`
}
