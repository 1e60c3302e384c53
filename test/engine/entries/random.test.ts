import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { completeBuild, readStoredBuildValue } from '../../../shared-engine/entries/read.ts'
import { anyBuild } from '../../fixtures/build/any.ts'
import { plausibleBuild } from '../../fixtures/build/random.ts'

describe('random builds for other tests', () => {
  it('are valid', () => {
    fc.assert(fc.property(anyBuild, (build) => readStoredBuildValue(build).ok))
  })

  it('reach every kind', () => {
    const builds = fc.sample(plausibleBuild, { numRuns: 300, seed: 1 }).map(completeBuild)
    const reached = new Set(
      builds.flatMap((build) => [
        build.pack.chemistry,
        build.motor.magnet,
        build.ground.model,
        ...build.stages.map((stage) => stage.kind),
        ...(build.cooling === undefined ? ['air'] : [build.cooling.coolant]),
        `${build.motor.count} motors`,
        `${build.track.count} loops`,
        build.track.loopStiffnessN !== undefined && build.track.tooth !== undefined ? 'stiffness' : 'share',
        build.track.tooth?.material === 'custom' ? 'custom' : 'table',
        build.controller.currentLimitAmps === undefined ? 'no limit' : 'limit',
      ]),
    )
    const kinds =
      'lipo lihv liion lifepo4 ndfeb smco ferrite ignore coefficient soil gear belt chain fixed air water'
    const more = 'glycol30 glycol50 stiffness share custom table limit'
    expect([...reached]).toEqual(
      expect.arrayContaining([...kinds.split(' '), ...more.split(' '), 'no limit']),
    )
    for (const count of [1, 2, 3, 4])
      expect([...reached]).toEqual(expect.arrayContaining([`${count} motors`, `${count} loops`]))
  })
})
