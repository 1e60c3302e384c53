import { fieldOf, type Condition } from '../../shared-engine/entries/fields.ts'
import { valueAt, keysOf } from '../../shared-engine/entries/path.ts'

/**
 * Whether an entry exists in this build: some do only with one kind of stage, one model of the ground, a material of
 * one's own.
 */
export function applies(path: string, build: unknown): boolean {
  const condition = fieldOf(path)?.onlyWith
  return condition === undefined || holds(condition, path, build)
}

/** Whether an entry that may be empty has to be filled in here after all. */
export function isNeeded(path: string, build: unknown): boolean {
  const field = fieldOf(path)
  if (field === undefined) return false
  if (field.requiredWith !== undefined && holds(field.requiredWith, path, build)) return true
  return field.default === undefined && field.optional !== true
}

function holds({ entry, among }: Condition, path: string, build: unknown): boolean {
  const index = keysOf(path)[1] ?? ''
  const found = valueAt(build, keysOf(entry.replace('*', index)))
  return typeof found === 'string' && among.includes(found)
}
