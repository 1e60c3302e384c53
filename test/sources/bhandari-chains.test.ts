import { describe, expect, it } from 'vitest'
import { stagePartOf } from '../../shared-engine/machine/stage.ts'
import { chainWheelRadius } from '../../shared-engine/stages/chain/geometry.ts'
import { chainFitOf, chainTension } from '../../shared-engine/stages/chain/physics.ts'

// *Source:* V. B. Bhandari, *Design of Machine Elements*, chapter 14, examples 14.3, 14.4 and 14.7, with the results
// printed in the open Scilab textbook companion of that book.

const pitches = { '08A': 0.0127, '10B': 0.015875, '12B': 0.01905 } as const

describe('example 14.4: 17 and 34 teeth, chain 12B of 19.05 mm, centres 40 pitches apart', () => {
  const pitch = pitches['12B']

  it('wheels of 103.67 and 206.46 mm', () => {
    // 1e-8: the companion prints nine figures
    expect(Math.abs((2000 * chainWheelRadius(pitch, 17)) / 103.673741 - 1)).toBeLessThan(1e-8)
    expect(Math.abs((2000 * chainWheelRadius(pitch, 34)) / 206.462975 - 1)).toBeLessThan(1e-8)
  })

  it('105.683 links, so 106, which want 763.496 mm with 0.2 % of sag', () => {
    const fit = chainFitOf({ pitch, driverTeeth: 17, drivenTeeth: 34, centre: 40 * pitch })
    // 1e-8: as above
    expect(Math.abs((fit?.exactLinks ?? NaN) / 105.683011 - 1)).toBeLessThan(1e-8)
    expect(fit?.links).toBe(106)
    expect(Math.abs((0.998 * 1000 * (fit?.centre ?? NaN)) / 763.49616 - 1)).toBeLessThan(1e-8)
  })
})

describe('example 14.3: 21 and 63 teeth, chain 8A of 12.7 mm, centres 500 mm apart', () => {
  const wheels = { pitch: pitches['08A'], driverTeeth: 21, drivenTeeth: 63, centre: 0.5 }

  it('121.875 links, so 122, which want 500.805 mm', () => {
    const fit = chainFitOf(wheels)
    expect(Math.abs((fit?.exactLinks ?? NaN) / 121.875097 - 1)).toBeLessThan(1e-8)
    expect(fit?.links).toBe(122)
    expect(Math.abs((1000 * (fit?.centre ?? NaN)) / 500.804717 - 1)).toBeLessThan(1e-8)
  })

  it('the same with the wheels changed over', () => {
    const turned = chainFitOf({ ...wheels, driverTeeth: 63, drivenTeeth: 21 })
    expect(turned).toEqual(chainFitOf(wheels))
  })

  it('no fit without a centre distance', () => {
    expect(chainFitOf({ ...wheels, centre: null })).toBeNull()
  })
})

describe('example 14.7: 12.9537 kW at 1400 rpm into 19 teeth, chain 10B of 15.875 mm', () => {
  const stage = stagePartOf({
    kind: 'chain',
    driverTeeth: 19,
    drivenTeeth: 76,
    size: '10B',
    strands: 1,
    efficiencyPercent: 100,
    drivenInertiaGcm2: 0,
  })
  if (stage.kind !== 'chain') throw new Error('not a chain')
  const speed = (1400 * 2 * Math.PI) / 60

  it('pulls with 1840.6 N', () => {
    // 0.5 %: the book divides by teeth × pitch × turns, which is 0.46 % less than the pitch circle's speed at 19 teeth
    expect(Math.abs(chainTension(stage, 12_953.7 / speed, 0) / 1840.56 - 1)).toBeLessThan(0.005)
  })

  it('and with m v² more while it runs: 0.95 kg/m at 7.07 m/s, 47.5 N', () => {
    // by hand: v = ω r = 146.608 · 0.0482247 = 7.0701 m/s; 0.1 %: three figures
    const torque = 12_953.7 / speed
    const more = chainTension(stage, torque, speed) - chainTension(stage, torque, 0)
    expect(Math.abs(more / 47.49 - 1)).toBeLessThan(1e-3)
  })

  it('two strands weigh twice as much', () => {
    const twin = stagePartOf({
      kind: 'chain',
      driverTeeth: 19,
      drivenTeeth: 76,
      size: '10B',
      strands: 2,
      efficiencyPercent: 100,
      drivenInertiaGcm2: 0,
    })
    if (twin.kind !== 'chain') throw new Error('not a chain')
    // 1e-12: closed form
    expect(chainTension(twin, 0, speed) / chainTension(stage, 0, speed)).toBeCloseTo(2, 12)
  })
})
