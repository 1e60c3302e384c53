import { describe, expect, test } from 'vitest'
import { completeBuild, readStoredBuildValue } from '../../../shared-engine/entries/read.ts'
import type { Build, StoredBuild } from '../../../shared-engine/entries/schema.ts'
import { check } from '../../../shared-engine/check.ts'
import {
  uncertaintyOf,
  uncertaintyOfPieces,
  type UncertainLimit,
} from '../../../shared-engine/uncertainty/uncertainty.ts'
import { uncertaintyPieces, uncertaintyPlanOf } from '../../../shared-engine/uncertainty/samples.ts'
import { simpleBuild } from '../../fixtures/build/plain.ts'

function buildOf(stored: StoredBuild): Build {
  const read = readStoredBuildValue(stored)
  if (!read.ok) throw new Error(JSON.stringify(read.mistakes))
  return completeBuild(read.value)
}

/** Demo data: a lamp of 40 W behind a converter for 5 A at 12 V; margin = 1 − watts/60, whatever else the machine is. */
function lampBuild(tolerances: StoredBuild['tolerances'], watts = 40): Build {
  const accessories = [{ name: 'lamp', watts, volts: 12, converterAmps: 5 }]
  return buildOf({ ...simpleBuild(), accessories, tolerances })
}

/** Demo data: loop tension linear in pretension and current limit: N = K_A K_t (I_lim − I_nl) G/r + N_0 in the jam. */
function tensionBuild(tolerances: StoredBuild['tolerances']): Build {
  const plain = simpleBuild()
  return buildOf({
    ...plain,
    controller: { currentLimitAmps: 60 },
    stages: [{ kind: 'fixed', ratio: 20 }],
    track: { ...plain.track, pretensionN: 100, breakingTensionN: 1000, tensioner: 'sprung' },
    tolerances,
  })
}

function limitIn({ limits }: { limits: readonly UncertainLimit[] }, id: string): UncertainLimit {
  const limit = limits.find((one) => one.id === id)
  if (limit === undefined) throw new Error(`no limit ${id}`)
  return limit
}

describe('a margin that is linear in one entry has that entry’s quantiles', () => {
  const samples = 4000

  test('uniform', () => {
    const build = lampBuild({ 'accessories.0.watts': { plusMinus: 30, shape: 'uniform' } })
    const lamp = limitIn(uncertaintyOf(build, { samples, seed: 3 }), 'converter.1.current')
    // watts are uniform over 10 to 70, so the margin over 1 − 70/60 to 1 − 10/60.
    const quantile = (p: number) => 1 - (70 - 60 * p) / 60
    // One slice of the hypercube is the sampling error: the margin's whole width over the samples.
    const slice = 1 / samples
    expect(Math.abs((lamp.margin5 ?? NaN) - quantile(0.05))).toBeLessThan(slice)
    expect(Math.abs((lamp.margin50 ?? NaN) - quantile(0.5))).toBeLessThan(slice)
    expect(Math.abs((lamp.margin95 ?? NaN) - quantile(0.95))).toBeLessThan(slice)
    // Over from 60 W on: 10 of 60.
    expect(Math.abs(lamp.probabilityOver - 1 / 6)).toBeLessThanOrEqual(1 / samples)
    expect(lamp.influences[0]?.rankCorrelation).toBe(-1)
  })

  test('normal: the tolerance is two standard deviations, cut off at three', () => {
    const build = lampBuild({ 'accessories.0.watts': { plusMinusPercent: 25, shape: 'normal' } })
    const lamp = limitIn(uncertaintyOf(build, { samples, seed: 3 }), 'converter.1.current')
    // scipy 1.17, stats.truncnorm.ppf(0.05, -3, 3); one standard deviation is 5 W, that is 1/12 of margin.
    const fifth = -1.6331863189144873
    // A slice of probability 1/samples there is 1/(samples · density 0.105) standard deviations wide.
    const slice = 1 / (samples * 0.105) / 12
    expect(Math.abs((lamp.margin5 ?? NaN) - (1 / 3 + fifth / 12))).toBeLessThan(slice)
    expect(Math.abs((lamp.margin50 ?? NaN) - 1 / 3)).toBeLessThan(slice)
    expect(Math.abs((lamp.margin95 ?? NaN) - (1 / 3 - fifth / 12))).toBeLessThan(slice)
    expect(lamp.probabilityOver).toBe(0)
  })

  test('halving its tolerance halves the band', () => {
    const build = lampBuild({ 'accessories.0.watts': { plusMinus: 12, shape: 'uniform' } })
    const lamp = limitIn(uncertaintyOf(build, { samples: 500, seed: 9 }), 'converter.1.current')
    const [influence] = lamp.influences
    // 1e-12: the same draws, the same order statistics, a straight line.
    expect((influence?.bandIfHalved ?? NaN) / (influence?.band ?? NaN)).toBeCloseTo(0.5, 12)
    expect(lamp.measureFirst).toBe('accessories.0.watts')
  })
})

