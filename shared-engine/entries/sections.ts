import { fieldPatterns, fieldOf, groups } from './fields.ts'
import { buildRows } from './parts/build.ts'
import { isList, isRow, type FormPart, type Node } from './rows/group.ts'

/** A run of entries under a heading of a part's form. */
export interface Section {
  /** Empty: right under the part's name. */
  readonly heading: string
  /** Keys of the entries after the part's group; lists written as `*`. */
  readonly entries: readonly string[]
  /** Pattern of the group that may be absent whole, where the entries are in one. */
  readonly whole?: string
}

/** A part of the build as a builder opens it. */
interface FormOfPart {
  /** Of the build's own entries `build`, of an item of a list its own name, else the group's key. */
  readonly part: string
  readonly label: string
  readonly sections: readonly Section[]
}

/** The build's own entries: its name and notes. */
const own = { part: 'build', label: 'Name and notes', inside: '', headings: [''] } as const

/** The forms of all parts in the order of the file, the build's own entries last. */
export const partForms: readonly FormOfPart[] = [
  ...Object.entries<Node>(buildRows).flatMap(([key, node]) => formOf(key, node)),
  { part: own.part, label: own.label, sections: sectionsOf(own.inside, own.headings) },
]

function formOf(key: string, node: Node): FormOfPart[] {
  if (isRow(node) || 'each' in node) return []
  const asked: FormPart = isList(node) ? node.item : node
  const headings = asked.sections ?? ['']
  if (isList(node) && node.part !== undefined)
    return [{ part: node.part, label: node.item.label, sections: sectionsOf(`${key}.*.`, headings) }]
  return [{ part: key, label: asked.partName ?? node.label, sections: sectionsOf(`${key}.`, headings) }]
}

/** The sections of the entries whose pattern begins so; of the build itself, where that is empty. */
function sectionsOf(inside: string, headings: readonly string[]): Section[] {
  const known = [...headings]
  const patterns = fieldPatterns.filter(
    (pattern) => (inside === '' ? !pattern.includes('.') : pattern.startsWith(inside)) && hasForm(pattern),
  )
  const runs = new Map<string, { heading: string; whole: string | undefined; entries: string[] }>()
  for (const pattern of patterns.toSorted((one, other) => rankOf(one) - rankOf(other))) {
    const whole = wholeOf(pattern)
    const heading = fieldOf(pattern)?.section ?? groupHeading(whole, inside)
    if (fieldOf(pattern)?.section === undefined && !known.includes(heading)) known.push(heading)
    if (!known.includes(heading))
      throw new Error(`${pattern} stands under "${heading}", which its part lacks`)
    const name = `${heading} ${whole ?? ''}`
    const run = runs.get(name) ?? { heading, whole, entries: [] }
    run.entries.push(pattern.slice(inside.length))
    runs.set(name, run)
  }
  return [...runs.values()]
    .toSorted((one, other) => known.indexOf(one.heading) - known.indexOf(other.heading))
    .map(({ heading, whole, entries }) => ({ heading, entries, ...(whole === undefined ? {} : { whole }) }))
}

/** A group inside a part that may be absent whole stands under its own name, after the part's headings. */
function groupHeading(whole: string | undefined, inside: string): string {
  return whole !== undefined && whole.startsWith(inside) ? (groups[whole]?.label ?? '') : ''
}

function hasForm(pattern: string): boolean {
  return fieldOf(pattern)?.section !== null
}

function rankOf(pattern: string): number {
  return fieldOf(pattern)?.rank ?? 0
}

/** The innermost group around an entry that may be absent whole. */
function wholeOf(pattern: string): string | undefined {
  const keys = pattern.split('.')
  const around = keys.map((_, at) => keys.slice(0, at).join('.'))
  return around.findLast((group) => groups[group]?.optional === true)
}
