import { fieldPatterns } from './fields.ts'
import type { StoredBuild } from './schema.ts'

/** For each group, by its pattern, its keys in the order of the table of fields. */
const orders: ReadonlyMap<string, ReadonlyMap<string, number>> = ordersOf()

function ordersOf(): Map<string, Map<string, number>> {
  const found = new Map<string, Map<string, number>>()
  for (const pattern of fieldPatterns) {
    const keys = pattern.split('.')
    keys.forEach((key, depth) => {
      const group = keys.slice(0, depth).join('.')
      const order = found.get(group) ?? new Map<string, number>()
      if (!order.has(key)) order.set(key, order.size)
      found.set(group, order)
    })
  }
  return found
}

/** A copy with the keys of every group in the table's order; keys that are paths stay as they were. */
function ordered(value: unknown, pattern: string): unknown {
  const below = (key: string) => (pattern === '' ? key : `${pattern}.${key}`)
  if (Array.isArray(value)) return value.map((item) => ordered(item, below('*')))
  if (typeof value !== 'object' || value === null) return value
  const order = orders.get(pattern)
  const place = (key: string) => order?.get(key) ?? Infinity
  const keys = Object.keys(value).filter((key) => (value as Record<string, unknown>)[key] !== undefined)
  if (order !== undefined && !order.has('*')) keys.sort((one, other) => place(one) - place(other))
  const group = value as Readonly<Record<string, unknown>>
  return Object.fromEntries(
    keys.map((key) => [key, ordered(group[key], below(order?.has('*') === true ? '*' : key))]),
  )
}

/**
 * A build as the text of its file: keys in the table's order, two spaces a level, a newline at the end. What the
 * builder left out stays out. The same build always gives the same bytes, and a written build reads as itself.
 */
export function writeBuild(build: StoredBuild): string {
  return `${JSON.stringify(ordered(build, ''), null, 2)}\n`
}
