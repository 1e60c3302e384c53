import { ESLint } from 'eslint'
import { describe, expect, it } from 'vitest'

const eslint = new ESLint()

/** Rules that a text would break in a file of this name; the file need not exist. */
async function broken(filePath: string, text: string): Promise<string[]> {
  const [result] = await eslint.lintText(text, { filePath })
  return (result?.messages ?? []).map(({ ruleId, message }) => ruleId ?? message)
}

const effect = (does: string, before: string) => `${before}\n$effect(() => {\n  ${does}\n})\nx`

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
    [
      'state set in an effect',
      'src-renderer/parts/x.svelte.ts',
      effect('x = 1', 'let x = $state(0)'),
      'house/effects',
    ],
    [
      'state counted up in an effect',
      'src-renderer/parts/x.svelte.ts',
      effect('x += 1', 'let x = $state.raw(0)'),
      'house/effects',
    ],
    [
      'state set untracked in an effect',
      'src-renderer/parts/x.svelte.ts',
      effect('untrack(() => (x = 1))', 'let x = $state(0)'),
      'house/effects',
    ],
    [
      'state of a class set in an effect',
      'src-renderer/parts/x.svelte.ts',
      'export class A {\n  x = $state(0)\n  constructor() {\n    $effect(() => {\n      this.x = 1\n    })\n  }\n}',
      'house/effects',
    ],
    [
      'the workspace set in an effect',
      'src-renderer/parts/X.svelte',
      `<script lang="ts">\n${effect('view.part = 1', 'const { view } = useWorkspace()')}\n</script>`,
      'house/effects',
    ],
    [
      'a bound prop set in an effect',
      'src-renderer/parts/X.svelte',
      `<script lang="ts">\n${effect('x = 1', 'let { x = $bindable() } = $props()')}\n</script>`,
      'house/effects',
    ],
    ['minutes by hand', 'shared-engine/pack/x.ts', 'export const f = (s: number) => s / 60', 'house/units'],
    ['hours by hand', 'src-main/x.ts', 'export const f = (h: number) => h * 3600', 'house/units'],
    ['a hand-made kilo', 'src-renderer/x.ts', 'export const f = (m: number) => -1e3 * m', 'house/units'],
    [
      'a hand-made milli',
      'shared-engine/pack/x.ts',
      'export const f = (m: number) => m * 0.001',
      'house/units',
    ],
    ['a sum made hours', 'src-main/x.ts', 'let a = 7200\na /= 3600\nexport { a }', 'house/units'],
    ['2π', 'shared-engine/track/x.ts', 'export const f = (n: number) => n * 2 * Math.PI', 'house/units'],
    [
      'degrees by hand',
      'shared-engine/draw/x.ts',
      'export const f = (a: number) => (a * 180) / Math.PI',
      'house/units',
    ],
    [
      'minutes by hand in markup',
      'src-renderer/parts/X.svelte',
      '<script lang="ts">\n  const s = 90\n</script>\n\n{s / 60}',
      'house/units',
    ],
    ['talk in the page', 'src-renderer/x.ts', "console.log('x')", 'no-console'],
  ])('on %s', async (_what, file, text, rule) => {
    expect(await broken(file, text)).toContain(rule)
  })

  it('and not on what is allowed', async () => {
    const text =
      "import { z } from 'zod'\nimport { constants } from '../constants.ts'\nexport const a = [z, constants]\n"
    expect(await broken('shared-engine/pack/x.ts', text)).toEqual([])
  })

  it.each([
    ['where units are kept', 'shared-engine/units/x.ts', 'export const f = (s: number) => s / 60'],
    ['in numerics', 'shared-engine/numeric/x.ts', 'export const f = (s: number) => s * 2 * Math.PI'],
    ['of a number that only stands there', 'shared-engine/pack/x.ts', 'export const most = [60, 1000, 1e-3]'],
    [
      'of a circle that is no turn',
      'shared-engine/pack/x.ts',
      'export const f = (d: number) => (d ** 2 * Math.PI) / 4',
    ],
    [
      'of powers of ten that are steps',
      'shared-engine/pack/x.ts',
      'export const f = (x: number) => 1e-6 * x',
    ],
  ])('and says nothing of units %s', async (_what, file, text) => {
    expect(await broken(file, text)).not.toContain('house/units')
  })

  it.each([
    ['a plain variable', effect('x = 1', 'let x = 0')],
    ['an element', effect('place.scrollTop = x', 'let place: HTMLElement\nconst x = 0')],
    ['what comes back later', effect('setTimeout(() => (x = 1))', 'let x = $state(0)')],
  ])('and lets an effect set %s', async (_what, text) => {
    const rules = await broken('src-renderer/parts/x.svelte.ts', text)
    expect(rules.filter((rule) => rule.startsWith('house/'))).toEqual([])
  })
})
