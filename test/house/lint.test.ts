import { ESLint } from 'eslint'
import { describe, expect, it } from 'vitest'

const eslint = new ESLint()

/** Rules that a text would break in a file of this name; the file need not exist. */
async function broken(filePath: string, text: string): Promise<string[]> {
  const [result] = await eslint.lintText(text, { filePath })
  return (result?.messages ?? []).map(({ ruleId, message }) => ruleId ?? message)
}

describe('lint bites', () => {
  it.each([
    [
      'a clock in the engine',
      'shared-engine/pack/x.ts',
      'export const now = () => new Date()',
      'no-restricted-globals',
    ],
    [
      'chance in the engine',
      'shared-engine/pack/x.ts',
      'export const x = Math.random()',
      'no-restricted-properties',
    ],
    [
      'an engine arrow',
      'shared-engine/pack/x.ts',
      "import { check } from '../check.ts'\ncheck()",
      'house/arrows',
    ],
    [
      'an arrow of types',
      'shared-engine/pack/x.ts',
      "import type { A } from '../check.ts'\nexport type B = A",
      'house/arrows',
    ],
    [
      'an inline type import',
      'shared-engine/pack/x.ts',
      "export type B = import('../check.ts').A",
      'house/arrows',
    ],
    ['a late import', 'src-renderer/x.ts', "export const a = import('../src-main/main.ts')", 'house/arrows'],
    ['a re-export', 'src-renderer/x.ts', "export * from '../src-main/bridge/contract.ts'", 'house/arrows'],
    [
      'the bridge past its types',
      'src-renderer/x.ts',
      "import { contract } from '../src-main/bridge/contract.ts'\ncontract",
      'house/arrows',
    ],
    ['Node in the page', 'src-renderer/x.ts', "import fs from 'node:fs'\nfs", 'house/arrows'],
    ['any', 'src-main/x.ts', 'export const x = (a: any) => a', '@typescript-eslint/no-explicit-any'],
    ['401 lines', 'src-main/x.ts', 'export {}\n'.repeat(401), 'max-lines'],
    ['talk in the page', 'src-renderer/x.ts', "console.log('x')", 'no-console'],
  ])('on %s', async (_what, file, text, rule) => {
    expect(await broken(file, text)).toContain(rule)
  })

  it('and not on what is allowed', async () => {
    const text =
      "import { z } from 'zod'\nimport { constants } from '../constants.ts'\nexport const a = [z, constants]\n"
    expect(await broken('shared-engine/pack/x.ts', text)).toEqual([])
  })
})
