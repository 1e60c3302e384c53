import { expect, it } from 'vitest'
import { horsepower } from '../../shared-engine/constants.ts'
import { angularSpeedOf } from '../../shared-engine/units/rpm.ts'
import { toothBearing, toothShear } from '../../shared-engine/track/teeth.ts'
import { plainBuild } from '../fixtures/build/plain.ts'
import { machineOfStored } from '../fixtures/build/machine.ts'

// A key in a shaft is a drive tooth: sheared over its width, pressed over half of its height.
// *Source:* Budynas and Nisbett, *Shigley's Mechanical Engineering Design*, example 7-6: 40 hp at 600 rpm through a shaft of
// 1 7/16 in, a square key of 3/8 in, steel of 65 kpsi yield and 37.5 kpsi in shear, safety 2.8: 5850 lbf, a length of 1.16 in
// by shear, 1.34 in by crushing. From memory.

const inch = 25.4
const poundForce = 4.4482216152605
const kpsi = 6.894757293168e6

/** That key of a length in inches as the drive tooth of a loop: its root is the key's width, the flank half of its height. */
function keyOf(length: number) {
  const plain = plainBuild()
  const { tooth } = machineOfStored({
    ...plain,
    track: {
      ...plain.track,
      tooth: {
        heightMm: (0.375 / 2) * inch,
        rootMm: 0.375 * inch,
        widthMm: length * inch,
        loadHeightMm: (0.375 / 4) * inch,
        material: 'steel-c45',
      },
    },
  }).track
  if (tooth === null) throw new Error('no tooth')
  return tooth
}

const force = 5850 * poundForce

it('carries 40 hp at 600 rpm with 5850 lbf at the surface of its shaft', () => {
  const torque = (40 * horsepower) / angularSpeedOf(600)
  // 0.2 %: three figures
  expect(Math.abs(torque / ((1.4375 / 2) * 0.0254) / force - 1)).toBeLessThan(2e-3)
})

it('shears at 37.5 kpsi over 2.8 with a length of 1.16 in', () => {
  // 0.5 %: the length is printed to three figures
  expect(Math.abs(toothShear(keyOf(1.16), force) / ((37.5 * kpsi) / 2.8) - 1)).toBeLessThan(5e-3)
})

it('is crushed at 65 kpsi over 2.8 with a length of 1.34 in', () => {
  // 0.5 %: as above
  expect(Math.abs(toothBearing(keyOf(1.34), force) / ((65 * kpsi) / 2.8) - 1)).toBeLessThan(5e-3)
})