describe('two entries', () => {
  /** K_A K_t G/r, N of loop tension for 1 A of the current limit. */
  const perAmp = (1.5 * (60 / (2 * Math.PI * 500)) * 20) / ((0.02 * 12) / (2 * Math.PI))

  test.each([
    [1, 1],
    [2, 1],
    [1, 3],
  ])('normal ones, spreads as %d to %d: rank correlation (6/π) asin(ρ/2)', (pretension, amps) => {
    const build = tensionBuild({
      'track.pretensionN': { plusMinus: 4 * pretension, shape: 'normal' },
      'controller.currentLimitAmps': { plusMinus: (4 * amps) / perAmp, shape: 'normal' },
    })
    const tension = limitIn(uncertaintyOf(build, { samples: 10_000, seed: 5 }), 'track.tension')
    const total = Math.hypot(pretension, amps)
    const found = new Map(tension.influences.map((one) => [one.path, one.rankCorrelation]))
    // Pearson (1907); Kendall and Gibbons, Rank Correlation Methods (1990), chapter 9: bivariate normal.
    const expected = (share: number) => (6 / Math.PI) * Math.asin(-share / total / 2)
    // 0.02: two standard errors of 1/√10000; the cut-off at three standard deviations changes less.
    expect(Math.abs((found.get('track.pretensionN') ?? NaN) - expected(pretension))).toBeLessThan(0.02)
    expect(Math.abs((found.get('controller.currentLimitAmps') ?? NaN) - expected(amps))).toBeLessThan(0.02)
    const sizes = tension.influences.map((one) => Math.abs(one.rankCorrelation ?? 0))
    expect(sizes).toEqual([...sizes].sort((one, other) => other - one))
    if (pretension !== amps) {
      expect(tension.measureFirst).toBe(
        pretension > amps ? 'track.pretensionN' : 'controller.currentLimitAmps',
      )
    }
  })

  test('covers the true probability over repeated seeds', () => {
    // Two uniform ones of equal spread w: the sum is triangular over ± 2w. Over is a tension above 1000 N, which is set
    // to be 0.8 w above the nominal one: probability (2 − 0.8)²/8 = 0.18.
    const nominal = perAmp * (60 - 1.5) + 100
    const half = (1000 - nominal) / 0.8
    const build = tensionBuild({
      'track.pretensionN': { plusMinus: half, shape: 'uniform' },
      'controller.currentLimitAmps': { plusMinus: half / perAmp, shape: 'uniform' },
    })
    const samples = 200
    const truth = (2 - 0.8) ** 2 / 8
    const reach = 1.96 * Math.sqrt((truth * (1 - truth)) / samples)
    const seeds = Array.from({ length: 100 }, (_, seed) => seed)
    const estimates = seeds.map(
      (seed) => limitIn(uncertaintyOf(build, { samples, seed }), 'track.tension').probabilityOver,
    )
    const covered = estimates.filter((estimate) => Math.abs(estimate - truth) <= reach).length
    // Plain random samples would be covered in 95 of 100; a Latin hypercube is no worse (McKay and others, 1979).
    expect(covered).toBeGreaterThanOrEqual(95)
    const mean = estimates.reduce((sum, one) => sum + one, 0) / seeds.length
    // Three standard errors of the mean of 100 estimates.
    expect(Math.abs(mean - truth)).toBeLessThan((3 * reach) / 1.96 / 10)
    expect(new Set(estimates).size).toBeGreaterThan(5)
  })
})

