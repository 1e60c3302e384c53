import { describe, expect, it } from 'vitest'
import type { Track } from '../../../shared-engine/fit/prepare.ts'
import { machineOf } from '../../../shared-engine/machine/machine.ts'
import type { Bench } from '../../../shared-engine/measure/bench.ts'
import { integralsOf } from '../../../shared-engine/measure/tests/runs.ts'
import { beltCourse } from '../../../shared-engine/validate/course.ts'
import { Motion, type Drive } from '../../../shared-engine/validate/motion.ts'
import { machine } from '../fit/drives.ts'
import { solvedByOdex } from '../numeric/odex.ts'

// Fixed steps through logged rows beside odex, a port of Hairer and Wanner's extrapolation code, which chooses its own.

/** What a recorder logs in `seconds`: a throttle that swells and falls, volts that sag with it. */
const driveAt = (t: number): Drive => ({
  amps: 30 + 25 * Math.sin(t / 2),
  volts: 40 - 2 * Math.sin(t / 3) ** 2,
  duty: 0.5 + 0.3 * Math.sin(t / 3),
  winding: 40 + t / 4,
})

function trackOf(seconds: number, rate: number, start: number): Track {
  const times = Float64Array.from({ length: seconds * rate + 1 }, (_, row) => row / rate)
  const by = (value: (drive: Drive) => number) => times.map((t) => value(driveAt(t)))
  const none = times.map(() => NaN)
  return {
    segment: 0,
    offGround: false,
    seconds: times,
    volts: by(({ volts }) => volts),
    packAmps: none,
    amps: by(({ amps }) => amps),
    duty: by(({ duty }) => duty),
    speed: times.map((_, row) => (row === 0 ? start : NaN)),
    ground: none,
    celsius: none,
    winding: by(({ winding }) => winding),
  }
}

describe.each([
  ['volts and duty', false],
  ['the logged current', true],
] as const)('the course of the belt by %s', (_name, byAmps) => {
  const motion = new Motion(machineOf(machine()), true)
  const seconds = 20
  /** m/s at the start. */
  const start = 3

  /** Largest difference from odex over the run, m/s. */
  function off(rate: number): number {
    const track = trackOf(seconds, rate, start * motion.motorPerBelt)
    const rows = [...track.seconds.keys()]
    const course = beltCourse(motion, track, rows, byAmps)
    let [belt, most] = [start, 0]
    for (let second = 1; second <= seconds; second += 1) {
      const slopes = (t: number, [v = 0]: readonly number[]) => {
        const drive = driveAt(t)
        return [motion.accelerationOf({ ...drive, amps: byAmps ? drive.amps : NaN }, v, false)]
      }
      belt = solvedByOdex(slopes, second - 1, [belt], second, 1e-10)[0] ?? NaN
      most = Math.max(most, Math.abs((course[second * rate] ?? NaN) - belt))
    }
    return most
  }

  it('is that of a solver that chooses its steps', () => {
    // Second order, rows of 0.1 s, a motor that pulls the belt to its own speed within some tenths of one: 0.3 % of 6 m/s.
    expect(off(10)).toBeLessThan(0.02)
  })

  it('comes nearer with the square of the step', () => {
    expect(off(40) / off(20)).toBeLessThan(0.35)
  })
})

it('integrals of a bench test by the trapezoid come to those of a solver that chooses its steps', () => {
  // A current that swells and falls, each of two runs for itself; Euler and Maclaurin: off by
  // h²/12 · [f'(20) − f'(0)] = 0.01/12 · 5 (cos 10 − 1) = −0.00766 A·s.
  const amps = (t: number) => 20 + 10 * Math.sin(t / 2)
  const times = Array.from({ length: 201 }, (_, row) => row / 10)
  const columns: Record<string, readonly number[]> = {
    run: [...times.map(() => 1), ...times.map(() => 2)],
    seconds: [...times, ...times],
  }
  const bench = { rows: 402, column: (name: string) => columns[name] ?? [] } as unknown as Bench
  const found = integralsOf(bench, [...times.map(amps), ...times.map((t) => 2 * amps(t))])
  const [whole = NaN] = solvedByOdex((t) => [amps(t)], 0, [0], 20)
  const rule = (0.01 / 12) * 5 * (Math.cos(10) - 1)
  expect((found[200] ?? NaN) - whole).toBeCloseTo(rule, 5)
  expect((found[401] ?? NaN) - 2 * whole).toBeCloseTo(2 * rule, 5)
  expect(found[201]).toBe(0)
})
