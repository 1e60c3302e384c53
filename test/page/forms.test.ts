import { describe, expect, it } from 'vitest'
import { fieldPatterns } from '../../shared-engine/entries/fields.ts'
import { forms } from '../../src-renderer/fields/forms.ts'

/** Not entered in a field: the file's own, what is said of entries beside them, what guided tests keep, a pattern's table. */
const elsewhere = /^(format|version|tolerances|origins|readings|service\.pattern)(\.|$)/

function patternsOf(part: string): string[] {
  const prefix = { build: '', stage: 'stages.*.' }[part] ?? `${part}.`
  return (forms[part] ?? []).flatMap((section) => section.entries.map((key) => `${prefix}${key}`))
}

describe('forms', () => {
  it('hold every entry of the build exactly once', () => {
    const shown = Object.keys(forms).flatMap(patternsOf).toSorted()
    const entries = fieldPatterns.filter((pattern) => !elsewhere.test(pattern)).toSorted()
    expect(shown).toEqual(entries)
  })
})
