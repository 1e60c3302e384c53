import { readFileSync, writeFileSync } from 'node:fs'
import path from 'node:path'
import { beforeAll, describe, expect, test } from 'vitest'
import { demoFile, pitchline, root, temporaryFolder, untidyLines, type Ran } from './command.ts'

interface Row {
  choices: Record<string, number | string>
  aims: Record<string, number>
  margin: number
  alternatives: { count: number }
  figures: Record<string, number | null>
  limits: { id: string; margin: number | null; standing: string; group: string }[]
}
interface SearchJson {
  format: string
  version: number
  stopped: boolean
  candidates: { total: number; looked: number; sound: number; holding: number }
  verdict: string[]
  holds: { name: string; breaking: number; best: number | null }[]
  frontCount: number
  rows: Row[]
  closest: Row | null
}

const spaceFile = (name: string) => path.join(root, 'examples', `${name}.space.json`)
const jsonOf = (text: string) => JSON.parse(text) as SearchJson
const folder = temporaryFolder()

/** No threads of its own: each would read and compile the program anew, which takes longer than these searches. */
const alone = ['--workers', '1']

/** A small space in a file of its own. */
function spaceWith(changes: object): string {
  const file = path.join(folder(), `${Object.keys(changes).join('-')}.space.json`)
  const space = {
    format: 'pitchline-space',
    version: 1,
    vary: { 'track.sprocketTeeth': { from: 8, to: 12, step: 1 }, 'pack.series': [6, 8] },
    aim: { figure: 'topSpeedMps', best: 'most' },
    ...changes,
  }
  writeFileSync(file, JSON.stringify(space))
  return file
}

// The third, a larger one, is searched below.
describe.each(['culvert-crawler', 'hut-hauler'] as const)('search of the demo space %s', (demo) => {
  const words = ['search', demoFile(demo), spaceFile(demo)]
  // Each takes a second or two: asked once for all of these tests.
  let one: Ran
  beforeAll(() => {
    one = pitchline([...words, ...alone, '--json'])
  })

  test('is the same on one thread and on three', () => {
    expect(pitchline([...words, '--json', '--workers', '3'])).toEqual(one)
    expect(one.err).toBe('')
    const json = jsonOf(one.out)
    expect(json).toMatchObject({ format: 'pitchline-search', version: 1, stopped: false })
    expect(json.candidates.looked).toBe(json.candidates.total)
    expect(json.rows.length).toBeGreaterThanOrEqual(5)
  })

  test('gives the figures that check gives of that build', () => {
    const [row] = jsonOf(one.out).rows
    const stored = JSON.parse(readFileSync(demoFile(demo), 'utf8')) as Record<string, unknown>
    const motors = (
      JSON.parse(readFileSync(spaceFile(demo), 'utf8')) as {
        vary: { motor?: { name: string; motor: object }[] }
      }
    ).vary.motor
    for (const [at, value] of Object.entries(row?.choices ?? {})) {
      if (at === 'motor') stored['motor'] = motors?.find(({ name }) => name === value)?.motor
      else put(stored, at.split('.'), value)
    }
    const checked = pitchline(
      ['check', '-', '--json'],
      JSON.stringify({ ...stored, tolerances: {}, origins: {} }),
    )
    const { figures } = JSON.parse(checked.out) as { figures: Record<string, number | null> }
    // The same code in another process: equal in every digit, closer than the 1e-9 of the contract.
    expect(row?.figures).toEqual(figures)
  })

  test('text and table are tidy and carry the rows of the JSON', () => {
    const text = pitchline([...words, ...alone])
    const json = jsonOf(one.out)
    expect(untidyLines(text.out)).toEqual([])
    expect(text.out).toContain(
      `${json.candidates.holding.toLocaleString('en')} of ${json.candidates.total.toLocaleString('en')} candidates hold`,
    )
    const lines = pitchline([...words, ...alone, '--csv'])
      .out.trimEnd()
      .split('\r\n')
    expect(lines).toHaveLength(1 + json.rows.length)
    const names = lines[0]?.split(',') ?? []
    expect(names.slice(0, Object.keys(json.rows[0]?.choices ?? {}).length)).toEqual(
      Object.keys(json.rows[0]?.choices ?? {}),
    )
    expect(names).toContain('topSpeedMps')
  })
})

