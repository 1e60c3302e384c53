import { describe, expect, it } from 'vitest'
import { combined } from '../../shared-engine/measure/combine.ts'
import { rounded } from '../../shared-engine/measure/shown.ts'
import { lineFit, linearFit } from '../../shared-engine/numeric/linear-fit.ts'
import { betaShare, studentFactor } from '../../shared-engine/numeric/student.ts'

// ISO/IEC Guide 98-3 (JCGM 100:2008), the GUM. Results as printed; the readings of H.3 were written down from memory, and
// a slip would show as a disagreement with the printed results.

describe('H.3, calibration of a thermometer', () => {
  const celsius = [21.521, 22.012, 22.512, 23.003, 23.507, 23.999, 24.513, 25.002, 25.503, 26.01, 26.511]
  const correction = [-0.171, -0.169, -0.166, -0.159, -0.164, -0.165, -0.156, -0.157, -0.159, -0.161, -0.16]
  const { coefficients, covariance, freedom, residuals } = lineFit(
    celsius.map((t) => t - 20),
    correction,
  )
  const at = (row: number, column: number) => covariance[row]?.[column] ?? NaN

  it('gives intercept, slope, their standard uncertainties and correlation', () => {
    expect(coefficients[0]).toBeCloseTo(-0.1712, 4)
    expect(coefficients[1]).toBeCloseTo(0.00218, 5)
    expect(Math.sqrt(at(0, 0))).toBeCloseTo(0.0029, 4)
    expect(Math.sqrt(at(1, 1))).toBeCloseTo(0.00067, 5)
    expect(at(0, 1) / Math.sqrt(at(0, 0) * at(1, 1))).toBeCloseTo(-0.93, 3)
    expect(freedom).toBe(9)
    expect(Math.sqrt(residuals.reduce((sum, r) => sum + r * r, 0) / freedom)).toBeCloseTo(0.0035, 4)
  })

  it('predicts the correction at 30 °C', () => {
    const predicted = (coefficients[0] ?? NaN) + 10 * (coefficients[1] ?? NaN)
    expect(predicted).toBeCloseTo(-0.1494, 4)
    expect(Math.sqrt(at(0, 0) + 100 * at(1, 1) + 20 * at(0, 1))).toBeCloseTo(0.0041, 4)
  })
})

it('H.1, end gauge: parts of 25, 9.7, 2.9 and 16.6 nm give 32 nm with 16.7 degrees of freedom, U99 93 nm', () => {
  const parts = [
    [25, 18],
    [9.7, 25.6],
    [2.9, 50],
    [16.6, 2],
  ].map(([standardUncertainty = NaN, degreesOfFreedom = NaN]) => ({ standardUncertainty, degreesOfFreedom }))
  const { standardUncertainty, degreesOfFreedom } = combined(parts)
  expect(Math.round(standardUncertainty)).toBe(32)
  // Parts are put in as printed, two digits each: 0.1 of what is printed.
  expect(Math.abs((degreesOfFreedom ?? NaN) - 16.7)).toBeLessThan(0.1)
  // t of 99 % at 16 degrees of freedom is printed as 2.92: what lies outside is 1 %.
  const outside = betaShare(16 / (16 + 2.92 ** 2), 8, 0.5)
  expect(outside).toBeCloseTo(0.01, 4)
  expect(Math.round(2.92 * Math.round(standardUncertainty))).toBe(93)
})

it.each([
  [1, 13.97],
  [2, 4.53],
  [3, 3.31],
  [5, 2.65],
  [10, 2.28],
  [20, 2.13],
  [50, 2.05],
  [Infinity, 2],
])('table G.2: factor of 95.45 %% at %d degrees of freedom is %d', (freedom, factor) => {
  expect(studentFactor(freedom)).toBeCloseTo(factor, 2)
})

it('H.2: resistance, reactance and impedance from five sets of volts, amps and phase', () => {
  const volts = [5.007, 4.994, 5.005, 4.99, 4.999]
  const milliamps = [19.663, 19.639, 19.64, 19.685, 19.678]
  const phase = [1.0456, 1.0438, 1.0468, 1.0428, 1.0433]
  const ohms = volts.map((one, at) => (1000 * one) / (milliamps[at] ?? NaN))
  const printed = [
    [ohms.map((z, at) => z * Math.cos(phase[at] ?? NaN)), 127.732, 0.071],
    [ohms.map((z, at) => z * Math.sin(phase[at] ?? NaN)), 219.847, 0.295],
    [ohms, 254.26, 0.236],
  ] as const
  for (const [set, value, uncertainty] of printed) {
    // One coefficient alone, the mean, by the same fit that everything else goes by.
    const { coefficients, covariance } = linearFit([set.map(() => 1)], set)
    expect(coefficients[0]).toBeCloseTo(value, 2)
    expect(Math.sqrt(covariance[0]?.[0] ?? NaN)).toBeCloseTo(uncertainty, 3)
  }
})

it('7.2.6: a value is shown to the place of two digits of its uncertainty', () => {
  expect(rounded(10.05762, 0.027)).toEqual({ value: '10.058', plusMinus: '0.027' })
  expect(rounded(-1234.5, 123)).toEqual({ value: '−1230', plusMinus: '120' })
  expect(rounded(146.228, 1.1751)).toEqual({ value: '146.2', plusMinus: '1.2' })
  expect(rounded(0.0996, 0.0996)).toEqual({ value: '0.10', plusMinus: '0.10' })
})
