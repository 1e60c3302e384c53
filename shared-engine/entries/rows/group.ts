import type { AxisFacts, Row } from './row.ts'

/** What stands under the keys of a group. */
export type Rows = Readonly<Record<string, Node>>

/** What is known of a part of the build that holds entries. */
interface Part {
  readonly label: string
  /** What it would bring where it may be absent whole. */
  readonly brings?: string
  /** A search can vary it whole. */
  readonly axis?: AxisFacts
  /**
   * What absence means: `none` that there is no such part, values that these are taken for it (`{}`: every default).
   * Without it the part is required.
   */
  readonly whenAbsent?: 'none' | Readonly<Record<string, unknown>>
}

/** What the form of a part knows, where the group is one that a person opens. */
export interface FormPart {
  /** What it is called in the list of parts, where that is not its label. */
  readonly partName?: string
  /** Headings of its form in their order; '' right under the part's name. */
  readonly sections?: readonly string[]
}

/** Entries and parts under keys of their own. */
export interface GroupNode extends Part, FormPart {
  readonly entries: Rows
}

/**
 * A group whose entries depend on one word in it: the kind of a reduction, the model of a ground. Each variant lists
 * all its entries, the word's own row among them, under the word; `others` has those of every word without a variant.
 */
export interface UnionNode extends Part, FormPart {
  /** Key of the word. */
  readonly by: string
  readonly variants: Readonly<Record<string, Rows>>
  readonly others?: Rows
}

/** A list; absent, it is empty. */
export interface ListNode {
  readonly label: string
  /** Longest list. */
  readonly most: number
  readonly item: GroupNode | UnionNode
  /** Name of the parts that its items are, each with a form of its own; without it the list has one form. */
  readonly part?: string
  /** The list has to be there, with at least one item. */
  readonly required?: true
}

/** Values keyed by the path of the entry that they speak of; absent, there are none. */
export interface RecordNode {
  readonly label: string
  readonly each: GroupNode | Row
}

export type Node = Row | GroupNode | UnionNode | ListNode | RecordNode

export const isRow = (node: Node): node is Row => 'help' in node
export const isGroup = (node: Node): node is GroupNode => 'entries' in node
export const isUnion = (node: Node): node is UnionNode => 'variants' in node
export const isList = (node: Node): node is ListNode => 'most' in node

/** The rows of a variant, and the words under which they stand. */
export interface Variant {
  readonly words: readonly string[]
  readonly rows: Rows
}

/** The variants of a union, in the order of its table. */
export function variantsOf({ by, variants, others }: UnionNode): readonly Variant[] {
  const named = Object.entries(variants).map(([word, rows]) => ({ words: [word], rows }))
  if (others === undefined) return named
  const rest = wordsOf(others, by).filter((word) => !Object.hasOwn(variants, word))
  return [{ words: rest, rows: others }, ...named]
}

/** The words of a union in the order in which they are offered. */
export function unionWords({ by, variants, others }: UnionNode): readonly string[] {
  const [first] = Object.values(variants)
  return wordsOf(others ?? first ?? {}, by)
}

function wordsOf(rows: Rows, by: string): readonly string[] {
  const row = rows[by]
  if (row === undefined || !isRow(row)) throw new Error(`${by} is no row of its union`)
  return (row.choices ?? []).map((choice) => choice.value)
}
