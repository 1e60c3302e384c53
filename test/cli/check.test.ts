import { spawn } from 'node:child_process'
import { readFileSync } from 'node:fs'
import path from 'node:path'
import { describe, expect, test } from 'vitest'
import { amendedFigures, amendedLimits, newFigures, newLimits, withoutNumber } from '../golden/amended.ts'
import { command, demoFile, demos, pitchline, pitchlineOnce, root, untidyLines } from './command.ts'

interface CheckJson {
  format: string
  version: number
  name: string
  figures: Record<string, number | null>
  limits: {
    id: string
    group: string
    actual: number | null
    allowed: number | null
    unit: string
    margin: number | null
    standing: string
    case: string
  }[]
  order: unknown
  best: Record<'power' | 'efficiency', { shaftWatts: number; efficiency: number }> | null
  notes: string[]
}

const jsonOf = (text: string) => JSON.parse(text) as CheckJson
const goldens = path.join(root, 'test/golden')

describe.each(demos)('check of the demo build %s', (demo) => {
  test('text fits 80 columns, has no colour, and carries every figure and limit of the JSON', () => {
    const text = pitchlineOnce(['check', demoFile(demo)])
    const json = jsonOf(pitchlineOnce(['check', demoFile(demo), '--json']).out)
    expect(untidyLines(text.out)).toEqual([])
    expect(text.err).toBe('')
    for (const name of Object.keys(json.figures)) expect(text.out).toContain(` ${name}\n`)
    for (const { id } of json.limits) expect(text.out).toContain(`  ${id} `)
  })

  test('the exit code says whether something is over that ordinary use meets', () => {
    const { code, out } = pitchlineOnce(['check', demoFile(demo), '--json'])
    const over = jsonOf(out).limits.some(({ standing, group }) => standing === 'over' && group !== 'mishap')
    expect(code).toBe(over ? 2 : 0)
    expect(pitchlineOnce(['check', demoFile(demo)]).code).toBe(code)
  })

  test('standard input is read like the file', () => {
    const piped = pitchline(['check', '-', '--json'], readFileSync(demoFile(demo)))
    expect(piped).toEqual(pitchlineOnce(['check', demoFile(demo), '--json']))
  })
})

test('the JSON has the keys of the contract, SI numbers, and nothing else', () => {
  const json = jsonOf(pitchlineOnce(['check', demoFile('hut-hauler'), '--json']).out)
  expect(Object.keys(json)).toEqual([
    'format',
    'version',
    'name',
    'figures',
    'limits',
    'stages',
    'order',
    'best',
    'wires',
    'alarms',
    'spreads',
    'notJudged',
    'notes',
  ])
  expect(json).toMatchObject({ format: 'pitchline-check', version: 2 })
  for (const limit of json.limits) {
    expect(Object.keys(limit)).toEqual([
      'id',
      'group',
      'actual',
      'allowed',
      'unit',
      'margin',
      'standing',
      'case',
    ])
  }
  for (const value of Object.values(json.figures)) expect(value === null || Number.isFinite(value)).toBe(true)
})

test('what to order and where the motor is at its best: in the text, in the JSON and by explain', () => {
  const text = pitchlineOnce(['check', demoFile('hut-hauler')]).out.replace(/\s+/g, ' ')
  const json = jsonOf(pitchlineOnce(['check', demoFile('hut-hauler'), '--json']).out)
  const { out, code } = pitchlineOnce(['explain', demoFile('hut-hauler'), 'order'])
  const explained = out.replace(/\s+/g, ' ')
  expect(code).toBe(0)
  // Wheels of 17 and 42 teeth, 315 mm of 15.875 mm: 2 · 315/15.875 + 29.5 + (25/2π)² · 15.875/315 = 69.98, so 70 links;
  // 1 − cos(π/17) is 1.70 %.
  for (const said of [text, explained]) {
    expect(said).toContain('70 links')
    expect(said).toContain('the speed ripples by 1.703 %')
    expect(said).toMatch(/most shaft power [\d.,]+ k?W at [\d,]+ rpm, best efficiency [\d.]+ %/)
  }
  const { best } = json
  expect(best?.efficiency.efficiency).toBeGreaterThanOrEqual(json.figures['topMotorEfficiency'] ?? NaN)
  expect(best?.power.shaftWatts).toBeGreaterThanOrEqual(best?.efficiency.shaftWatts ?? NaN)
  const asked = JSON.parse(
    pitchlineOnce(['explain', demoFile('hut-hauler'), 'order', '--json']).out,
  ) as unknown
  expect(asked).toEqual({ order: json.order, best })
})

