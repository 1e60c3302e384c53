import fc from 'fast-check'
import { expect, it } from 'vitest'
import { check } from '../../shared-engine/check.ts'
import { completeBuild, readStoredBuildValue } from '../../shared-engine/entries/read.ts'
import { plainBuild } from '../fixtures/build/plain.ts'
import { evenly } from '../fixtures/evenly.ts'

// One toothed belt, judged twice in one machine: as the last reduction, 1 : 1, and as the track on a sprocket of the same
// pitch and teeth. The same pull on the same belt has one verdict. Profile H: 2,100.85 N and 0.448 kg/m at its reference
// width of 76.2 mm, ISO 5295 in its first edition (as in reference/belts.json); builds are invented.

const pullAllowed = 2100.85

const drawn = fc.record({
  teeth: fc.integer({ min: 20, max: 60 }),
  kv: evenly(30, 400),
  ratio: evenly(1, 12),
  mass: evenly(20, 1500),
  grip: evenly(0.2, 1.2),
  factor: evenly(1, 2),
  cap: evenly(20, 100),
})

type Drawn = typeof drawn extends fc.Arbitrary<infer T> ? T : never

/** Nothing is lost between the two: efficiency 1, no drag, a weight that keeps the belt tight by nothing more than its pull. */
function machineWith({ teeth, kv, ratio, mass, grip, factor, cap }: Drawn) {
  const plain = plainBuild()
  const read = readStoredBuildValue({
    ...plain,
    pack: { ...plain.pack, series: 14, capacityMah: 20_000 },
    controller: { throttleCapPercent: cap },
    motor: { ...plain.motor, kvRpmPerVolt: kv, noLoadVolts: 40 },
    stages: [
      { kind: 'fixed', ratio, efficiencyPercent: 100 },
      {
        kind: 'belt',
        profile: 'H',
        driverTeeth: teeth,
        drivenTeeth: teeth,
        widthMm: 76.2,
        centreMm: 500,
        efficiencyPercent: 100,
      },
    ],
    track: {
      pitchMm: 12.7,
      sprocketTeeth: teeth,
      loopPitches: 200,
      massGPerM: 448,
      count: 1,
      tensioner: 'sprung',
      pretensionN: 0,
      workingTensionN: pullAllowed,
      breakingTensionN: 2 * pullAllowed,
    },
    vehicle: { massKg: mass },
    ground: { model: 'coefficient', rollingCoefficient: 0.05, gripCoefficient: grip },
    service: { factor },
  })
  if (!read.ok) throw new Error(JSON.stringify(read.mistakes))
  return check(completeBuild(read.value))
}

it('a belt is judged alike as a track and as a reduction', () => {
  const verdicts = { within: 0, over: 0, alike: 0 }
  fc.assert(
    fc.property(drawn, (one) => {
      const { limits } = machineWith(one)
      const row = (id: string) => {
        const found = limits.find((limit) => limit.id === id)
        if (found === undefined) throw new Error(`${id} is not judged`)
        // none can be formed where the belt's own swing leaves nothing for the drive: over
        return { margin: found.margin ?? -Infinity, case: found.case }
      }
      const [lasts, trackLasts] = [row('stage.2.tension'), row('track.tension-lasts')]
      const [once, trackOnce] = [row('stage.2.peak'), row('track.tension')]
      // the belt's own swing counts on the one side as a pull, on the other as strength that is lost: one threshold
      if (Math.abs(lasts.margin) > 1e-9) expect(trackLasts.margin > 0).toBe(lasts.margin > 0)
      const verdict = Math.min(lasts.margin, once.margin)
      if (Math.abs(verdict) > 1e-9)
        expect(Math.min(trackLasts.margin, trackOnce.margin) > 0).toBe(verdict > 0)
      verdicts[verdict > 0 ? 'within' : 'over'] += 1
      const pairs = [
        [lasts, trackLasts],
        [once, trackOnce],
      ] as const
      for (const [stage, track] of pairs) {
        if (stage.case !== track.case || stage.case === 'top') continue
        verdicts.alike += 1
        expect(track.margin).toBeCloseTo(stage.margin, 9)
      }
    }),
    { numRuns: 60 },
  )
  expect(Math.min(verdicts.within, verdicts.over, verdicts.alike)).toBeGreaterThan(5)
})
