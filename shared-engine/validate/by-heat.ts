import { courseOf } from '../fit/blocks/heat.ts'
import type { Prepared, Track } from '../fit/prepare.ts'
import { meanOver, wholeSpans } from '../fit/whole-seconds.ts'
import type { Machine } from '../machine/parts.ts'
import { angularSpeedOf } from '../units/rpm.ts'
import { Samples, type Comparison } from './quantity.ts'

/** Temperatures are compared as means over this span, s. */
const meanSeconds = 5
/** Fewest spans of a segment that show a course. */
const fewest = 4

/** A segment's temperatures: the rows that carry heat, and the spans that are compared. */
interface Warming {
  readonly track: Track
  readonly rows: readonly number[]
  readonly spans: readonly { readonly second: number; readonly rows: readonly number[] }[]
}

/**
 * Temperature of the motor predicted from its current and rpm, from what it was in the first five seconds of each segment.
 *
 * @returns null where the build has no lump to warm up
 * *Source:* one lump with copper's rise; exact exponential steps, as in the fit of a log.
 */
export function byHeat({ tracks, noise }: Prepared, nominal: Machine): Comparison | null {
  const { motor } = nominal
  if (motor.thermalResistance === null || motor.heatCapacity === null) return null
  const ofCelsius = noise.get('motorCelsius')
  const squares = {
    amps: (noise.get('motorAmps')?.sigma ?? 0) ** 2,
    speed: angularSpeedOf(noise.get('motorRpm')?.sigma ?? 0) ** 2,
  }
  const warmings = tracks.flatMap((track): Warming[] => {
    const rows = Array.from(track.seconds.keys()).filter(
      (row) => !Number.isNaN(track.amps[row]) && !Number.isNaN(track.speed[row]),
    )
    const known = new Set(rows)
    const spans = wholeSpans(track.seconds, meanSeconds, () => true)
      .map(({ second, rows: all }) => ({
        second,
        rows: all.filter((row) => known.has(row) && !Number.isNaN(track.celsius[row])),
      }))
      .filter((span) => span.rows.length > 0)
    return spans.length < fewest ? [] : [{ track, rows, spans }]
  })
  const sigma = ofCelsius?.sigma ?? 0
  const found = new Samples()
  for (const { track, spans } of warmings)
    for (const { second, rows } of spans.slice(1)) {
      const error = sigma / Math.sqrt(ofCelsius?.scatters === true ? rows.length : 1)
      const middle = (track.seconds[0] ?? 0) + (second + 0.5) * meanSeconds
      found.add(track.segment, middle, meanOver(track.celsius, rows), Math.hypot(error, sigma), NaN)
    }
  return {
    // The start is one reading, whose error lasts.
    series: [found.as('temperature', sigma)],
    predictedBy: (machine) => [Float64Array.from(warmings.flatMap((one) => warmed(machine, one, squares)))],
  }
}

function warmed(machine: Machine, { track, rows, spans }: Warming, squares: { amps: number; speed: number }) {
  const { celsius, left } = courseOf(machine, track, rows, squares)
  const first = spans[0]?.rows ?? []
  const start = (meanOver(track.celsius, first) - meanOver(celsius, first)) / meanOver(left, first)
  return spans.slice(1).map((span) => meanOver(celsius, span.rows) + start * meanOver(left, span.rows))
}
