import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { dutyCase } from '../../../shared-engine/cases/stage-duty.ts'
import { setTrackLoad, TrackLoad } from '../../../shared-engine/cases/track-loads.ts'
import {
  allowedTrackQuantity,
  throttleAtLimit,
  trackLoadAtThrottle,
  trackLoadOverThrottle,
} from '../../../shared-engine/cases/throttle-curve.ts'
import { fullBuild, plainBuild } from '../../fixtures/build/plain.ts'
import { evaluationOf, machineOfStored } from '../../fixtures/build/machine.ts'
import { machines } from '../../laws/machines.ts'

const full = fullBuild()
const machine = machineOfStored(full)
const e = evaluationOf(machine)

describe('load cases', () => {
  it('launch: motor torque of a jam through ratios alone, over radius and loops', () => {
    const { launchDrive: drive, launchTorque, launchLoad } = e
    expect(drive.volts).toBe(machine.pack.fullVolts)
    expect(launchTorque).toBeCloseTo(drive.torqueConstant * (100 - drive.noLoadBase), 12)
    // 2 motors, 3 · 2 · 2 · 1.5 = 18 to 1, no efficiency; 14 teeth of 30 mm; 2 loops
    expect(launchLoad.force).toBeCloseTo((2 * launchTorque * 18) / ((0.42 / (2 * Math.PI)) * 2), 9)
    expect(launchLoad.beltSpeed).toBe(0)
  })

  it('grip: what the ground takes and the loops’ own drag, where that is less', () => {
    expect(e.gripLoad.force).toBeCloseTo((e.footing.gripThrust + 25) / 2, 9)
    expect(e.gripLoad.force).toBeLessThan(e.launchLoad.force)
  })

  it('top: thrust and drag at the belt speed there', () => {
    expect(e.topLoad.force).toBeCloseTo((e.top.thrust + 25 + 4 * e.top.beltSpeed) / 2, 9)
  })

  it('free: drag alone at the worst free speed', () => {
    const beltSpeed = (e.worstFreeSpeed * (0.42 / (2 * Math.PI))) / 18
    expect(e.freeLoad.beltSpeed).toBeCloseTo(beltSpeed, 9)
    expect(e.freeLoad.force).toBeCloseTo((25 + 4 * beltSpeed) / 2, 9)
  })

  it('tension: a sprung tensioner keeps the slack side at its pretension, beside the loop’s own mass', () => {
    expect(machine.track.hold.tensioner).toBe('sprung')
    const { force, beltSpeed, tension } = e.topLoad
    expect(tension).toBeCloseTo(1.8 * force + 80 + 1.8 * beltSpeed ** 2, 9)
  })

  it('tension: a fixed one lets the slack side lose what the tight side gains', () => {
    const span = 300 // mm, of a loop of 80 · 30 mm
    const { loopMaterial: _loopMaterial, ...rest } = full.track // at the temperature of its assembly
    const track = { ...rest, tensioner: 'fixed', tightSpanMm: span, pretensionN: 400 } as const
    const { topLoad, launchLoad } = evaluationOf(machineOfStored({ ...full, track }))
    for (const { force, beltSpeed, tension } of [topLoad, launchLoad]) {
      const pull = 1.8 * force
      const slack = Math.max(1.8 * beltSpeed ** 2, 400 - (span / 2400) * pull)
      expect(tension).toBeCloseTo(pull + slack, 9)
    }
  })

  it('the worst of them are what is shown', () => {
    fc.assert(
      fc.property(machines, (any) => {
        const each = evaluationOf(any)
        const most = (values: number[]) => Math.max(...values.filter((value) => !Number.isNaN(value)))
        const loads = each.trackLoads.slice(0, 4) // launch, grip, top, free: stops are figures of their own
        expect(each.toothForce).toBe(most(loads.map((load) => load.toothForce)))
        expect(each.loopTension).toBe(most(loads.map((load) => load.tension)))
      }),
      { numRuns: 150 },
    )
  })
})

describe('rows that carry nothing', () => {
  const loadOf = (force: number) => {
    const load = new TrackLoad()
    setTrackLoad(load, machine, force, 0)
    return load
  }

  it('have no force and climb by nothing', () => {
    expect(loadOf(0)).toMatchObject({ toothForce: 0, climb: 0, tension: 80 })
  })

  it('of a case that does not arise do not exist', () => {
    expect(loadOf(NaN)).toMatchObject({ toothForce: NaN, climb: NaN, tension: NaN })
  })
})

