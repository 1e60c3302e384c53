import { describe, expect, it } from 'vitest'
import { stagePartOf } from '../../shared-engine/machine/stage.ts'
import { dynamicFactor, lewisFormFactor } from '../../shared-engine/reference/gears.ts'
import { lewisStress, stageDynamicFactor, tangentialForce } from '../../shared-engine/stages/gear/physics.ts'

// *Source:* Budynas and Nisbett, *Shigley's Mechanical Engineering Design*, chapter 14. From memory.

describe('Lewis form factor', () => {
  it('52 teeth between the rows of 50 and 60, as in example 14-4: 0.412', () => {
    // 0.0005: the example rounds to three digits.
    expect(Math.abs(lewisFormFactor(52) - 0.412)).toBeLessThan(0.0005)
  })
})

describe('dynamic factor', () => {
  // Source: eqs. 14-4a, 14-4b, 14-5a, 14-5b, the same four in feet per minute: 600, 1200, 50, 78.
  const feetPerMinute = 0.3048 / 60
  const inFeet = {
    cast: (speed: number) => (600 + speed) / 600,
    milled: (speed: number) => (1200 + speed) / 1200,
    hobbed: (speed: number) => (50 + Math.sqrt(speed)) / 50,
    ground: (speed: number) => Math.sqrt((78 + Math.sqrt(speed)) / 78),
  }

  it.each(['cast', 'milled', 'hobbed', 'ground'] as const)(
    '%s: metric and customary forms agree',
    (finish) => {
      for (const speed of [0, 100, 628, 2000]) {
        // 0.5 %: the metric constants of the book are rounded to three digits.
        const ratio = dynamicFactor(finish, speed * feetPerMinute) / inFeet[finish](speed)
        expect(Math.abs(ratio - 1)).toBeLessThan(0.005)
      }
    },
  )
})

describe('example 14-1', () => {
  // 8 teeth per inch, face 1.5 in, 16 teeth, 20°, milled, 1200 rpm; 10 kpsi allowed: W_t = 365 lbf, 6.95 hp. From memory.
  const inch = 0.0254
  const stage = stagePartOf({
    kind: 'gear',
    driverTeeth: 16,
    drivenTeeth: 64,
    moduleMm: 25.4 / 8,
    faceWidthMm: 1.5 * 25.4,
    driverMaterial: 'steel-c45',
    drivenMaterial: 'steel-c45',
    pressureAngleDegrees: 20,
    finish: 'milled',
    efficiencyPercent: 100,
    drivenInertiaGcm2: 0,
    driverShift: 0,
    drivenShift: 0,
  })
  if (stage.kind !== 'gear') throw new Error('not a gear')
  const speed = (1200 * 2 * Math.PI) / 60
  const poundForce = 4.4482216152605
  const horsepower = 745.699872

  it('a velocity factor of 1.52', () => {
    // 0.005: the example rounds to three digits.
    expect(Math.abs(stageDynamicFactor(stage, speed) - 1.52)).toBeLessThan(0.005)
  })

  it('a load of 365 lbf stresses the tooth by 10 kpsi', () => {
    const stress = lewisStress(
      365 * poundForce,
      stage.faceWidth,
      stage.module,
      stage.driverForm,
      stageDynamicFactor(stage, speed),
    )
    // 0.5 %: the example rounds its factors to three digits.
    expect(Math.abs(stress / ((10_000 * poundForce) / inch ** 2) - 1)).toBeLessThan(0.005)
  })

  it('6.95 hp at this speed bring that load', () => {
    const torque = (6.95 * horsepower) / speed
    // 0.5 %: as above.
    expect(Math.abs(tangentialForce(stage, torque) / (365 * poundForce) - 1)).toBeLessThan(0.005)
  })
})
