import { z } from '../../reference/zod.ts'
import { isJsonGroup } from '../json-group.ts'
import {
  isGroup,
  isList,
  isRow,
  isUnion,
  variantsOf,
  type GroupNode,
  type Node,
  type Rows,
  type UnionNode,
} from './group.ts'
import type { Row } from './row.ts'
import type { Complete, Stored } from './types.ts'

/**
 * The check that rows make of a file, with every default of its own filled in on the way out. What is wrong with a
 * value is stated from the table of entries, not from here.
 */
export function schemaOf<const R extends Rows>(
  rows: R,
): z.ZodType<Complete<{ label: string; entries: R }>, Stored<{ label: string; entries: R }>> {
  // The types are made of the same rows (types.ts); zod cannot follow them through a walk.
  return objectOf(rows) as unknown as ReturnType<typeof schemaOf<R>>
}

function objectOf(rows: Rows) {
  return z.strictObject(
    Object.fromEntries(Object.entries(rows).map(([key, node]) => [key, nodeSchema(node)])),
  )
}

function nodeSchema(node: Node): z.ZodType {
  if (isRow(node)) return rowSchema(node)
  if (isList(node)) {
    const list = z.array(partSchema(node.item)).max(node.most)
    return node.required === true ? list.min(1) : list.default([])
  }
  if (isGroup(node) || isUnion(node)) {
    const part = partSchema(node)
    if (node.whenAbsent === undefined) return part
    return node.whenAbsent === 'none' ? part.optional() : part.prefault(node.whenAbsent)
  }
  const each = isRow(node.each) ? rowSchema(node.each) : partSchema(node.each)
  return z.record(z.string(), each).default({})
}

function partSchema(node: GroupNode | UnionNode): z.ZodType {
  if (isGroup(node)) return objectOf(node.entries)
  const { by } = node
  const [first, ...rest] = variantsOf(node).map(({ words, rows }) =>
    objectOf(rows).extend({ [by]: z.enum(words) }),
  )
  if (first === undefined) throw new Error(`the union by ${by} has no variant`)
  return z.discriminatedUnion(by, [first, ...rest])
}

function rowSchema(row: Row): z.ZodType {
  const value = valueSchema(row)
  if (row.default !== undefined) return value.default(row.default)
  return row.optional === true || row.defaultFrom !== undefined ? value.optional() : value
}

function valueSchema({ always, choices, flag, kind, document, longest = Infinity, ...row }: Row): z.ZodType {
  if (always !== undefined) return z.literal(always)
  if (choices !== undefined) return z.enum(choices.map((choice) => choice.value))
  if (flag === true) return z.boolean()
  if (document === true)
    return z.custom((value) => isJsonGroup(value) && JSON.stringify(value).length <= longest)
  if (kind !== 'text') return numberSchema(row)
  // Characters are counted as a reader counts them, not as UTF-16 does.
  return z.string().refine((written) => written.length <= longest || [...written].length <= longest)
}

function numberSchema({ low = -Infinity, high = Infinity, whole }: Pick<Row, 'low' | 'high' | 'whole'>) {
  // One part where a number, its bounds and its wholeness would be four: a process that reads one build makes the
  // schema for it alone.
  return z.custom<number>(
    (value) =>
      typeof value === 'number' &&
      value >= low &&
      value <= high &&
      (whole !== true || Number.isInteger(value)),
  )
}
