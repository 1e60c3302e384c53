import { describe, expect, it } from 'vitest'
import { stagePartOf } from '../../shared-engine/machine/stage.ts'
import { type ChainSizeId, chainSizeOf, strandFactor } from '../../shared-engine/reference/chains.ts'
import { chainPowerRating } from '../../shared-engine/stages/chain/physics.ts'

const poundForce = 4.4482216152605
const horsepower = 745.699872

/** ANSI numbers as ISO 606 calls the same chains. */
const sizeOf = { 25: '04C', 35: '06C', 41: '085', 40: '08A', 50: '10A', 60: '12A' } as const satisfies Record<
  number,
  ChainSizeId
>
type Ansi = keyof typeof sizeOf

/** *Source:* Shigley's Mechanical Engineering Design, table 17-19, after ANSI B29.1: pitch in, strength lbf. From memory. */
const strengths: readonly (readonly [Ansi, number, number])[] = [
  [25, 0.25, 780],
  [35, 0.375, 1760],
  [41, 0.5, 1500],
  [40, 0.5, 3130],
  [50, 0.625, 4880],
  [60, 0.75, 7030],
]

/**
 * *Source:* the same, table 17-20: rated horsepower of single-strand chain on a 17-tooth sprocket, by its rev/min. The rows
 * cover both regimes, link plates and rollers. From memory.
 */
const ratings: readonly (readonly [number, Readonly<Record<Ansi, number>>])[] = [
  [50, { 25: 0.05, 35: 0.16, 40: 0.37, 41: 0.2, 50: 0.72, 60: 1.24 }],
  [100, { 25: 0.09, 35: 0.29, 40: 0.69, 41: 0.38, 50: 1.34, 60: 2.31 }],
  [300, { 25: 0.23, 35: 0.78, 40: 1.85, 41: 1.02, 50: 3.61, 60: 6.2 }],
  [500, { 25: 0.37, 35: 1.24, 40: 2.93, 41: 1.61, 50: 5.71, 60: 9.81 }],
  [900, { 25: 0.62, 35: 2.1, 40: 4.98, 41: 2.74, 50: 9.69, 60: 16.7 }],
  [1200, { 25: 0.81, 35: 2.73, 40: 6.45, 41: 3.29, 50: 12.6, 60: 21.6 }],
  [1400, { 25: 0.93, 35: 3.13, 40: 7.41, 41: 2.61, 50: 14.4, 60: 18.1 }],
  [1800, { 25: 1.16, 35: 3.93, 40: 8.96, 41: 1.79, 50: 10.7, 60: 12.4 }],
  [2500, { 25: 1.56, 35: 5.28, 40: 5.51, 41: 1.1, 50: 6.58, 60: 7.57 }],
  [3000, { 25: 1.84, 35: 5.64, 40: 4.17, 41: 0.83, 50: 4.98, 60: 5.76 }],
]

describe('strength of a chain', () => {
  it.each(strengths)('%d: %d in, %d lbf', (ansi, inches, pounds) => {
    const size = chainSizeOf(sizeOf[ansi])
    expect(size.pitchInches).toBeCloseTo(inches, 12)
    // 1 %: ISO 606 rounds the same strength to three digits of kilonewtons.
    expect(Math.abs(size.minTensile / (pounds * poundForce) - 1)).toBeLessThan(0.01)
  })
})

describe('power rating of 17 teeth', () => {
  const cases = ratings.flatMap(([rpm, row]) =>
    Object.entries(row).map(([ansi, power]) => [rpm, Number(ansi) as Ansi, power] as const),
  )

  it.each(cases)('at %d rpm, chain %d: %d hp', (rpm, ansi, power) => {
    const stage = stagePartOf({
      kind: 'chain',
      driverTeeth: 17,
      drivenTeeth: 34,
      size: sizeOf[ansi],
      strands: 1,
      efficiencyPercent: 100,
      drivenInertiaGcm2: 0,
    })
    if (stage.kind !== 'chain') throw new Error('not a chain')
    const found = chainPowerRating(stage, (rpm * 2 * Math.PI) / 60) / horsepower
    // Half of the last digit printed, and 1 %: the book says that it interpolated part of the table linearly.
    const lastDigit = power >= 10 ? 0.1 : 0.01
    expect(Math.abs(found - power)).toBeLessThanOrEqual(lastDigit / 2 + 0.01 * power)
  })

  it('a smaller driven wheel is the one that counts', () => {
    const common = {
      kind: 'chain',
      size: '08A',
      strands: 1,
      efficiencyPercent: 100,
      drivenInertiaGcm2: 0,
    } as const
    const [down, up] = [
      stagePartOf({ ...common, driverTeeth: 17, drivenTeeth: 34 }),
      stagePartOf({ ...common, driverTeeth: 34, drivenTeeth: 17 }),
    ]
    if (down.kind !== 'chain' || up.kind !== 'chain') throw new Error('not a chain')
    // 1e-12: the same closed form, reached from either side.
    expect(chainPowerRating(up, 50) / chainPowerRating(down, 100)).toBeCloseTo(1, 12)
  })
})

/** *Source:* the same, table 17-23. From memory. */
it.each([
  [1, 1],
  [2, 1.7],
  [3, 2.5],
  [4, 3.3],
])('%d strands carry %d times', (strands, factor) => {
  expect(strandFactor(strands)).toBe(factor)
})
