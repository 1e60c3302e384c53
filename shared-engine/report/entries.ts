import type { Checked } from '../check.ts'
import { placesOf } from '../entries/condition.ts'
import { entryInForce, withEntry } from '../entries/edit.ts'
import { fieldOf, fieldPatterns, groups, type Field } from '../entries/fields.ts'
import { origins } from '../entries/parts/evidence.ts'
import { stageKinds } from '../entries/parts/stages/kinds.ts'
import { isListIndex, keysOf, patternOf, valueAt } from '../entries/path.ts'
import type { Build, EntryOrigin } from '../entries/schema.ts'
import { entryText, toleranceText, fieldUnit, unitWords } from '../entries/shown.ts'
import { printable } from '../mistakes/shown.ts'
import { spreadsOf } from '../uncertainty/spreads.ts'
import type { UnitSystem } from '../units/kinds.ts'
import { heading, quiet, run, words, type Block, type Row } from './block.ts'

/** Kept out: they are told elsewhere on the sheet, or are no entries of the machine. */
const elsewhere = /^(format|version|name|notes|tolerances\..*|origins\..*|readings\..*)$/

const originWords = Object.fromEntries(
  origins.each.choices.map(({ value, label }) => [value, label]),
) as Readonly<Record<EntryOrigin, string>>

const atDefault = 'Default'
const notStated = 'Not stated'
const byOrigin = ', by its origin'

const columns = [
  words('Entry', 42),
  words('Value', 28),
  words('Spread', 20),
  words('Where it comes from', 28),
]

/** One entry as it is shown: number with unit, the words of a choice, text on one line. */
function valueText(path: string, value: unknown, field: Field, system: UnitSystem): string {
  if (typeof value === 'number') {
    const unit = unitWords(field, system, value)
    return `${entryText(value, field, system, undefined).replace('-', '−')}${unit === '' || unit === '°' ? unit : ` ${unit}`}`
  }
  if (typeof value === 'boolean') return value ? 'yes' : 'no'
  const choice = field.choices?.find((one) => one.value === value)
  return choice?.label ?? printable(String(value)).replace(/\s+/g, ' ')
}

/** What stands for an entry's spread: its tolerance, or that which its origin gives it. */
function spreadText(build: Build, path: string, field: Field, system: UnitSystem): string {
  const unit = fieldUnit(field, system)
  const entered = build.tolerances[path]
  if (entered !== undefined) return toleranceText(entered, field, unit).trim()
  const spread = spreadsOf(build)[path]
  return spread === undefined ? '' : `${toleranceText(rounded(spread), field, unit).trim()}${byOrigin}`
}

/** Two digits: an assumed width has no more. */
const rounded = ({ plusMinus, shape }: { readonly plusMinus: number; readonly shape: 'normal' }) => ({
  plusMinus: Number(plusMinus.toPrecision(2)),
  shape,
})

function originText(build: Build, path: string, value: unknown): string {
  const origin = Object.hasOwn(build.origins, path) ? build.origins[path] : undefined
  if (origin !== undefined) return originWords[origin]
  // A complete build does not know what stood in its file: what is as it would be without is said to be so.
  const without = entryInForce(withEntry(build, path, undefined), path)
  return without !== undefined && without === value ? atDefault : notStated
}

/** "Reduction 2: Roller chain", "Motor". */
function partOf(build: Build, path: string): string {
  const [first = '', second = ''] = keysOf(path)
  if (first !== 'stages') return groups[first]?.label ?? first
  const kind = build.stages[Number(second)]?.kind
  return `Reduction ${Number(second) + 1}${kind === undefined ? '' : `: ${stageKinds[kind].label}`}`
}

/** The entry's name, with its place in lists and the groups inside its part. */
function labelOf(path: string, field: Field): string {
  const keys = keysOf(path)
  const inside = keys.slice(keys[0] === 'stages' ? 2 : 1, -1)
  const from = keys.length - 1 - inside.length
  const around = inside.flatMap((key, at) => {
    if (isListIndex(key)) return [String(Number(key) + 1)]
    const group = groups[patternOf(keys.slice(0, from + at + 1).join('.'))]
    return group === undefined ? [] : [group.label]
  })
  return [...around, field.label].join(', ')
}

/** The place in its list, counted from 1, that a row's label begins with; 0 for none. */
const itemOf = ({ cells: [label = ''] }: Row) => Number(/^(?:.*, )?(\d+), /.exec(label)?.[1] ?? 0)

/** Every entry that the build has as a row, part by part. */
function entryRows({ build }: Checked, system: UnitSystem): ReadonlyMap<string, readonly Row[]> {
  const parts = new Map<string, Row[]>()
  for (const pattern of fieldPatterns) {
    const field = fieldOf(pattern)
    if (field === undefined || elsewhere.test(pattern) || field.document === true) continue
    for (const path of placesOf(pattern, field, build)) {
      const value = valueAt(build, keysOf(path))
      if (value === undefined || value === '') continue
      const part = partOf(build, path)
      const row: Row = {
        cells: [
          labelOf(path, field),
          valueText(path, value, field, system),
          spreadText(build, path, field, system),
          originText(build, path, value),
        ],
      }
      parts.set(part, [...(parts.get(part) ?? []), row])
    }
  }
  // What belongs to one item of a list stands together.
  return new Map(
    [...parts].map(([part, rows]) => [part, rows.toSorted((one, other) => itemOf(one) - itemOf(other))]),
  )
}

/** Every entry that the build has, part by part, with its spread and where it comes from. */
export function entryBlocks(checked: Checked, system: UnitSystem): readonly Block[] {
  const tables = [...entryRows(checked, system)].flatMap(([part, rows]): Block[] => [
    heading(part),
    { block: 'table', columns, rows },
  ])
  return [
    ...tables,
    quiet(
      'A spread is two standard deviations, or the ends of what is equally likely; without one of its own an entry has that of its origin: 3 % measured, 10 % stated, 40 % guessed or assumed (common practice).',
    ),
  ]
}

/** "Mass 150 kg ± 4 kg, measured"; where it comes from is left out where nobody said. */
function entryWords({ cells: [label = '', value = '', spread = '', origin = ''] }: Row): string {
  // One word is enough here: measured, stated, guessed, assumed.
  const known = origin === notStated ? '' : `, ${origin.toLowerCase().split(' ')[0]}`
  return `${label} ${value}${spread === '' ? '' : ` ${spread.replace(byOrigin, '')}`}${known}`
}

/** The same entries set closely, a part after the other; those at their defaults are counted. */
export function entryRuns(checked: Checked, system: UnitSystem): readonly Block[] {
  const parts = [...entryRows(checked, system)]
  const isOwn = ({ cells }: Row) => cells[3] !== atDefault
  const left = parts.flatMap(([, rows]) => rows).filter((row) => !isOwn(row)).length
  const runs = parts.flatMap(([part, rows]): Block[] => {
    const own = rows.filter(isOwn)
    return own.length === 0 ? [] : [run(part, `${own.map(entryWords).join('; ')}.`)]
  })
  const others = [
    ...(left === 0 ? [] : [`${left} more entries at their defaults`]),
    ...(checked.build.notes.trim() === '' ? [] : ['the builder’s notes']),
  ]
  const rest = others.length === 0 ? '' : ` The whole sheet has ${others.join(' and ')}.`
  return [...runs, quiet(`± is two standard deviations, or the ends of what is equally likely.${rest}`)]
}
