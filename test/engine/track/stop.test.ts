import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  ladderStiffness,
  stopSpringOf,
  type StopSpring,
} from '../../../shared-engine/geometry/stop-spring.ts'
import { heldEnergy, stopEnergy, stopForce } from '../../../shared-engine/track/stop.ts'
import { solvedByOdex } from '../numeric/odex.ts'
import { evenly } from '../../fixtures/evenly.ts'

/** Force of the held loop at a give: by κ_1 up to where its slack side is relaxed, by κ beyond. */
function forceAt(spring: StopSpring, give: number): number {
  const early = spring.earlyStiffness * give
  if (early <= spring.slackAt) return early
  return spring.slackAt + spring.stiffness * (give - spring.slackAt / spring.earlyStiffness)
}

/** Give at which the loop pulls with a force. */
function giveOf(spring: StopSpring, force: number): number {
  if (force <= spring.slackAt) return force / spring.earlyStiffness
  return spring.slackAt / spring.earlyStiffness + (force - spring.slackAt) / spring.stiffness
}

/**
 * ½ μ v² that is left of a mass once the loop has given so far: d(½ μ v²)/dx = L − F(x), *Source:* Newton's second law solved
 * by odex, a port of Hairer and Wanner's extrapolation code, in two pieces that meet where the slack side is relaxed.
 */
function motionLeft(spring: StopSpring, mass: number, speed: number, pull: number, give: number): number {
  const bend = Math.min(give, spring.slackAt / spring.earlyStiffness)
  const whole = (mass * speed * speed) / 2
  // In shares of the energy: the solver's tolerance is absolute too.
  const slopes = (at: number) => [(pull - forceAt(spring, at)) / whole]
  const [between = NaN] = bend > 0 ? solvedByOdex(slopes, 0, [1], bend) : [1]
  const [end = NaN] = give > bend ? solvedByOdex(slopes, bend, [between], give) : [between]
  return end
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
  it('stops the train with the force at which nothing is left of its motion: Newton’s law solved by odex', () => {
    const runs = fc.record({
      spring: springs,
      mass: evenly(0.05, 20),
      speed: evenly(0.5, 30),
      pull: evenly(0, 500),
    })
    fc.assert(
      fc.property(runs, ({ spring, mass, speed, pull }) => {
        const energy = mass * speed * speed + heldEnergy(spring, pull)
        const force = stopForce(spring, pull, energy)
        expect(force).toBeGreaterThan(pull)
        const left = motionLeft(spring, mass, speed, pull, giveOf(spring, force))
        // 1e-9 of the motion, and of the pull's work, which is the larger for slow ones
        const worked = (pull * giveOf(spring, force)) / ((mass * speed * speed) / 2)
        expect(Math.abs(left)).toBeLessThan(1e-9 * (1 + worked))
      }),
      { numRuns: 80 },
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
