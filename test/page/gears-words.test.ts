import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { check } from '../../shared-engine/check.ts'
import { candidateMap } from '../../shared-engine/draw/plots/candidate-map.ts'
import { completeBuild, readStoredBuildText } from '../../shared-engine/entries/read.ts'
import { limitOf } from '../../shared-engine/limits/table.ts'
import type { SearchOutcome } from '../../shared-engine/search/outcome.ts'
import type { LimitId } from '../../shared-engine/limits/id.ts'
import { pixelAlong } from '../../shared-engine/draw/readout.ts'
import { markAt, nextMark } from '../../src-renderer/questions/gears/map-pick.ts'
import { relaxWords } from '../../src-renderer/questions/gears/relax.ts'

/** The demo whose driven wheel is of acetal. */
const demo = readStoredBuildText(readFileSync('examples/quick-sled-puller.build.json', 'utf8'))
if (!demo.ok) throw new Error('the demo cannot be read')
const checked = check(completeBuild(demo.value))

const gearRoot = checked.limits.find(({ id }) => /^stage\.\d+\.bending/.test(id))?.id ?? 'vehicle.start'

/** Demo data: five candidates, all of which break one limit. */
function broken(id: LimitId): SearchOutcome {
  const limit = limitOf(id)
  if (limit === undefined) throw new Error(`no limit ${id}`)
  return {
    looked: 5,
    sound: 5,
    holding: 0,
    rows: [],
    runnersUp: 0,
    frontCount: 0,
    holds: [
      {
        hold: { type: 'margin', limit, least: 0 },
        breaking: 5,
        breakingAlone: 5,
        best: -0.4,
        bestChoices: [],
      },
    ],
    neverTogether: [],
    closest: null,
    unsound: [],
  } as unknown as SearchOutcome
}

describe('what to relax', () => {
  it('names no lever that was varied already', () => {
    const outcome = broken('motor.free-rpm')
    const words = relaxWords(outcome, ['track.sprocketTeeth'], checked, 'metric')
    expect(words).toMatch(/vary .*cells in series.*throttle cap.*motor too/)
    const varied = ['pack.series', 'controller.throttleCapPercent', 'motor']
    const left = relaxWords(outcome, varied, checked, 'metric')
    for (const lever of ['cells in series', 'throttle cap', 'the motor']) expect(left).not.toContain(lever)
  })

  it('names what no search varies where the limit depends on it: the material of a wheel', () => {
    expect(relaxWords(broken(gearRoot), ['stages.0.driverTeeth'], checked, 'metric')).toMatch(
      /change what no search varies: .*material/i,
    )
  })
})

/** Demo data: four that hold close together, and one far out that does not. */
const marks = {
  x: { label: 'Top speed', kind: 'speed' },
  y: { label: 'Force', kind: 'force' },
  xs: [10, 11, 12, 13, 90],
  ys: [100, 90, 85, 80, 700],
  holds: [true, true, true, true, false],
  indices: [40, 41, 42, 43, 99],
  front: [],
  chosen: null,
  tried: 5,
} as const

describe('the map of candidates', () => {
  const scene = candidateMap(marks, { system: 'metric', size: { width: 500, height: 300 } })
  const panel = scene.plot?.panels[0]
  if (scene.plot === null || panel === undefined) throw new Error('no plot')
  const at = (place: number) => ({
    x: pixelAlong(scene.plot?.x ?? panel.y, marks.xs[place] ?? 0, panel.frame.x0, panel.frame.x1),
    y: pixelAlong(panel.y, marks.ys[place] ?? 0, panel.frame.y0, panel.frame.y1),
  })

  it('shows those that hold large and whole, and counts what is further out', () => {
    expect(scene.plot?.x.high).toBeLessThan(30)
    for (const place of [0, 1, 2, 3]) {
      expect(at(place).x).toBeGreaterThan(panel.frame.x0 + 3)
      expect(at(place).x).toBeLessThan(panel.frame.x1 - 3)
    }
    // Four of them lie over a third of the width at least.
    expect(at(3).x - at(0).x).toBeGreaterThan((panel.frame.x1 - panel.frame.x0) / 3)
    expect(scene.summary).toContain('1 that do not hold lie further out')
  })

  it('finds the mark that is pressed, and none where there is none', () => {
    expect(markAt(scene, marks, { x: at(2).x + 4, y: at(2).y - 4 })).toBe(42)
    expect(markAt(scene, marks, { x: at(0).x, y: at(3).y })).toBeNull()
  })

  it('is stepped through by keys among those that hold, and stays at its ends', () => {
    expect(nextMark(marks, null, 'ArrowRight')).toBe(40)
    expect(nextMark(marks, 40, 'ArrowRight')).toBe(41)
    expect(nextMark(marks, 43, 'ArrowRight')).toBe(43)
    expect(nextMark(marks, null, 'ArrowLeft')).toBe(43)
    expect(nextMark(marks, 42, 'Home')).toBe(40)
    expect(nextMark(marks, 42, 'a')).toBeNull()
    expect(nextMark({ ...marks, holds: marks.holds.map(() => false) }, null, 'End')).toBeNull()
  })
})