function put(group: Record<string, unknown>, keys: readonly string[], value: unknown): void {
  const [key = '', ...rest] = keys
  if (rest.length === 0) group[key] = value
  else put((group[key] ??= {}) as Record<string, unknown>, rest, value)
}

test('the five best for 40 km/h, nothing over, least load on the teeth', () => {
  const { out, code } = pitchline([
    'search',
    demoFile('quick-sled-puller'),
    spaceFile('quick-sled-puller'),
    ...alone,
    '--json',
  ])
  const { rows } = jsonOf(out)
  for (const { figures, limits, margin } of rows) {
    expect(figures['topSpeedMps']).toBeGreaterThanOrEqual(40 / 3.6)
    // The space leaves open what wears out, and asks nothing of mishaps: all else holds.
    const asked = limits.filter(({ group }) => group === 'holds')
    expect(asked.length).toBeGreaterThan(10)
    expect(asked.filter(({ standing }) => standing === 'over')).toEqual([])
    const decisive = limits.filter(({ group }) => group !== 'mishap')
    expect(margin).toBe(Math.min(...decisive.map((row) => row.margin ?? -Infinity)))
  }
  const loads = rows.map(({ aims }) => aims['toothShearPa'] ?? NaN)
  // 1e-9: what the rows' order rounds to.
  loads.slice(1).forEach((load, at) => expect(load).toBeGreaterThanOrEqual((loads[at] ?? 0) * (1 - 1e-9)))
  // What the space leaves open is over.
  expect(code).toBe(2)
})

describe('the exit code', () => {
  test('is 2 where the best is over something that the space did not ask about', () => {
    const { code, out } = pitchline([
      'search',
      demoFile('quick-sled-puller'),
      spaceWith({ keep: 3 }),
      '--json',
    ])
    expect(jsonOf(out).rows).toHaveLength(3)
    expect(code).toBe(2)
  })

  test('is 2 where nothing holds, and the text says what fails and by how much at best', () => {
    const hold = { figures: [{ figure: 'topSpeedMps', atLeast: '300 km/h' }] }
    const { code, out } = pitchline(['search', demoFile('quick-sled-puller'), spaceWith({ hold })])
    expect(code).toBe(2)
    expect(out).toContain('None of 10 candidates holds everything asked for.')
    expect(out).toMatch(
      /No candidate holds: Top speed of at least 300\skm\/h; the best comes to\s+[\d.]+\skm\/h\./,
    )
    expect(out).toContain('Closest: ')
  })

  test('is 1 where the build, the space or the count of threads cannot be read, each told in a line', () => {
    const words = ['search', demoFile('hut-hauler'), spaceWith({ vary: { 'stages.0.driverTeeth': [3] } })]
    expect(pitchline(words)).toMatchObject({ code: 1, out: '' })
    expect(pitchline(words).err).toMatch(
      /^[^\n]*\.space\.json: vary\.stages\.0\.driverTeeth cannot be varied here; allowed: stages\.0\.ratio, [^\n]*\n$/,
    )
    const both = pitchline(['search', 'nowhere.build.json', 'nowhere.space.json', '--workers', 'two'])
    expect(both).toMatchObject({ code: 1, out: '' })
    expect(both.err).toBe(
      'nowhere.build.json: there is no file of this name.\nnowhere.space.json: there is no file of this name.\n' +
        'pitchline: --workers is "two", out of range; allowed: a whole number, 1 to 64.\n',
    )
  })
})
