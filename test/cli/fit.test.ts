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

  it('is told which seconds were driven in the air, in the table or the channels; what is no stretch is refused', () => {
    const words = ['fit', ...third, '--entries', 'ground.rollingCoefficient']
    // This run was driven on the ground: a mark that says otherwise is doubted.
    expect(pitchline([...words, '--in-air', '20-60']).out.replace(/\s+/g, ' ')).toContain(
      'from 20.0 to 60.0 s the log is marked as driven in the air',
    )
    expect(pitchline(words).out).not.toContain('in the air')
    for (const wrong of ['60-20', 'all', '0:1-2', '20-60,x']) {
      const { code, err } = pitchline([...words, '--in-air', wrong])
      expect([code, err.includes('2:12-30')]).toEqual([1, true])
    }
  })

  it('is told what a column means as the reading of a log is, and says what it lacks with the same code', () => {
    const rows = Array.from({ length: 60 }, (_, at) => `${at / 10},${1000 + at},40,5,8,0.3`)
    const table = (time: string) =>
      [`${time},rpm,voltage (V),current (A),motor current (A),duty (%)`, ...rows].join('\n')
    const words = ['fit', third[0] ?? '', '-', '--entries', 'ground.slipPercent']
    const plain = pitchline(words, table('time (s)'))
    const lacking = pitchline(words, table('stamp'))
    expect([lacking.code, lacking.err.includes('--time')]).toEqual([1, true])
    expect(lacking.err).toContain('[no-time]')
    expect(pitchline([...words, '--time', 'stamp'], table('stamp')).out).toBe(plain.out)
    expect(pitchline([...words, '--columns', 'nowhere.json'], table('stamp')).code).toBe(1)
  })
})
