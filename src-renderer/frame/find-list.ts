import type { LimitId } from '../../shared-engine/limits/id.ts'
import { fieldOf, figureTable, limitOf, type Checked, type StoredBuild } from '../../shared-engine/index.ts'
import { applies } from '../fields/applies.ts'
import { entryAt } from '../../shared-engine/entries/edit.ts'
import { forms, partName, partsOf } from '../fields/forms.ts'
import { isListPart } from '../fields/list-edits.ts'
import { groupOfPart } from '../fields/part-of-path.ts'

/** Something that can be gone to by its name: by the path of an entry, the id of a limit, the name of a figure. */
export type Findable = {
  readonly label: string
  /** Where it is: its part, or what it is. */
  readonly where: string
} & (
  | { readonly kind: 'entry' | 'figure'; readonly id: string }
  | { readonly kind: 'limit'; readonly id: LimitId }
)

/** Every entry that this build has, then its limits, then the figures. */
export function findables(build: StoredBuild, checked: Checked): readonly Findable[] {
  const limits = checked.limits.map(({ id }): Findable => ({
    kind: 'limit',
    id,
    label: limitOf(id)?.label ?? id,
    where: 'limit',
  }))
  const figures = figureTable.map(({ name, label }): Findable => ({
    kind: 'figure',
    id: name,
    label,
    where: 'figure',
  }))
  return [...entriesOf(build, checked), ...limits, ...figures]
}

function entriesOf(build: StoredBuild, checked: Checked): readonly Findable[] {
  const parts = partsOf(checked.build.stages.length).filter((part) => !isListPart(part))
  return parts.flatMap((part) => {
    const prefix = part === 'build' ? '' : `${groupOfPart(part)}.`
    const sections = forms[part.startsWith('stage.') ? 'stage' : part] ?? []
    return sections
      .filter(
        ({ whole }) => whole === undefined || isThere(build, whole.replace('stages.*', groupOfPart(part))),
      )
      .flatMap(({ entries }) => entries.map((key) => `${prefix}${key}`))
      .filter((path) => fieldOf(path) !== undefined && applies(path, checked.build))
      .map((id): Findable => ({ kind: 'entry', id, label: fieldOf(id)?.label ?? id, where: partName(part) }))
  })
}

/** Liquid cooling, the drive tooth, a joint may be absent whole. */
const isThere = (build: StoredBuild, whole: string): boolean => entryAt(build, whole) !== undefined

/** Those in which every word that was typed begins a word of the name or of its place; the name's own first. */
export function found(all: readonly Findable[], typed: string, most: number): readonly Findable[] {
  const words = typed
    .toLowerCase()
    .split(/\s+/)
    .filter((word) => word !== '')
  if (words.length === 0) return []
  const begins = (text: string, word: string) => ` ${text.toLowerCase()}`.includes(` ${word}`)
  const inName = all.filter(({ label }) => words.every((word) => begins(label, word)))
  const inPlace = all.filter(
    (one) => !inName.includes(one) && words.every((word) => begins(`${one.label} ${one.where}`, word)),
  )
  return [...inName, ...inPlace].slice(0, most)
}