test('a golden build through the whole command: figures and ledger as the independent implementations have them', () => {
  // Two independent implementations of the contract agree on it (test/golden/README.md); the engine's own tests cover
  // the other builds, this one the way through the process. 1e-6: roots and integrals among the figures.
  const expected = jsonOf(readFileSync(path.join(goldens, '01.expected.json'), 'utf8'))
  const { out, code } = pitchline(['check', path.join(goldens, '01.build.json'), '--json'])
  const found = jsonOf(out)
  const names = Object.keys(found.figures).filter((name) => !(name in newFigures))
  expect(names.sort()).toEqual(Object.keys(expected.figures).sort())
  for (const [name, value] of Object.entries(expected.figures)) {
    if (name in amendedFigures) continue
    const own = found.figures[name] ?? null
    if (value === null || own === null) expect(own, name).toBe(value)
    else expect(Math.abs(own - value), name).toBeLessThanOrEqual(1e-6 * Math.abs(value) + 1e-9)
  }
  // In the order of their ids: those implementations are of version 1, whose ledger knew no groups.
  const kept = (id: string) => !(withoutNumber(id) in newLimits) && !(withoutNumber(id) in amendedLimits)
  const standings = ({ limits }: CheckJson) =>
    limits.flatMap(({ id, standing }) => (kept(id) ? `${id} ${standing}` : [])).sort()
  expect(standings(found)).toEqual(standings(expected))
  expect(code).toBe(
    found.limits.some(({ standing, group }) => standing === 'over' && group !== 'mishap') ? 2 : 0,
  )
})

test('imperial text says the same in other units', () => {
  const metric = pitchlineOnce(['check', demoFile('hut-hauler')]).out
  const imperial = pitchlineOnce(['check', demoFile('hut-hauler'), '--units', 'imperial']).out
  expect(untidyLines(imperial)).toEqual([])
  const kmPerHour = Number(/Top speed +([\d.]+) km\/h/.exec(metric)?.[1])
  const mph = Number(/Top speed +([\d.]+) mph/.exec(imperial)?.[1])
  // 1 mile = 1.609344 km (NIST SP 811, 2008); 1 %: both are rounded to three figures.
  expect(Math.abs((mph * 1.609344) / kmPerHour - 1)).toBeLessThan(0.01)
  expect(imperial).not.toMatch(/ (N|MPa|km\/h|°C) /)
})

test('the quick machine is past its limits as its story says, the other two are not', () => {
  const standings = (demo: (typeof demos)[number]) =>
    new Map(
      jsonOf(pitchlineOnce(['check', demoFile(demo), '--json']).out).limits.map(({ id, standing }) => [
        id,
        standing,
      ]),
    )
  const quick = standings('quick-sled-puller')
  expect(quick.get('motor.free-rpm')).toBe('over')
  expect(quick.get('track.tooth-bending')).toBe('near')
  expect([...quick.values()].filter((standing) => standing === 'over').length).toBeGreaterThanOrEqual(2)
  expect([...standings('hut-hauler').values()]).not.toContain('over')
  expect([...standings('culvert-crawler').values()]).not.toContain('over')
})

test('a pipe that closes early ends the run without a word', async () => {
  const child = spawn(process.execPath, [command, 'check', demoFile('hut-hauler')])
  child.stdout.destroy()
  let err = ''
  child.stderr.on('data', (text) => (err += String(text)))
  const ended = await new Promise((resolve) => child.on('close', (code, signal) => resolve(signal ?? code)))
  expect(err).toBe('')
  expect([0, 2]).toContain(ended)
})
