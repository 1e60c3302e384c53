import type { Mistake } from '../mistakes/mistake.ts'

/** Keys that reach into how objects work rather than into a build. */
const forbiddenKeys: ReadonlySet<string> = new Set(['__proto__', 'prototype', 'constructor'])

/** Forbidden keys anywhere in a value, by path, and whether it is nested deeper than a build may be. */
export function hostileKeysOf(value: unknown, mostDepth: number): { forbidden: Mistake[]; tooDeep: boolean } {
  const forbidden: Mistake[] = []
  let tooDeep = false
  const visit = (inner: unknown, path: string, depth: number): void => {
    if (typeof inner !== 'object' || inner === null || tooDeep) return
    if (depth >= mostDepth) {
      tooDeep = true
      return
    }
    for (const [key, below] of Object.entries(inner)) {
      const at = path === '' ? key : `${path}.${key}`
      if (forbiddenKeys.has(key))
        forbidden.push({ code: 'forbidden-key', path: at, value: '', allowed: '', kept: '' })
      else visit(below, at, depth + 1)
    }
  }
  visit(value, '', 0)
  return { forbidden, tooDeep }
}
