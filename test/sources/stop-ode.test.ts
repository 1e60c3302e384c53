import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { DriveLine } from '../../shared-engine/motor/drive-line.ts'
import { Braking, brakeAmpsAt, decelerationAt } from '../../shared-engine/vehicle/braking.ts'
import { setStop, Stop } from '../../shared-engine/vehicle/stop.ts'
import { ThrustLine } from '../../shared-engine/vehicle/thrust-line.ts'
import { integrate } from '../../shared-engine/numeric/quadrature.ts'
import { solvedByOdex } from '../engine/numeric/odex.ts'

// *Source:* Newton's second law m dv/dt = −(brakes + resistance) followed through time by odex, a port of Hairer and Wanner's
// extrapolation code; energy by an adaptive Gauss-Kronrod rule over the same integrand.

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true })

interface Case {
  readonly mass: number
  readonly spinning: number
  readonly grip: number
  readonly standing: number
  readonly air: number
  readonly drag: number
  readonly dragSlope: number
  readonly shorted: number
  readonly most: number
  readonly wheel: number
  readonly from: number
}
const cases: fc.Arbitrary<Case> = fc.record({
  mass: number(2, 200),
  spinning: number(0.1, 50),
  grip: number(5, 800),
  standing: number(1, 100),
  air: number(0, 2),
  drag: number(0, 60),
  dragSlope: number(0, 20),
  shorted: number(1, 5000),
  most: fc.oneof(fc.constant(0), number(1, 400)),
  wheel: fc.oneof(fc.constant(0), number(1, 300)),
  from: number(0.2, 20),
})

/** Ampere, speed and force are told apart by unit factors here: 1 N·m/A, 1 rad/m, 1 N/A. */
function partsOf(one: Case): { braking: Braking; drive: DriveLine; line: ThrustLine } {
  const braking = new Braking()
  Object.assign(braking, {
    mass: one.mass,
    equivalentMass: one.mass + one.spinning,
    grip: one.grip,
    standing: one.standing,
    airDragFactor: one.air,
    drag: one.drag,
    dragSlope: one.dragSlope,
    shorted: one.shorted,
    most: one.most,
    wheel: one.wheel,
    perAmp: 1,
  })
  const drive = new DriveLine()
  drive.torqueConstant = 1
  drive.seriesResistance = 1 / one.shorted
  const line = new ThrustLine()
  line.motorPerBelt = 1
  return { braking, drive, line }
}

/** Deceleration, written from its definition. */
function decelerationOf(one: Case, speed: number): number {
  const resistance = one.standing + one.air * speed ** 2
  const motors = Math.min(one.most, one.shorted * speed)
  const back = motors + one.drag + one.dragSlope * speed + one.wheel
  return Math.min((back + resistance) / (one.mass + one.spinning), (one.grip + resistance) / one.mass)
}

/** Cases down a slope, whose pull the brakes have to hold with it. */
const downhill = fc
  .tuple(cases, number(0, 1))
  .map(([one, share]): Case => ({
    ...one,
    standing: -share * Math.min(0.9 * one.grip, one.drag + one.wheel),
  }))
  // A tenth of a metre per second squared at the least: slower than that it hardly stops at all.
  .filter((one) => decelerationOf(one, 0) > 0.1)

describe.each([
  ['on the level', cases],
  ['down a slope', downhill],
])('a stop %s', (_way, drawn) => {
  it('takes the time and the way that the equation of motion gives', () => {
    fc.assert(
      fc.property(drawn, (one) => {
        const { braking, drive, line } = partsOf(one)
        const stop = new Stop()
        setStop(stop, braking, drive, line, one.from)
        // Time and way over speed, in place of speed over time: no kink has to be hit by a step.
        const marks = Array.from({ length: 41 }, (_, index) => (one.from * index) / 40)
        let [seconds, metres] = [0, 0]
        for (let index = 1; index < marks.length; index += 1) {
          const slopes = (speed: number) => [
            1 / decelerationOf(one, speed),
            speed / decelerationOf(one, speed),
          ]
          const start = [seconds, metres]
          ;[seconds = NaN, metres = NaN] = solvedByOdex(
            slopes,
            marks[index - 1] ?? 0,
            start,
            marks[index] ?? 0,
            1e-10,
          )
        }
        // 1e-6: what is owed of integrals.
        expect(Math.abs(stop.seconds / seconds - 1)).toBeLessThan(1e-6)
        expect(Math.abs(stop.metres / metres - 1)).toBeLessThan(1e-6)
      }),
      { numRuns: 60, seed: 4 },
    )
  })

  it('brings back what its motors feed, less what their resistance takes', () => {
    fc.assert(
      fc.property(drawn, (one) => {
        const { braking, drive, line } = partsOf(one)
        const stop = new Stop()
        setStop(stop, braking, drive, line, one.from)
        const power = (speed: number) => {
          const amps = brakeAmpsAt(braking, speed)
          return (amps * (speed - amps / one.shorted)) / decelerationAt(braking, speed)
        }
        const steps = Array.from({ length: 400 }, (_, index) => (one.from * (index + 1)) / 400)
        const { value } = integrate(power, 0, one.from, { kinks: steps, relative: 1e-9, mostIntervals: 4000 })
        // 1e-6 of it, and of the motion's energy where hardly anything comes back.
        const scale = 0.5 * one.mass * one.from ** 2
        expect(Math.abs(stop.energyBack - value)).toBeLessThan(1e-6 * (value + scale))
        // No more than the motion had, and down a slope what the way down gave with it.
        const motion = 0.5 * (one.mass + one.spinning) * one.from ** 2
        const given = motion + Math.max(0, -one.standing) * stop.metres
        expect(stop.energyBack).toBeLessThanOrEqual(given * (1 + 1e-9))
      }),
      { numRuns: 60, seed: 6 },
    )
  })
})

describe('a stop', () => {
  it('with one steady force is that of textbooks: v²/2a and v/a', () => {
    const { braking, drive, line } = partsOf({
      mass: 10,
      spinning: 0.0001,
      grip: 1e6,
      standing: 0,
      air: 0,
      drag: 0,
      dragSlope: 0,
      shorted: 1,
      most: 0,
      wheel: 20,
      from: 6,
    })
    braking.equivalentMass = 10
    const stop = new Stop()
    setStop(stop, braking, drive, line, 6)
    expect(stop.metres).toBeCloseTo(9, 12)
    expect(stop.seconds).toBeCloseTo(3, 12)
    expect(stop.energyBack).toBe(0)
  })
})
