import {
  channelRows,
  classesOfWord,
  impliedClassOf,
  type ChannelId,
  type ChannelRow,
  type LogUnit,
} from '../../reference/columns.ts'
import { unitInHeading } from '../text/heading.ts'

/**
 * The words of a heading, lower case: split at what is no letter, where a capital follows a small letter, and before the
 * last of several capitals; the words that are not split at capitals count too.
 *
 * @example wordsOf('MotorRPM') // ['motorrpm', 'motor', 'rpm']
 */
export function wordsOf(name: string): readonly string[] {
  const text = name.normalize('NFKC')
  const whole = text.split(/[^\p{L}]+/u)
  const split = text
    .replace(/(\p{Ll})(\p{Lu})/gu, '$1 $2')
    .replace(/(\p{Lu})(\p{Lu}\p{Ll})/gu, '$1 $2')
    .split(/[^\p{L}]+/u)
  return [...new Set([...whole, ...split].filter((word) => word !== '').map((word) => word.toLowerCase()))]
}

/** Classes of a heading's words, and of its unit. */
export function classesOf(name: string, unit: LogUnit | null): ReadonlySet<string> {
  const classes = new Set(wordsOf(name).flatMap((word) => classesOfWord.get(word) ?? []))
  const implied = unit === null ? undefined : impliedClassOf(unit.kind)
  if (implied !== undefined) classes.add(implied)
  if (unit?.key === 'erpm') classes.add('electrical')
  return classes
}

/** How well a channel fits a column's name: the longest list of classes that is there in full; 0 where it does not. */
export function scoreOf(row: ChannelRow, classes: ReadonlySet<string>, unit: LogUnit | null): number {
  if (unit !== null && unit.kind !== row.kind) return 0
  if (row.not.some((one) => classes.has(one))) return 0
  const found = row.any.filter((list) => list.every((one) => classes.has(one)))
  return Math.max(0, ...found.map((list) => list.length))
}

/** The channel that a heading names by itself; null where it names none. */
export function channelNamed(heading: string): ChannelId | null {
  if (heading.trim() === '') return null
  const unit = unitInHeading(heading)
  const classes = classesOf(heading, unit)
  let best: ChannelId | null = null
  let most = 0
  for (const row of channelRows) {
    const score = scoreOf(row, classes, unit)
    if (score > most) {
      most = score
      best = row.id
    }
  }
  return best
}
