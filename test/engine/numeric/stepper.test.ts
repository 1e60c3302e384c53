import { describe, expect, test } from 'vitest'
import { Stepper, type SlopesOf } from '../../../shared-engine/numeric/stepper.ts'
import { solvedByOdex } from './odex.ts'

/** Arenstorf's orbit: a satellite round earth and moon, Hairer, Nørsett and Wanner (1993), eqs. II.0.1 and II.0.2. */
const moon = 0.012277471
const arenstorf: SlopesOf = (_, y, dy) => {
  const [x = 0, z = 0, vx = 0, vz = 0] = y
  const earth = 1 - moon
  const toEarth = ((x + moon) ** 2 + z ** 2) ** 1.5
  const toMoon = ((x - earth) ** 2 + z ** 2) ** 1.5
  dy[0] = vx
  dy[1] = vz
  dy[2] = x + 2 * vz - (earth * (x + moon)) / toEarth - (moon * (x - earth)) / toMoon
  dy[3] = z - 2 * vx - (earth * z) / toEarth - (moon * z) / toMoon
}

/** Follows to a time; calls `stepped` with each accepted step before it is taken. */
function followed(
  slopes: SlopesOf,
  start: readonly number[],
  to: number,
  relative: number,
  stepped: (stepper: Stepper) => void = () => undefined,
): Stepper {
  const floors = new Float64Array(start.length).fill(relative)
  const stepper = new Stepper(Float64Array.from(start), slopes, relative, floors)
  stepper.restart(slopes, to / 1000)
  while (stepper.time < to) {
    if (!stepper.advance(to - stepper.time)) break
    stepped(stepper)
    const last = stepper.step >= to - stepper.time
    stepper.commit()
    if (last) break
  }
  return stepper
}

test('Arenstorf’s orbit closes after its published period', () => {
  const start = [0.994, 0, 0, -2.00158510637908252240537862224]
  const { state } = followed(arenstorf, start, 17.0652165601579625588917206249, 1e-12)
  // 1e-5: the orbit passes so near the moon that errors grow some 10^6 times on the way round.
  expect(Math.abs((state[0] ?? NaN) - 0.994)).toBeLessThan(1e-5)
  expect(Math.abs(state[1] ?? NaN)).toBeLessThan(1e-5)
})

describe('beside odex, an independent extrapolation solver', () => {
  const heating: SlopesOf = (time, y, dy) => {
    // A winding that heats with the current of a pulsed load and cools to its sink: the shape the engine needs.
    const current = 40 + 20 * Math.sin(time / 9)
    const winding = y[0] as number
    dy[0] = (12 + current ** 2 * 0.02 * (1 + 0.00393 * (winding - 20)) - (winding - 15) / 0.8) / 120
  }

  test.each([10, 60, 300])('the winding after %d s', (seconds) => {
    const slopes = (time: number, winding: readonly number[]) => {
      const slope = new Float64Array(1)
      heating(time, Float64Array.from(winding), slope)
      return [...slope]
    }
    const [other = NaN] = solvedByOdex(slopes, 0, [20], seconds)
    const own = followed(heating, [20], seconds, 1e-11).state[0] ?? NaN
    // 1e-8: each solver keeps 1e-11 a step over some thousand steps.
    expect(Math.abs(own - other)).toBeLessThan(1e-8 * Math.abs(other))
  })
})

const circle: SlopesOf = (_, y, dy) => {
  dy[0] = y[1] as number
  dy[1] = -(y[0] as number)
}

test('inside a step the continuous extension holds', () => {
  const into = new Float64Array(2)
  followed(circle, [0, 1], 10, 1e-10, (stepper) => {
    for (const part of [0, 0.2, 0.5, 0.9, 1]) {
      stepper.within(part, into)
      // 1e-8: the extension is of order 4, one less than the step.
      expect(Math.abs((into[0] ?? NaN) - Math.sin(stepper.time + part * stepper.step))).toBeLessThan(1e-8)
    }
  })
})

test('a part of a step taken and begun again goes on as if nothing were', () => {
  let parts = 0
  const floors = new Float64Array(2).fill(1e-11)
  const stepper = new Stepper(Float64Array.from([0, 1]), circle, 1e-11, floors)
  stepper.restart(circle, 0.01)
  while (stepper.time < 5) {
    stepper.advance(5 - stepper.time)
    if (stepper.tried % 7 === 0) {
      stepper.commitPart(0.4)
      stepper.restart(circle, stepper.next)
      parts += 1
    } else stepper.commit()
  }
  expect(parts).toBeGreaterThan(3)
  // 1e-8: as above, some tens of times.
  expect(Math.abs((stepper.state[0] ?? NaN) - Math.sin(stepper.time))).toBeLessThan(1e-8)
})

test('a run into a pole cannot be followed past it', () => {
  const pole: SlopesOf = (_, y, dy) => {
    dy[0] = (y[0] as number) ** 2
  }
  // dy/dt = y² from 1: y = 1/(1 − t).
  const stepper = followed(pole, [1], 2, 1e-9)
  expect(stepper.time).toBeLessThan(1 + 1e-6)
  expect(stepper.time).toBeGreaterThan(0.99)
})

test('a step so long that it leaves where numbers are is tried again, shorter', () => {
  // dy/dt = −1000 √y from 1: a first step of 0.01 ends far below 0, where there is no root. √y = 1 − 500 t.
  const draining: SlopesOf = (_, y, dy) => {
    dy[0] = -1000 * Math.sqrt(y[0] as number)
  }
  const stepper = new Stepper(Float64Array.from([1]), draining, 1e-9, new Float64Array([1e-9]))
  stepper.restart(draining, 0.01)
  expect(stepper.advance(1)).toBe(true)
  expect(stepper.tried).toBeGreaterThan(1)
  stepper.commit()
  while (stepper.time < 0.001 && stepper.advance(0.001 - stepper.time)) stepper.commit()
  expect(stepper.time).toBeCloseTo(0.001, 12)
  // 1e-7: 1e-9 a step over some tens of them
  expect(Math.abs((stepper.state[0] ?? NaN) / 0.25 - 1)).toBeLessThan(1e-7)
})
