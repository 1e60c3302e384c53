import { describe, expect, test } from 'vitest'
import { followSteps } from '../../../shared-engine/numeric/step.ts'
import type { Slopes } from '../../../shared-engine/numeric/step.ts'
import { solvedByOdex } from './odex.ts'

/** Arenstorf's orbit: a satellite round earth and moon, Hairer, Nørsett and Wanner (1993), eqs. II.0.1 and II.0.2. */
const moon = 0.012277471
const arenstorf: Slopes = (_, y, dy) => {
  const [x = 0, z = 0, vx = 0, vz = 0] = y
  const earth = 1 - moon
  const toEarth = ((x + moon) ** 2 + z ** 2) ** 1.5
  const toMoon = ((x - earth) ** 2 + z ** 2) ** 1.5
  dy[0] = vx
  dy[1] = vz
  dy[2] = x + 2 * vz - (earth * (x + moon)) / toEarth - (moon * (x - earth)) / toMoon
  dy[3] = z - 2 * vx - (earth * z) / toEarth - (moon * z) / toMoon
}
const start = [0.994, 0, 0, -2.00158510637908252240537862224]
const period = 17.0652165601579625588917206249

test('Arenstorf’s orbit closes after its published period', () => {
  const run = followSteps({ slopes: arenstorf, from: 0, to: period, start, relative: 1e-12, absolute: 1e-12 })
  expect(run.ended).toBe('reached')
  const [x = 0, z = 0] = run.at(period)
  // 1e-5: the orbit passes so near the moon that errors grow some 10^6 times on the way round.
  expect(Math.abs(x - 0.994)).toBeLessThan(1e-5)
  expect(Math.abs(z)).toBeLessThan(1e-5)
})

describe('beside odex, an independent extrapolation solver', () => {
  const heating: Slopes = (time, y, dy) => {
    // A winding that heats with the current of a pulsed load and cools to its sink: the shape the engine needs.
    const current = 40 + 20 * Math.sin(time / 9)
    const winding = y[0] as number
    dy[0] = (12 + current ** 2 * 0.02 * (1 + 0.00393 * (winding - 20)) - (winding - 15) / 0.8) / 120
  }

  test.each([10, 60, 300])('the winding after %d s', (seconds) => {
    const own = followSteps({
      slopes: heating,
      from: 0,
      to: seconds,
      start: [20],
      relative: 1e-11,
      absolute: 1e-9,
    })
    const slopes = (time: number, winding: readonly number[]) => {
      const slope = new Float64Array(1)
      heating(time, Float64Array.from(winding), slope)
      return [...slope]
    }
    const [other = NaN] = solvedByOdex(slopes, 0, [20], seconds)
    // 1e-8: each solver keeps 1e-11 a step over some thousand steps.
    expect(Math.abs((own.at(seconds)[0] as number) - other)).toBeLessThan(1e-8 * Math.abs(other))
  })
})

const circle: Slopes = (_, y, dy) => {
  dy[0] = y[1] as number
  dy[1] = -(y[0] as number)
}

test('between the steps the continuous extension holds', () => {
  const run = followSteps({
    slopes: circle,
    from: 0,
    to: 10,
    start: [0, 1],
    relative: 1e-10,
    absolute: 1e-10,
  })
  for (let time = 0; time <= 10; time += 0.037) {
    // 1e-8: the extension is of order 4, one less than the step.
    expect(Math.abs((run.at(time)[0] as number) - Math.sin(time))).toBeLessThan(1e-8)
  }
  expect(run.at(-1)[0]).toBe(0)
  expect(run.at(99)[0]).toBe(run.states.at(-1)?.[0])
})

describe('events', () => {
  const top = { name: 'top', value: (_: number, y: Float64Array) => y[1] as number, stops: false }

  test('are found where they happen, in order, and the run goes on', () => {
    const run = followSteps({
      slopes: circle,
      from: 0,
      to: 10,
      start: [0, 1],
      relative: 1e-11,
      absolute: 1e-11,
      events: [top],
    })
    expect(run.happened.map((event) => event.name)).toEqual(['top', 'top', 'top'])
    run.happened.forEach((event, index) => {
      // 1e-9: the extension's error over the slope there.
      expect(Math.abs(event.time - (index + 0.5) * Math.PI)).toBeLessThan(1e-9)
    })
    expect(run.ended).toBe('reached')
  })

  test('that stop end the run there', () => {
    const run = followSteps({
      slopes: circle,
      from: 0,
      to: 10,
      start: [0, 1],
      events: [{ ...top, stops: true }],
    })
    expect(run.ended).toBe('event')
    expect(run.times.at(-1)).toBe(run.happened[0]?.time)
    expect(run.happened).toHaveLength(1)
  })
})

test('a run into a pole is said to be too stiff and stands up to there', () => {
  const run = followSteps({
    slopes: (_, y, dy) => {
      dy[0] = (y[0] as number) ** 2
    },
    from: 0,
    to: 2,
    start: [1],
  })
  expect(run.ended).toBe('too-stiff')
  // 1e-3: y = 1/(1 − t) runs off at t = 1.
  expect(Math.abs((run.times.at(-1) ?? 0) - 1)).toBeLessThan(1e-3)
})
