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

  it('exits with 1 for what it cannot read', () => {
    expect(pitchline(['validate', golden('fit-1.build.json'), '-'], 'no log\n').code).toBe(1)
    expect(pitchline(['validate', '-', '-'], '').code).toBe(1)
  })
})
