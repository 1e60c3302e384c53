import path from 'node:path'
import { describe, expect, it } from 'vitest'
import { pitchline, root, untidyLines } from './command.ts'

const golden = (name: string) => path.join(root, 'test/golden/measure', name)
const third = [golden('fit-3.build.json'), golden('fit-3.channels.json')]

describe('pitchline fit', () => {
  it('offers what a log tells and exits with 0', () => {
    const { code, out } = pitchline(['fit', ...third, '--entries', 'ground.rollingCoefficient'])
    expect(code).toBe(0)
    expect(out).toMatch(/ground\.rollingCoefficient: 0\.09 → 0\.0\d+ ± 0\.00\d+/)
    expect(untidyLines(out)).toEqual([])
  })

  it('refuses in words what it cannot tell apart, and exits with 2', () => {
    const words = ['fit', ...third, '--entries', 'ground.rollingCoefficient,track.internalDragN']
    const { code, out } = pitchline(words)
    expect(code).toBe(2)
    expect(out).toContain('Lift it off')
    const json = JSON.parse(pitchline([...words, '--json']).out) as {
      format: string
      entries: { code: string }[]
    }
    expect(json.format).toBe('pitchline-fit')
    expect(json.entries.map((entry) => entry.code)).toEqual(['together', 'together'])
  })

  it('exits with 1 for entries that no log tells, or none at all', () => {
    const { code, err } = pitchline(['fit', ...third, '--entries', 'track.pitchMm,motor.poleCount'])
    expect(code).toBe(1)
    expect(err.trimEnd().split('\n')).toHaveLength(2)
    expect(err).toContain('ground.slipPercent')
    expect(pitchline(['fit', ...third]).code).toBe(1)
  })

  it('reads a table as a recorder writes it', () => {
    const rows = Array.from({ length: 60 }, (_, at) => `${at / 10},${1000 + at},40,5,8,0.3`)
    const log = ['time (s),rpm,voltage (V),current (A),motor current (A),duty (%)', ...rows].join('\n')
    const { code, out } = pitchline(['fit', third[0] ?? '', '-', '--entries', 'ground.slipPercent'], log)
    expect([code, out.includes('ground.slipPercent')]).toEqual([2, true])
  })
})
