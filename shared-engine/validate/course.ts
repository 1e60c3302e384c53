import type { Track } from '../fit/prepare.ts'
import type { Drive, Motion } from './motion.ts'

/** Longest step of the integration, s. */
const longest = 0.1

/** (e^x − 1)/x, 1 at 0. */
const grown = (x: number) => (Math.abs(x) < 1e-9 ? 1 : Math.expm1(x) / x)

const driveAt = (track: Track, row: number, byAmps: boolean): Drive => ({
  amps: byAmps ? (track.amps[row] ?? NaN) : NaN,
  volts: track.volts[row] ?? NaN,
  duty: track.duty[row] ?? NaN,
  winding: track.winding[row] ?? NaN,
})

function between(one: Drive, other: Drive, share: number): Drive {
  const at = (key: keyof Drive) => one[key] + share * (other[key] - one[key])
  return { amps: at('amps'), volts: at('volts'), duty: at('duty'), winding: at('winding') }
}

/**
 * Belt speed through rows, from the first row's speed and what was logged of the drive.
 *
 * v' = v + h a(v) (e^{hJ} − 1)/(hJ), J = da/dv: exact where a is a straight line in v, and stable however fast the
 * motors pull the belt to their own speed.
 *
 * @param byAmps driven by the logged current; else by volts and duty
 * @returns m/s of the belt at each row
 * *Source:* exponential Rosenbrock method of order 2 (M. Hochbruck and A. Ostermann, Acta Numerica 19 (2010)).
 */
export function beltCourse(
  motion: Motion,
  track: Track,
  rows: readonly number[],
  byAmps: boolean,
): Float64Array {
  const first = rows[0] ?? 0
  const found = new Float64Array(rows.length)
  let belt = Math.max(0, (track.speed[first] ?? 0) / motion.motorPerBelt)
  found[0] = belt
  for (let place = 1; place < rows.length; place += 1) {
    const [from, to] = [rows[place - 1] ?? 0, rows[place] ?? 0]
    const step = (track.seconds[to] ?? 0) - (track.seconds[from] ?? 0)
    const [begin, end] = [driveAt(track, from, byAmps), driveAt(track, to, byAmps)]
    const parts = Math.max(1, Math.ceil(step / longest - 1e-9))
    for (let part = 0; part < parts; part += 1)
      belt = stepped(motion, between(begin, end, (part + 0.5) / parts), belt, step / parts, track.offGround)
    found[place] = belt
  }
  return found
}

function stepped(motion: Motion, drive: Drive, belt: number, step: number, offGround: boolean): number {
  const here = motion.accelerationOf(drive, belt, offGround)
  if (belt === 0) return Math.max(0, step * here)
  const aside = 1e-4 * Math.max(1, belt)
  const slope = (motion.accelerationOf(drive, belt + aside, offGround) - here) / aside
  return Math.max(0, belt + step * here * grown(step * slope))
}

/** A of one motor by volts, duty and the belt's speed at a row. */
export function ampsOnCourse(motion: Motion, track: Track, row: number, belt: number): number {
  return motion.ampsOf(driveAt(track, row, false), belt)
}
