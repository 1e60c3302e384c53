import { writeFileSync } from 'node:fs'
import path from 'node:path'
import { describe, expect, test } from 'vitest'
import { demoFile, pitchline, pitchlineOnce, temporaryFolder, untidyLines } from './command.ts'

const sled = demoFile('quick-sled-puller')
const crawler = demoFile('culvert-crawler')
const folder = temporaryFolder()

const jsonOf = (words: readonly string[]) => JSON.parse(pitchlineOnce(words).out) as Record<string, unknown>

describe.each([
  ['uncertainty', ['--samples', '200']],
  ['remedy', []],
  ['alarms', []],
])('%s', (name, more) => {
  test('text fits 80 columns, JSON names its format, the exit code says whether something is over', () => {
    const text = pitchline([name, sled, ...more])
    expect(untidyLines(text.out)).toEqual([])
    expect(text.err).toBe('')
    expect(text.code).toBe(2)
    expect(jsonOf([name, sled, ...more, '--json'])).toMatchObject({ format: `pitchline-${name}`, version: 1 })
  })

  test('a build that cannot be read is told, exit 1', () => {
    expect(pitchline([name, 'no-such.build.json', ...more])).toMatchObject({ code: 1, out: '' })
  })
})

test('uncertainty: the same seed gives the same bytes, whatever the threads; another seed others', () => {
  const words = ['uncertainty', crawler, '--json', '--samples', '300']
  const one = pitchline([...words, '--seed', '5', '--workers', '1']).out
  expect(pitchline([...words, '--seed', '5', '--workers', '2']).out).toBe(one)
  expect(pitchline([...words, '--seed', '6', '--workers', '1']).out).not.toBe(one)
  expect(pitchline(['uncertainty', crawler, '--samples', 'many'])).toMatchObject({ code: 1, out: '' })
})

test('remedy: an unknown limit is told with those that there are', () => {
  const { code, err } = pitchline(['remedy', sled, 'motor.nonsense'])
  expect(code).toBe(1)
  expect(err).toContain('motor.current-burst')
  const asked = jsonOf(['remedy', sled, 'motor.temperature', '--json'])
  expect(asked['limit']).toBe('motor.temperature')
})

describe('pattern', () => {
  test('how fast the pump has to turn is stated for a liquid circuit, from winter to summer', () => {
    const { out } = pitchlineOnce(['pattern', demoFile('hut-hauler'), 'Hut round'])
    const rows = [...out.matchAll(/^ {2}Air of (\S+)\s°C +(?:([\d.]+)\sL\/min|frozen|none)$/gmu)]
    expect(rows.length).toBeGreaterThan(5)
    const flows = rows.flatMap(([, , flow]) => (flow === undefined ? [] : [Number(flow)]))
    expect(flows).toEqual(flows.toSorted((one, other) => one - other)) // warmer air asks for no less
    expect(out).toMatch(/is enough for this drive\./)
    expect(pitchlineOnce(['pattern', crawler, 'stop and go']).out).not.toContain('flow of the pump')
  })

  test('by name: text, JSON and CSV', () => {
    const text = pitchlineOnce(['pattern', crawler, 'stop and go'])
    expect(untidyLines(text.out)).toEqual([])
    expect(text.code).toBe(0)
    const drive = jsonOf(['pattern', crawler, 'stop and go', '--json'])
    expect(drive).toMatchObject({ format: 'pitchline-drive', end: 'finished', seconds: 120 })
    const csv = pitchlineOnce(['pattern', crawler, 'stop and go', '--csv']).out.trimEnd().split('\n')
    expect(csv[0]?.startsWith('seconds,speed,distance,')).toBe(true)
    expect(csv.length - 1).toBe((drive['series'] as unknown[]).length)
  })

  test('by file, its mistakes told', () => {
    const file = path.join(folder(), 'drive.json')
    const rows = [{ seconds: 5, throttlePercent: 30 }]
    writeFileSync(file, JSON.stringify({ format: 'pitchline-pattern', version: 1, name: 'demo', rows }))
    expect(pitchline(['pattern', crawler, file]).code).toBe(0)
    writeFileSync(file, JSON.stringify({ format: 'pitchline-pattern', version: 1, name: 'demo', rows: [{}] }))
    const { code, err } = pitchline(['pattern', crawler, file])
    expect(code).toBe(1)
    expect(err).toContain('rows.0.seconds is missing')
    expect(pitchline(['pattern', crawler, 'No such']).err).toContain('Hut round')
  })
})
