import { readFileSync } from 'node:fs'
import { expect, it } from 'vitest'
import { check } from '../../../shared-engine/check.ts'
import { readBuildValue } from '../../../shared-engine/entries/read.ts'
import type { StoredBuild } from '../../../shared-engine/entries/schema.ts'

const goldenOf = (number: string) =>
  JSON.parse(
    readFileSync(new URL(`../../golden/2/heat/${number}.build.json`, import.meta.url), 'utf8'),
  ) as StoredBuild
const marsh = goldenOf('04')
const cellar = goldenOf('03')

function figuresOf(build: StoredBuild, ...rows: readonly object[]) {
  const read = readBuildValue({ ...build, service: { ...build.service, pattern: { rows } } })
  if (!read.ok) throw new Error(JSON.stringify(read.mistakes))
  return check(read.value).figures
}

const level = { seconds: 60, throttlePercent: 4, gradePercent: 0 }
const downhill = { seconds: 60, throttlePercent: 5, gradePercent: -30 }

// By hand, docs/model.md §7: where the slope drives, no current flows at ω = δ V_0/K_t, and the belt does not slip. V_0 of
// 12 cells at 3.91 V (60 %) is 46.92 V; K_t = 60/(2π · 190) (1 − 0.0011 · 40) = 0.048 048 0 V·s; ω = 0.05 · 46.92/K_t =
// 48.826 1 rad/s; v = ω · (0.4 m/2π)/12 = 0.259 031 m/s.
it('a part throttle that the slope drives on soil turns at its own speed without current, whatever row came before', () => {
  const before = figuresOf(marsh, level)
  const alone = figuresOf(marsh, downhill)
  expect(alone.patternMotorAmpsRms).toBe(0)
  expect(alone.patternMeanSpeedMps).toBeCloseTo(0.259031, 6)

  const both = figuresOf(marsh, level, downhill)
  expect(both.patternMotorAmpsRms).toBeCloseTo((before.patternMotorAmpsRms ?? NaN) / Math.SQRT2, 9)
  expect(both.patternMeanSpeedMps).toBeCloseTo(((before.patternMeanSpeedMps ?? NaN) + 0.259031) / 2, 6)
})

// Rolling coefficient 0.05 on a slope of −5 %: R = m g cos θ (0.05 − 0.05) = 0, so v_b = v. By hand: v = 0.5 m/s, r = 14 ·
// 12.7 mm/2π = 28.297 7 mm, G = 3.75 · 28/9, ω = v G/r = 206.141 rad/s; K_t (60 °C) = 60/(2π · 270) · 0.956 = 0.033 811 6;
// ω_ref = (24 − 0.7 · 0.09)/(60/(2π · 270)) = 676.803 rad/s, I_0 = 0.7 (0.5 + 0.5 ω/ω_ref) = 0.456 603 A; ω K_t I_0 = W.
it('a belt does not slip on a slope that just balances the ground', () => {
  const rowAt = (gradePercent: number) => ({ seconds: 60, speedKmh: 1.8, gradePercent })
  const { patternIronWatts } = figuresOf(cellar, rowAt(-5))
  expect(patternIronWatts).toBeCloseTo(206.141 * 0.0338116 * 0.456603, 3)
  // The cellar's slip of 3 % comes with the least thrust.
  expect(figuresOf(cellar, rowAt(-4.999)).patternIronWatts ?? NaN).toBeGreaterThan(3.28)
})
