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
import { heading, quiet, words, type Block, type Row } from './block.ts'

/** Kept out: they are told elsewhere on the sheet, or are no entries of the machine. */
const elsewhere = /^(format|version|name|notes|tolerances\..*|origins\..*|readings\..*)$/

const originWords = Object.fromEntries(
  origins.each.choices.map(({ value, label }) => [value, label]),
) as Readonly<Record<EntryOrigin, string>>

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
  return spread === undefined ? '' : `${toleranceText(rounded(spread), field, unit).trim()}, by its origin`
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
  return without !== undefined && without === value ? 'Default' : 'Not stated'
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

/** Every entry that the build has, part by part, with its spread and where it comes from. */
export function entryBlocks({ build }: Checked, system: UnitSystem): readonly Block[] {
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
  const tables = [...parts].flatMap(([part, rows]): Block[] => [
    heading(part),
    // What belongs to one item of a list stands together.
    { block: 'table', columns, rows: rows.toSorted((one, other) => itemOf(one) - itemOf(other)) },
  ])
  return [
    ...tables,
    quiet(
      'A spread is two standard deviations, or the ends of what is equally likely; without one of its own an entry has that of its origin: 3 % measured, 10 % stated, 40 % guessed or assumed (common practice).',
    ),
  ]
}
