import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  ladderStiffness,
  stopSpringOf,
  type StopSpring,
} from '../../../shared-engine/geometry/stop-spring.ts'
import { heldEnergy, stopEnergy, stopForce } from '../../../shared-engine/track/stop.ts'
import { evenly } from '../../fixtures/evenly.ts'

/** Peak force of a mass run into the spring, through time: μ x″ = L − F, F growing by κ_1 and, past F_s, by κ. */
function simulatedPeak(spring: StopSpring, mass: number, speed: number, pull: number): number {
  const forceAt = (x: number) => {
    const early = spring.earlyStiffness * x
    if (early <= spring.slackAt) return early
    return spring.slackAt + spring.stiffness * (x - spring.slackAt / spring.earlyStiffness)
  }
  let x = 0
  let v = speed
  const step = 1e-4 / Math.sqrt(spring.earlyStiffness / mass)
  while (v > 0) {
    // velocity Verlet: energy is kept to the square of the step
    const half = v + ((pull - forceAt(x)) / mass) * (step / 2)
    x += half * step
    v = half + ((pull - forceAt(x)) / mass) * (step / 2)
  }
  return forceAt(x)
}

const springs = fc
  .record({
    ladder: evenly(1e4, 1e6),
    span: evenly(0.05, 0.6),
    stiffness: evenly(5e3, 1e6),
    share: evenly(0.1, 0.9),
    pretension: evenly(0, 400),
    fixed: fc.boolean(),
  })
  .map((one) =>
    stopSpringOf(one.ladder, one.span, one.stiffness, one.fixed ? one.share : null, one.pretension),
  )

describe('a held loop', () => {
  it('stops the train with the force that an integration through time finds', () => {
    const runs = fc.record({
      spring: springs,
      mass: evenly(0.05, 20),
      speed: evenly(0.5, 30),
      pull: evenly(0, 500),
    })
    fc.assert(
      fc.property(runs, ({ spring, mass, speed, pull }) => {
        const energy = mass * speed * speed + heldEnergy(spring, Math.min(pull, Infinity))
        const force = stopForce(spring, pull, energy)
        const peak = simulatedPeak(spring, mass, speed, pull)
        expect(Math.abs(force / peak - 1)).toBeLessThan(2e-3) // steps of 1e-4 of a radian, the last one cut off
      }),
      { numRuns: 40 },
    )
  })

  it('gives back the energy that made a force', () => {
    const runs = fc.record({
      spring: springs,
      pull: evenly(0, 500),
      energy: evenly(1e-3, 1e4),
    })
    fc.assert(
      fc.property(runs, ({ spring, pull, energy }) => {
        const force = stopForce(spring, pull, energy)
        // 1e-9 of the energy and of what rounding of the force leaves of it
        const lost = (1e-12 * force * (force - pull)) / spring.stiffness
        expect(Math.abs(stopEnergy(spring, force, pull) - energy)).toBeLessThan(1e-9 * energy + lost)
      }),
    )
  })
})

describe('the ladder of rows', () => {
  it('is one row alone, two in series with their link, and never more than all side by side', () => {
    expect(ladderStiffness(100, 300, 1)).toBe(100)
    expect(ladderStiffness(100, 300, 2)).toBeCloseTo(100 + 1 / (1 / 300 + 1 / 100), 12)
    expect(ladderStiffness(100, 1e12, 8)).toBeCloseTo(800, 5) // a stiff loop: all rows alike
    expect(ladderStiffness(100, 1e-9, 8)).toBeCloseTo(100, 5) // a soft one: the first alone
  })
})
