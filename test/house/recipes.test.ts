import { spawnSync } from 'node:child_process'
import { cpSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs'
import path from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'

/** A member of a family, planted as a newcomer would begin: its name alone. */
interface Plant {
  readonly what: string
  readonly file: string
  readonly from: string
  readonly to: string
  /** Files that then do not compile: where the recipe in DEVELOPERS.md leads. */
  readonly asks: readonly string[]
}

const plants: readonly Plant[] = [
  {
    what: 'a kind of reduction by its name',
    file: 'shared-engine/entries/stage-kinds.ts',
    from: "export { beltEntries as belt } from '../stages/belt/entries.ts'\n",
    to: "export { beltEntries as belt, beltEntries as planted } from '../stages/belt/entries.ts'\n",
    asks: [
      'shared-engine/draw/parts/stage.ts',
      'shared-engine/limits/stage.ts',
      'shared-engine/machine/stage.ts',
    ],
  },
  {
    what: 'a limit without its working',
    file: 'shared-engine/limits/motor.ts',
    from: "    working: burstWorking('motor'),\n",
    to: '',
    asks: ['shared-engine/limits/motor.ts'],
  },
  {
    what: 'a figure that nothing fills',
    file: 'shared-engine/figures/table.ts',
    from: 'export type Figures = Readonly<Record<FigureName',
    to: "export const planted: FigureName = 'figureThatIsNot'\nexport type Figures = Readonly<Record<FigureName",
    asks: ['shared-engine/figures/table.ts'],
  },
  {
    what: 'a mistake without its sentence',
    file: 'shared-engine/entries/migrate.ts',
    from: "from '../mistakes/mistake.ts'\n",
    to: "from '../mistakes/mistake.ts'\nimport type { MistakeCode as Planted } from '../mistakes/mistake.ts'\nexport const planted: Planted = 'no-such-code'\n",
    asks: ['shared-engine/entries/migrate.ts'],
  },
  {
    what: 'a verb of the bridge by its name',
    file: 'src-main/bridge/channels.ts',
    from: "  facts: 'pitchline:facts',\n",
    to: "  facts: 'pitchline:facts',\n  planted: 'pitchline:planted',\n",
    asks: ['src-main/bridge/contract.ts', 'src-main/bridge/receive.ts', 'src-main/shell/handlers.ts'],
  },
]

const copied = ['shared-engine', 'src-main', 'tsconfig.base.json', 'package.json']

describe('the recipes: what is planted by its name alone does not compile until it is whole', () => {
  let copy = ''
  const wrong = new Set<string>()

  beforeAll(() => {
    copy = mkdtempSync(path.resolve('node_modules/.cache-recipes-'))
    for (const one of copied) cpSync(one, path.join(copy, one), { recursive: true })
    symlinkSync(path.resolve('node_modules'), path.join(copy, 'node_modules'))
    for (const { file, from, to, what } of plants) {
      const text = readFileSync(file, 'utf8')
      expect(text.split(from).length, `${what}: ${file} holds it once`).toBe(2)
      writeFileSync(path.join(copy, file), text.replace(from, to))
    }
    // Both parts at once: apart, the engine would be compiled for each of them.
    const both = {
      extends: './tsconfig.base.json',
      compilerOptions: { lib: ['ES2023'], types: ['node'] },
      include: ['shared-engine/**/*.ts', 'shared-engine/**/*.json', 'src-main/**/*.ts'],
      exclude: ['**/tsconfig.json', 'src-main/bridge/preload.ts'],
    }
    writeFileSync(path.join(copy, 'tsconfig.json'), JSON.stringify(both))
    const compiler = path.resolve('node_modules/typescript-native/bin/tsc')
    const words = [compiler, '-p', '.', '--incremental', 'false', '--pretty', 'false']
    const { stdout } = spawnSync(process.execPath, words, { cwd: copy, encoding: 'utf8' })
    for (const [, file] of stdout.matchAll(/^(\S+?)\(\d+,\d+\): error/gm)) {
      wrong.add(file ?? '')
    }
  }, 120_000)

  afterAll(() => rmSync(copy, { recursive: true, force: true }))

  it.each(plants.map((plant) => [plant.what, plant] as const))('%s', (_, { asks }) => {
    expect(asks.filter((file) => !wrong.has(file))).toEqual([])
  })

  it('and nothing else fails with them', () => {
    const asked = new Set(plants.flatMap(({ asks }) => asks))
    expect([...wrong].filter((file) => !asked.has(file))).toEqual([])
  })
})
