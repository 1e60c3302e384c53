import { shown } from '../mistakes/shown.ts'
import type { EntryReader } from './entry-reader.ts'
import { broken, type Rule } from './rule.ts'

const pathsIn = (entries: EntryReader, list: string) =>
  Array.from({ length: entries.length(list) }, (_, at) => `${list}.${at}`)

/** A group that has none or several of the entries of which it needs one. */
function oneOf(entries: EntryReader, path: string, keys: readonly string[]): ReturnType<Rule> {
  const given = keys.filter((key) => entries.raw(`${path}.${key}`) !== undefined)
  if (given.length === 1) return []
  const value = given.length === 0 ? 'none of them' : shown(given.join(' and '))
  return [{ code: 'between-fields', path, value, allowed: `one of ${keys.join(', ')}`, kept: '' }]
}

const wireHasOneSize: Rule = (entries) =>
  pathsIn(entries, 'wires').flatMap((wire) => oneOf(entries, wire, ['areaMm2', 'awg']))

const wireKnowsItsSupply: Rule = (entries) =>
  pathsIn(entries, 'wires').flatMap((wire) => {
    const path = `${wire}.stepDown`
    if (entries.word(`${wire}.circuit`) !== 'stepDown' || entries.raw(path) !== undefined) return []
    const allowed = `the place of a supply in stepDowns, counted from 0, since ${wire}.circuit is stepDown`
    return [{ code: 'missing', path, value: '', allowed, kept: '' }]
  })

const suppliesExist: Rule = (entries) =>
  [...pathsIn(entries, 'wires'), ...pathsIn(entries, 'accessories')].flatMap((item) => {
    const path = `${item}.stepDown`
    const place = entries.number(path)
    const count = entries.length('stepDowns')
    if (place === undefined || entries.raw(path) === undefined || place < count) return []
    const allowed =
      count === 0 ? 'nothing: stepDowns has no supply' : `0 to ${count - 1}, the places in stepDowns`
    return broken(path, place, allowed)
  })

const rowAsksOnce: Rule = (entries) =>
  pathsIn(entries, 'service.pattern.rows').flatMap((row) =>
    oneOf(entries, row, ['throttlePercent', 'speedKmh', 'speedPercent', 'brakePercent']),
  )

/** Rules between wires, supplies and accessories, and of the rows of the drive pattern. */
export const wiringRules: readonly Rule[] = [wireHasOneSize, wireKnowsItsSupply, suppliesExist, rowAsksOnce]