describe('loads over the throttle', () => {
  it('at the cap are the cases’ own where no part throttle pulls harder', () => {
    const cap = machine.controller.throttleCap
    expect(trackLoadAtThrottle(machine, 'launch', cap)?.force).toBeCloseTo(e.launchLoad.force, 9)
    expect(trackLoadAtThrottle(machine, 'grip', cap)?.toothForce).toBeCloseTo(e.gripLoad.toothForce, 9)
    // 1e-6: the equilibrium
    const top = trackLoadAtThrottle(machine, 'top', cap)
    expect(Math.abs((top?.tension ?? NaN) / e.topLoad.tension - 1)).toBeLessThan(1e-6)
  })

  it('start from nothing and have no top speed there', () => {
    expect(trackLoadAtThrottle(machine, 'launch', 0)?.force).toBe(0)
    expect(trackLoadAtThrottle(machine, 'top', 0)).toBeNull()
    expect(trackLoadOverThrottle(machine, 'launch', 11)).toHaveLength(11)
  })

  it('meet a limit at the throttle told', () => {
    let met = 0
    fc.assert(
      fc.property(machines, (any) => {
        for (const quantity of ['shear', 'bending', 'bearing', 'tension'] as const) {
          const throttle = throttleAtLimit(any, 'launch', quantity)
          const allowed = allowedTrackQuantity(any, quantity)
          if (allowed === null) expect(throttle).toBeNull()
          if (throttle === null || throttle === 0 || allowed === null) continue
          met += 1
          const found = trackLoadAtThrottle(any, 'launch', throttle)?.[quantity] ?? NaN
          // 1e-6: a bracketed root on a steep curve
          expect(Math.abs(found / allowed - 1)).toBeLessThan(1e-6)
        }
      }),
      { numRuns: 100 },
    )
    expect(met).toBeGreaterThan(10)
  })

  it('are null for what a build does not say', () => {
    const plain = machineOfStored(plainBuild())
    expect(allowedTrackQuantity(plain, 'shear')).toBeNull()
    expect(allowedTrackQuantity(plain, 'tension')).toBeNull()
    expect(allowedTrackQuantity(plain, 'climb')).toBe(1)
    expect(throttleAtLimit(plain, 'launch', 'shear')).toBeNull()
  })
})

describe('what a reduction bears', () => {
  it('in a jam: service factor and ratios before it, every efficiency 1', () => {
    const torques = e.stageDuties
      .slice(0, 4)
      .map(({ into }) => (into[dutyCase.launch] ?? NaN) / (1.8 * e.launchTorque))
    expect(torques.map((torque) => Math.round(torque * 1e9) / 1e9)).toEqual([1, 3, 6, 12])
  })

  it('at top speed: efficiencies before it too, and speeds divided', () => {
    const { top, stageDuties } = e
    const [first, second, third] = stageDuties
    expect(first?.into[dutyCase.top]).toBeCloseTo(1.8 * top.motorTorque, 9)
    expect(second?.into[dutyCase.top]).toBeCloseTo(1.8 * top.motorTorque * 3 * 0.96, 9)
    expect(third?.into[dutyCase.top]).toBeCloseTo(1.8 * top.motorTorque * 6 * 0.96 * 0.97, 9)
    expect(third?.topSpeed).toBeCloseTo(top.motorSpeed / 6, 9)
  })

  it('its driven shaft carries the torque into the next', () => {
    const [first, second] = e.stageDuties
    // 1e-12: as every case's, whatever its order of products
    for (const place of Object.values(dutyCase)) {
      const [out, into] = [first?.out[place] ?? NaN, second?.into[place] ?? NaN]
      if (!Number.isNaN(into)) expect(Math.abs(out / into - 1)).toBeLessThan(1e-12)
    }
  })
})

describe('climbing out of mesh', () => {
  const flanked = machineOfStored({
    ...full,
    track: {
      ...full.track,
      pretensionN: 0,
      loopStiffnessN: 50_000,
      tooth: {
        heightMm: 12,
        rootMm: 14,
        widthMm: 40,
        material: 'pu-90a-cast',
        flankDegrees: 30,
        flankFriction: 0,
      },
    },
  })

  it('without pretension is 2 · tan β · z/2π at any load, in every case alike', () => {
    const each = evaluationOf(flanked)
    // the last row: f/(f/2) = 2
    for (const load of [each.launchLoad, each.gripLoad, each.topLoad])
      expect(load.climb).toBeCloseTo((Math.tan(Math.PI / 6) * 14) / Math.PI, 12)
  })
})
