import { describe, expect, it } from 'vitest'
import { fieldPatterns, fieldOf } from '../../../shared-engine/entries/fields.ts'
import { buildRows } from '../../../shared-engine/entries/parts/build.ts'
import { siOf } from '../../../shared-engine/machine/si.ts'
import { benchFactor, toEngine } from '../../../shared-engine/units/convert.ts'

/** Prefixes of ISO 80000-1 and the definitions of litre, minute and degree; `rpm`, `rpm/V` and °C stay as they are. */
const expected: Readonly<Record<string, number>> = {
  'pack.cellResistanceMilliohm': 1e-3,
  'pack.capacityMah': 3.6,
  'controller.pwmKhz': 1e3,
  'controller.busCapacitanceMicrofarad': 1e-6,
  'controller.throttleCapPercent': 1e-2,
  'motor.kvRpmPerVolt': 1,
  'motor.rotorInertiaGcm2': 1e-7,
  'track.pitchMm': 1e-3,
  'track.massGPerM': 1e-3,
  'track.wrapDegrees': Math.PI / 180,
  'track.tooth.shearStrengthMpa': 1e6,
  'vehicle.massKg': 1,
  'vehicle.frontalAreaM2': 1,
  'ground.airTemperatureC': 1,
  'ground.soil.kc': 1e3,
  'ground.soil.kphi': 1e3,
  'ground.soil.cohesionKpa': 1e3,
  'cooling.flowLPerMin': 1e-3 / 60,
}

describe('bench units cross to SI', () => {
  it.each(Object.entries(expected))('%s by %d', (path, factor) => {
    const kind = fieldOf(path)?.kind ?? 'none'
    expect(benchFactor(kind)).toBe(factor)
  })

  it('as what a person types does, but for the last digit', () => {
    const kinds = new Set(fieldPatterns.map((pattern) => fieldOf(pattern)?.kind ?? 'none'))
    expect(kinds.size).toBeGreaterThan(25)
    // one rounding more than in toEngine, which divides where a unit is a part of SI's: two halves of 2^-52
    for (const kind of kinds)
      expect(Math.abs((7 * benchFactor(kind)) / toEngine(7, kind) - 1)).toBeLessThanOrEqual(2 ** -52)
  })

  it('entry by entry, by their rows; what is not entered is null', () => {
    const si = siOf(buildRows.controller.entries)({
      resistanceMilliohm: 4,
      throttleCapPercent: 50,
      burstAmps: 90,
    })
    expect(
      ['resistanceMilliohm', 'throttleCapPercent', 'burstAmps', 'pwmKhz'].map((key) => si(key as 'pwmKhz')),
    ).toEqual([0.004, 0.5, 90, null])
  })
})
