import { readFileSync } from 'node:fs'
import { expect, it } from 'vitest'
import { check } from '../../../shared-engine/check.ts'
import { readBuildValue } from '../../../shared-engine/entries/read.ts'
import type { StoredBuild } from '../../../shared-engine/entries/schema.ts'

const marsh = JSON.parse(
  readFileSync(new URL('../../golden/2/heat/04.build.json', import.meta.url), 'utf8'),
) as StoredBuild

function figuresWith(...rows: readonly object[]) {
  const read = readBuildValue({ ...marsh, service: { ...marsh.service, pattern: { rows } } })
  if (!read.ok) throw new Error(JSON.stringify(read.mistakes))
  return check(read.value).figures
}

const level = { seconds: 60, throttlePercent: 4, gradePercent: 0 }
const downhill = { seconds: 60, throttlePercent: 5, gradePercent: -30 }

// By hand, docs/model.md §7: where the slope drives, no current flows at ω = δ V_0/K_t, and the belt does not slip. V_0 of
// 12 cells at 3.91 V (60 %) is 46.92 V; K_t = 60/(2π · 190) (1 − 0.0011 · 40) = 0.048 048 0 V·s; ω = 0.05 · 46.92/K_t =
// 48.826 1 rad/s; v = ω · (0.4 m/2π)/12 = 0.259 031 m/s.
it('a part throttle that the slope drives on soil turns at its own speed without current, whatever row came before', () => {
  const before = figuresWith(level)
  const alone = figuresWith(downhill)
  expect(alone.patternMotorAmpsRms).toBe(0)
  expect(alone.patternMeanSpeedMps).toBeCloseTo(0.259031, 6)

  const both = figuresWith(level, downhill)
  expect(both.patternMotorAmpsRms).toBeCloseTo((before.patternMotorAmpsRms ?? NaN) / Math.SQRT2, 9)
  expect(both.patternMeanSpeedMps).toBeCloseTo(((before.patternMeanSpeedMps ?? NaN) + 0.259031) / 2, 6)
})