test('the same seed gives the same result however the work is cut, and in whatever order it is done', () => {
  const build = tensionBuild({
    'track.pretensionN': { plusMinusPercent: 30, shape: 'uniform' },
    'motor.kvRpmPerVolt': { plusMinusPercent: 4, shape: 'normal' },
    'vehicle.massKg': { plusMinus: 2, shape: 'normal' },
  })
  const options = { samples: 3000, seed: 77 }
  const whole = uncertaintyOf(build, options)
  for (const size of [37, 500, 2500]) {
    // Each piece by a plan of its own, as in a thread of its own.
    const pieces = uncertaintyPieces(uncertaintyPlanOf(build, options), size).reverse()
    const found = pieces.map((piece) => uncertaintyPlanOf(build, options).run(piece))
    expect(uncertaintyOfPieces(uncertaintyPlanOf(build, options), found)).toEqual(whole)
  }
  expect(uncertaintyOf(build, { ...options, seed: 78 })).not.toEqual(whole)
})

describe('draws that are no build, and draws out of range', () => {
  test('are counted: a load height drawn above the tooth’s tip makes no build', () => {
    const plain = simpleBuild()
    const tooth = { heightMm: 10, rootMm: 10, widthMm: 30, loadHeightMm: 9, material: 'pom' as const }
    const build = buildOf({
      ...plain,
      track: { ...plain.track, tooth },
      tolerances: { 'track.tooth.loadHeightMm': { plusMinus: 2, shape: 'uniform' } },
    })
    const result = uncertaintyOf(build, { samples: 400, seed: 1 })
    // Uniform over 7 to 11 mm, 10 mm and above is refused: a quarter, to a slice.
    expect(Math.abs(result.impossible - 100)).toBeLessThanOrEqual(1)
    expect(limitIn(result, 'track.tooth-bearing').present).toBe(1)
  })

  test('are held to the range: nothing is more efficient than 100 %', () => {
    const plain = simpleBuild()
    const build = buildOf({
      ...plain,
      stages: [{ kind: 'fixed', ratio: 4, efficiencyPercent: 98 }],
      tolerances: { 'stages.0.efficiencyPercent': { plusMinus: 4, shape: 'uniform' } },
    })
    const [entry] = uncertaintyOf(build, { samples: 400, seed: 1 }).entries
    // Uniform over 94 to 102: a quarter lies above.
    expect(Math.abs((entry?.held ?? 0) - 100)).toBeLessThanOrEqual(1)
  })

  test('counts are named, not blurred', () => {
    const build = lampBuild({
      'motor.poleCount': { plusMinus: 2, shape: 'uniform' },
      'accessories.0.watts': { plusMinus: 1, shape: 'uniform' },
    })
    const result = uncertaintyOf(build, { samples: 50, seed: 1 })
    expect(result.counted).toEqual(['motor.poleCount'])
    expect(result.entries.map((entry) => entry.path)).toEqual(['accessories.0.watts'])
  })
})

test('margins that cannot be formed count as over, and as lower than any other', () => {
  const plain = simpleBuild()
  const build = buildOf({
    ...plain,
    motor: { ...plain.motor, thermalResistanceKPerW: 3 },
    vehicle: { massKg: 12, towForceN: 40 },
    tolerances: { 'motor.thermalResistanceKPerW': { plusMinusPercent: 90, shape: 'uniform' } },
  })
  const heat = limitIn(uncertaintyOf(build, { samples: 1000, seed: 1 }), 'motor.temperature')
  // Runaway where R_th I² R_20 α ≥ 1 (`docs/model.md` §7): the highest of the 0.3 to 5.7 K/W have no steady temperature.
  const amps = check(build).figures.patternMotorAmpsRms ?? NaN
  const unformed = (5.7 - 1 / (amps ** 2 * 0.025 * 0.00393)) / 5.4
  expect(unformed).toBeGreaterThan(0.06)
  expect(heat.margin5).toBeNull()
  expect(heat.margin95).not.toBeNull()
  expect(heat.probabilityOver).toBeGreaterThan(unformed)
  // The hotter the worse, the worst tied: a perfect ranking but for a share q of ties has −√(1 − q³) (mid-ranks, Kendall
  // and Gibbons, 1990, chapter 3). 0.003: a slice of the hypercube more or less in the ties.
  const expected = -Math.sqrt(1 - unformed ** 3)
  expect(Math.abs((heat.influences[0]?.rankCorrelation ?? NaN) - expected)).toBeLessThan(0.003)
})

test('without tolerances every percentile is what check says', () => {
  const build = lampBuild({})
  const result = uncertaintyOf(build)
  expect(result.samples).toBe(1)
  for (const row of check(build).limits) {
    expect(limitIn(result, row.id)).toMatchObject({
      margin5: row.margin,
      margin50: row.margin,
      margin95: row.margin,
    })
  }
})
