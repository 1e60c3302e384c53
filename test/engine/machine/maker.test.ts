import fc from 'fast-check'
import { expect, it } from 'vitest'
import { machineOf } from '../../../shared-engine/machine/machine.ts'
import { MachineMaker } from '../../../shared-engine/machine/maker.ts'
import { buildSetter } from '../../../shared-engine/uncertainty/build.ts'
import { builds } from '../../laws/machines.ts'

// Machines of builds that share groups, against the machine of each build made whole.

const paths = [
  'pack.cellResistanceMilliohm',
  'motor.kvRpmPerVolt',
  'track.pitchMm',
  'vehicle.massKg',
  'ground.airTemperatureC',
  'service.packTemperatureC',
  'stages.0.efficiencyPercent',
  'stages.1.drivenInertiaGcm2',
] as const

it('is the machine of the build, whatever changed since the one before', () => {
  const shares = fc.array(fc.constantFrom(0.9, 1, 1.05), { minLength: paths.length, maxLength: paths.length })
  fc.assert(
    fc.property(builds, fc.array(shares, { minLength: 4, maxLength: 4 }), (build, draws) => {
      const here = paths.filter((path) => !path.startsWith('stages') || build.stages.length > Number(path[7]))
      const put = buildSetter(build, here)
      const maker = new MachineMaker()
      for (const draw of draws) {
        const drawn = put(Float64Array.from(draw, (share, at) => share * (10 + at)))
        expect(maker.of(drawn)).toEqual(machineOf(drawn))
      }
    }),
    { numRuns: 40 },
  )
})

it('keeps the very parts whose groups are the same', () => {
  fc.assert(
    fc.property(builds, (build) => {
      const maker = new MachineMaker()
      const before = maker.of(build)
      const after = maker.of({ ...build, vehicle: { ...build.vehicle } })
      expect(after.vehicle).not.toBe(before.vehicle)
      for (const part of ['pack', 'motor', 'stages', 'train', 'track', 'ground', 'service'] as const)
        expect(after[part]).toBe(before[part])
    }),
    { numRuns: 10 },
  )
})
