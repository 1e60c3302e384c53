import { isRow, unionWords, variantsOf, type Node, type UnionNode, type Variant } from './group.ts'
import type { Condition, Field, Row } from './row.ts'

/** An entry or part of a union, with the words under which it exists; no condition where that is under all of them. */
export interface MergedNode {
  readonly key: string
  readonly node: Node
  readonly onlyWith: Condition | undefined
  readonly requiredWith: Condition | undefined
}

/**
 * The variants of a union as one list. A key that several have stands once: what only a later variant has comes before
 * the next key that it shares with those listed, else at the end, so that each variant keeps its own order.
 *
 * @param pattern of the union
 */
export function mergedVariants(union: UnionNode, pattern: string): readonly MergedNode[] {
  const variants = variantsOf(union)
  const order = mergedOrder(variants.map(({ rows }) => Object.keys(rows)))
  const words = unionWords(union)
  const among = (with_: readonly Variant[]): Condition | undefined => {
    const held = words.filter((word) => with_.some((variant) => variant.words.includes(word)))
    return held.length === words.length ? undefined : { entry: `${pattern}.${union.by}`, among: held }
  }
  return order.map((key) => {
    const having = variants.filter(({ rows }) => rows[key] !== undefined)
    const nodes = having.flatMap(({ rows }) => rows[key] ?? [])
    const free = nodes.find((node) => isRow(node) && mayBeEmpty(node))
    const needing = having.filter(({ rows }) => free !== undefined && !mayBeEmpty(rows[key] as Row))
    return {
      key,
      node: free ?? nodes[0] ?? { label: '', entries: {} },
      onlyWith: among(having),
      requiredWith: needing.length === 0 ? undefined : among(needing),
    }
  })
}

const mayBeEmpty = (row: Row) => row.optional === true

/** Keys of all lists, each once, in an order that keeps that of every list. */
function mergedOrder(lists: readonly (readonly string[])[]): readonly string[] {
  const order: string[] = []
  for (const list of lists) {
    list.forEach((key, at) => {
      if (order.includes(key)) return
      const next = list.slice(at + 1).find((later) => order.includes(later))
      order.splice(next === undefined ? order.length : order.indexOf(next), 0, key)
    })
  }
  return order
}

/** A row with what its place in a union says of it. */
export function fieldAt(row: Row, outer: Condition | undefined, merged?: MergedNode): Field {
  const onlyWith = merged?.onlyWith ?? outer
  const requiredWith = merged?.requiredWith ?? row.requiredWith
  return {
    ...row,
    ...(onlyWith === undefined ? {} : { onlyWith }),
    ...(requiredWith === undefined ? {} : { requiredWith }),
  }
}
