import { readFileSync, writeFileSync } from 'node:fs'
import path from 'node:path'
import { describe, expect, test } from 'vitest'
import { demoFile, pitchline, temporaryFolder, untidyLines } from './command.ts'

const newt = demoFile('culvert-crawler')
const stoat = demoFile('quick-sled-puller')
const folder = temporaryFolder()

interface SweepJson {
  format: string
  points: { value: number; figures: Record<string, number | null>; gap: string | null }[]
  today: { value: number; figures: Record<string, number | null> }
  crossings: { id: string; value: number; goesOver: boolean }[]
}
const jsonOf = (text: string) => JSON.parse(text) as SweepJson

describe('sweep', () => {
  const words = ['sweep', newt, 'stages.0.drivenTeeth', '60', '110', '5']

  test('gives figures, gaps with their reason, and the limits crossed', () => {
    const { out, code } = pitchline([...words, '--json'])
    const { points, crossings, today } = jsonOf(out)
    expect(points.map(({ value }) => value)).toEqual([60, 70, 80, 90, 100, 110])
    expect(points.map(({ gap }) => gap !== null)).toEqual([false, false, false, false, true, true])
    expect(today.figures).toEqual(points[0]?.figures)
    expect(crossings).toEqual([])
    expect(code).toBe(0) // the build as it is has nothing over
    expect(pitchline(['sweep', stoat, 'vehicle.massKg', '20', '40', '2']).code).toBe(2)
  })

  test('text is tidy and names what is crossed', () => {
    const { out, err } = pitchline(words)
    expect(untidyLines(out)).toEqual([])
    expect(err).toBe('')
    expect(out).toContain('stages.0.centreMm is 95 mm; allowed: above')
  })

  test('names the limits crossed: a wider pair of gears lasts', () => {
    const wider = ['sweep', newt, 'stages.1.faceWidthMm', '6', '14', '8']
    const { crossings } = jsonOf(pitchline([...wider, '--json']).out)
    const [found] = crossings.filter(({ id }) => id === 'stage.2.flank')
    const { limits } = JSON.parse(pitchline(['check', newt, '--json']).out) as {
      limits: { id: string; actual: number; allowed: number }[]
    }
    const row = limits.find(({ id }) => id === 'stage.2.flank')
    // flank pressure goes with the root of the width (Shigley, eq. 14-14), 12 mm now; 1e-6: where a sweep finds a crossing
    const expected = 12 * ((row?.actual ?? NaN) / (row?.allowed ?? NaN)) ** 2
    expect(found).toMatchObject({ goesOver: false })
    expect(Math.abs((found?.value ?? NaN) / expected - 1)).toBeLessThan(1e-6)
    expect(pitchline(wider).out).toContain('Gear tooth flank, for long, stage 2: ')
  })

  test('a table has a column for each figure asked for', () => {
    const { out } = pitchline([...words, '--csv', '--figures', 'ratio, worstMargin'])
    const lines = out.trimEnd().split('\r\n')
    expect(lines[0]).toBe('stages.0.drivenTeeth,ratio,worstMargin,worstLimit,gap')
    expect(lines[1]).toMatch(/^60,13\.3333\d*,/) // 60/18 · 72/18
    expect(lines).toHaveLength(7)
  })

  test.each([
    [['vehicle.massKg', 'x', '20', '3'], 'pitchline: <from> is "x", not a number.\n'],
    [
      ['vehicle.massKg', '1', '30000', '3'],
      'pitchline: vehicle.massKg is 30000, out of range; allowed: 0.05 to 20,000 kg.\n',
    ],
    [
      ['name', '1', '2', '3'],
      'pitchline: name cannot be varied here; allowed: a number that this build has or may have.\n',
    ],
  ])('refuses %j in one line', (request, line) => {
    expect(pitchline(['sweep', newt, ...request])).toEqual({ code: 1, out: '', err: line })
  })
})

describe('compare', () => {
  test('tells entries that differ, figures and margins', () => {
    const other = path.join(folder(), 'other.build.json')
    writeFileSync(other, readFileSync(newt, 'utf8').replace('"massKg": 13.5', '"massKg": 14.5'))
    const { out, code } = pitchline(['compare', newt, other])
    expect(untidyLines(out)).toEqual([])
    expect(out).toMatch(/Entries that differ +\(1\) +\(2\)\nvehicle\.massKg +13\.5 +14\.5\n\n/)
    expect(code).toBe(0)
    const json = JSON.parse(pitchline(['compare', newt, other, '--json']).out) as {
      entries: unknown
      figures: Record<string, number[]>
    }
    expect(json.entries).toEqual([{ path: 'vehicle.massKg', values: [13.5, 14.5] }])
    expect(json.figures['topSpeedMps']).toHaveLength(2)
    expect(pitchline(['compare', newt, stoat]).code).toBe(2)
  })

  test('refuses one build, five, and what cannot be read', () => {
    expect(pitchline(['compare', newt]).err).toContain('a second build is missing')
    expect(pitchline(['compare', newt, newt, newt, newt, newt])).toMatchObject({ code: 1, out: '' })
    expect(pitchline(['compare', newt, 'nowhere.build.json']).err).toBe(
      'nowhere.build.json: there is no file of this name.\n',
    )
  })
})
