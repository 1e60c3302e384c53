import { isGroup, isList, isRow, isUnion, type Node, type Rows } from './group.ts'
import { fieldAt, mergedVariants, type MergedNode } from './merge.ts'
import type { AxisFacts, Condition, Field } from './row.ts'

/** A part of the build: what it is called, and what it would bring where it may be absent whole. */
export interface Group {
  readonly label: string
  readonly brings?: string
  /** A search can vary it whole. */
  readonly axis?: AxisFacts
  /** Longest list. */
  readonly most?: number
  /** There may be none of it. */
  readonly optional: boolean
  /** It is absent rather than empty. */
  readonly mayVanish: boolean
}

/** All entries and parts of a build by their pattern, in the order in which a build is written. */
interface EntryTable {
  readonly fields: ReadonlyMap<string, Field>
  readonly groups: ReadonlyMap<string, Group>
}

/**
 * The table of entries that rows make.
 *
 * @param rows those of the whole build
 */
export function tableOf(rows: Rows): EntryTable {
  const fields = new Map<string, Field>()
  const groups = new Map<string, Group>()

  const part = (node: Exclude<Node, { help: string }>, pattern: string, mayVanish: boolean) => {
    const { label } = node
    const brings = 'brings' in node ? node.brings : undefined
    const axis = 'axis' in node ? node.axis : undefined
    const most = isList(node) ? node.most : undefined
    groups.set(pattern, {
      label,
      ...(brings === undefined ? {} : { brings }),
      ...(axis === undefined ? {} : { axis }),
      ...(most === undefined ? {} : { most }),
      optional: 'whenAbsent' in node && node.whenAbsent === 'none',
      mayVanish,
    })
  }
  const walkRows = (inner: Rows, pattern: string, outer: Condition | undefined) => {
    for (const [key, node] of Object.entries(inner)) walk(node, below(pattern, key), outer)
  }
  const walk = (node: Node, pattern: string, outer: Condition | undefined, merged?: MergedNode): void => {
    if (isRow(node)) return void fields.set(pattern, fieldAt(node, outer, merged))
    const inside = merged?.onlyWith ?? outer
    if (isList(node)) {
      part(node, pattern, false)
      return walkItem(node.item, pattern, inside, false)
    }
    if (isGroup(node) || isUnion(node)) {
      part(node, pattern, node.whenAbsent !== undefined)
      return walkInner(node, pattern, inside)
    }
    part(node, pattern, true)
    walkItem(node.each, pattern, inside, true)
  }
  const walkItem = (item: Node, pattern: string, outer: Condition | undefined, mayVanish: boolean) => {
    const each = below(pattern, '*')
    if (isRow(item)) return void fields.set(each, fieldAt(item, outer))
    part(item, each, mayVanish)
    walkInner(item, each, outer)
  }
  const walkInner = (node: Node, pattern: string, outer: Condition | undefined) => {
    if (isGroup(node)) return walkRows(node.entries, pattern, outer)
    if (!isUnion(node)) return
    for (const merged of mergedVariants(node, pattern))
      walk(merged.node, below(pattern, merged.key), outer, merged)
  }

  walkRows(rows, '', undefined)
  return { fields, groups }
}

const below = (pattern: string, key: string) => (pattern === '' ? key : `${pattern}.${key}`)
