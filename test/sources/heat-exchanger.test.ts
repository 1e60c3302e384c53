import { describe, expect, it } from 'vitest'
import { boilingPoint } from '../../shared-engine/heat/boiling.ts'
import {
  effectiveness,
  inletResistance,
  jacketFactor,
  radiatorConductance,
} from '../../shared-engine/heat/stream.ts'

/**
 * Effectiveness of any exchanger whose other stream does not warm, by transfer units.
 *
 * *Source:* Incropera, *Fundamentals of Heat and Mass Transfer*, table 11.3 and the curve C_r = 0 of figures 11.10 to 11.15,
 * ε = 1 − exp(−NTU); numbers from memory, exponentials from a table of e^−x.
 */
it.each([
  [0.25, 0.2212],
  [0.5, 0.3935],
  [1, 0.6321],
  [2, 0.8647],
  [3, 0.9502],
])('NTU %d: effectiveness %d', (units, share) => {
  expect(effectiveness(units)).toBeCloseTo(share, 4)
})

describe('a wall and its stream', () => {
  it('feels from the inlet as from anywhere where the stream is strong, and as 1/C where it is weak', () => {
    // R′ = R (1 + 1/(2 R C) + …) for a strong stream: half of the stream's own warming on top.
    expect(inletResistance(0.5, 1000) - 0.5).toBeCloseTo(0.5 / 1000, 6)
    // A stream that takes all that the wall has gives up at 1/C.
    expect(inletResistance(0.001, 2)).toBeCloseTo(0.5, 12)
  })
  it('passes what the stream takes up: q = C ε (T_wall − T_in)', () => {
    const [resistance, rate] = [0.4, 3.7]
    expect(1 / inletResistance(resistance, rate)).toBeCloseTo(
      rate * effectiveness(1 / (resistance * rate)),
      12,
    )
  })
  it('cools less at less flow, with the power 0.8 of Dittus and Boelter', () => {
    expect(jacketFactor(2, 1)).toBeCloseTo(1.7411, 4) // 2^0.8
    expect(jacketFactor(2, 3)).toBe(1)
    expect(jacketFactor(null, 0.1)).toBe(1)
  })
})

describe('a radiator', () => {
  it('sheds less than UA, less than what either stream carries', () => {
    const shed = radiatorConductance(14, 25, 180)
    expect(shed).toBeLessThan(14)
    expect(radiatorConductance(1e6, 25, 180)).toBeLessThan(25)
    expect(radiatorConductance(1e6, null, 180)).toBeCloseTo(180, 9)
    expect(radiatorConductance(14, null, 1e9)).toBeCloseTo(14, 6)
  })
})

/**
 * Boiling point of water.
 *
 * *Source:* steam tables (IAPWS-IF97 saturation line), °C at kPa: 50: 81.32, 70: 89.93, 101.325: 99.97; from memory. Antoine's
 * equation with these constants is within 0.1 K there, and within 0.2 K of 120.2 °C at 200 kPa, above its range.
 */
it.each([
  [50_000, 81.32, 0.1],
  [70_000, 89.93, 0.1],
  [101_325, 99.97, 0.1],
  [200_000, 120.21, 0.5],
])('water at %d Pa boils at %d °C', (pressure, celsius, off) => {
  expect(Math.abs(boilingPoint(pressure, 0) - celsius)).toBeLessThan(off)
  expect(boilingPoint(pressure, 4) - boilingPoint(pressure, 0)).toBeCloseTo(4, 12)
})
