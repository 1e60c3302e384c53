import { expect, it } from 'vitest'
import { voltsLeft } from '../../../shared-engine/pack/step-down.ts'

const supply = { volts: 5, peakAmps: 3, outputResistance: 0.12 }

it('a supply below its peak loses what its leads take: 5 V − 2 A · 0.12 Ω', () => {
  expect(voltsLeft(supply, 2)).toBeCloseTo(4.76, 12)
})

it('above it, it passes no more, and the volts fall with what is missing: 5 · 3/5 − 3 · 0.12', () => {
  expect(voltsLeft(supply, 5)).toBeCloseTo(2.64, 12)
})

it('joins both without a step', () => {
  expect(voltsLeft(supply, 3)).toBeCloseTo(voltsLeft(supply, 3 + 1e-12), 9)
})
