import { conditionHolds } from '../../shared-engine/entries/condition.ts'
import { fieldOf, isRequired } from '../../shared-engine/entries/fields.ts'

/**
 * Whether an entry exists in this build: some do only with one kind of stage, one model of the ground, a material of
 * one's own.
 */
export function applies(path: string, build: unknown): boolean {
  const condition = fieldOf(path)?.onlyWith
  return condition === undefined || conditionHolds(condition, path, build)
}

/** Whether an entry that may be empty has to be filled in here after all. */
export function isNeeded(path: string, build: unknown): boolean {
  const field = fieldOf(path)
  if (field === undefined) return false
  if (field.requiredWith !== undefined && conditionHolds(field.requiredWith, path, build)) return true
  return isRequired(field)
}
