import { readFileSync } from 'node:fs'
import { expect, it } from 'vitest'
import { check } from '../../../shared-engine/check.ts'
import { readBuildValue } from '../../../shared-engine/entries/read.ts'
import type { StoredBuild } from '../../../shared-engine/entries/schema.ts'

const cellar = JSON.parse(
  readFileSync(new URL('../../golden/2/heat/03.build.json', import.meta.url), 'utf8'),
) as StoredBuild

// Skis 0.7 m ahead of the patch, centre of mass 0.15 m high, a wheel brake that only the grip limits, no air drag. By hand,
// docs/model.md §§5 and 7 on −10 %, tow 0: W = 12 g cos θ = 117.0957 N, W_t = 0.6 W = 70.2574 N, R_g = 0.05 W_t = 3.5129 N;
// Δ = 0.15 (0.8 W_t − R_g)/(0.7 − 0.15 · 0.8) = 13.6275 N, F_max = 0.8 (W_t + Δ) = 67.1079 N; R = R_g − 12 g sin θ =
// −8.1967 N; a = (F_max + R)/12 = 4.9093 m/s², s = v²/2a.
it('what is towed neither holds back nor moves weight in a stop downhill', () => {
  const read = readBuildValue({
    ...cellar,
    vehicle: {
      massKg: 12,
      onTrackPercent: 60,
      skiDistanceMm: 700,
      cgHeightMm: 150,
      cgAheadMm: 200,
      towForceN: 20,
      brakeForceN: 10000,
    },
  })
  if (!read.ok) throw new Error(JSON.stringify(read.mistakes))
  const { stopDownhillMetres, topSpeedMps } = check(read.value).figures
  expect((topSpeedMps ?? NaN) ** 2 / 2 / (stopDownhillMetres ?? NaN)).toBeCloseTo(4.9093, 4)
})
