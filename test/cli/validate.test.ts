import path from 'node:path'
import { describe, expect, it } from 'vitest'
import { pitchline, root, untidyLines } from './command.ts'

const golden = (name: string) => path.join(root, 'test/golden/measure', name)

describe('pitchline validate', () => {
  const words = ['validate', golden('fit-1.build.json'), golden('fit-1.channels.json')]

  it('says where a build is off a run, by how much, and exits with 2', () => {
    const { code, out } = pitchline(words)
    expect(code).toBe(2)
    expect(out).toMatch(/The build is off this run in/)
    expect(out.replace(/\s+/g, ' ')).toMatch(
      /predicted [\d.]+ \S+ \(\d+ %\) too (high|low); tolerances and sensors allow/,
    )
    expect(untidyLines(out)).toEqual([])
    const json = JSON.parse(pitchline([...words, '--json']).out) as {
      format: string
      drivenBy: string
      quantities: { id: string; samples: number; meanError: number; verdict: string }[]
    }
    expect(json.format).toBe('pitchline-validation')
    expect(json.drivenBy).toBe('duty')
    expect(json.quantities.map(({ id }) => id)).toEqual(expect.arrayContaining(['speed', 'amps']))
    expect(json.quantities.every(({ samples, meanError }) => samples > 7 && Number.isFinite(meanError))).toBe(
      true,
    )
  })

  it('reads a table as a recorder writes it: the demo log', () => {
    const { code, out } = pitchline([
      'validate',
      path.join(root, 'examples/quick-sled-puller.build.json'),
      path.join(root, 'examples/quick-sled-puller.log.csv'),
    ])
    expect([0, 2]).toContain(code)
    expect(out.replace(/\s+/g, ' ')).toContain('worked out from the sag of the volts')
    expect(out.replace(/\s+/g, ' ')).toContain('the load had gone')
  })

  it('is told which column is the time', () => {
    const rows = Array.from({ length: 60 }, (_, at) => `${at / 10},${1000 + at},40,5,8,3`)
    const table = ['stamp,rpm,voltage (V),current (A),motor current (A),duty (%)', ...rows].join('\n')
    const asked = ['validate', golden('fit-1.build.json'), '-']
    expect(pitchline(asked, table).err).toContain('[no-time]')
    const { code, out } = pitchline([...asked, '--time', '1'], table)
    expect([code === 1, out.includes('The build')]).toEqual([false, true])
  })

  it('exits with 1 for what it cannot read', () => {
    expect(pitchline(['validate', golden('fit-1.build.json'), '-'], 'no log\n').code).toBe(1)
    expect(pitchline(['validate', '-', '-'], '').code).toBe(1)
  })
})
