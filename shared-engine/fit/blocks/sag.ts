import type { Machine } from '../../machine/parts.ts'
import { openCircuitVolts, type ChemistryId } from '../../reference/chemistry.ts'
import { piecesOf } from '../pieces.ts'
import type { Prepared, Track } from '../prepare.ts'
import { meanOver, wholeSpans } from '../whole-seconds.ts'
import { joined, withoutOffset, type Block } from './block.ts'

/** A second of a pack's terminal volts: what was measured, and what they would be at rest. */
interface SagSecond {
  readonly count: number
  readonly seconds: number
  readonly volts: number
  readonly amps: number
  /** V_oc of the charge that is left. */
  readonly open: number
}

/** A·s drawn before each row, by the trapezoid; a row without amps draws nothing. */
function drawnOf({ packAmps, seconds }: Track): Float64Array {
  let drawn = 0
  return seconds.map((time, row) => {
    const [before, here] = [packAmps[row - 1] ?? NaN, packAmps[row] ?? NaN]
    const step = (time - (seconds[row - 1] ?? time)) * ((before + here) / 2)
    if (!Number.isNaN(step)) drawn += step
    return drawn
  })
}

/** Pieces of one segment; charge goes on from the segments before. */
function piecesOfTrack(track: Track, open: (drawn: number) => number, before: number) {
  const drawn = drawnOf(track)
  const { volts, packAmps, seconds } = track
  const takes = (row: number) => !Number.isNaN(volts[row]) && !Number.isNaN(packAmps[row])
  const spans = wholeSpans(seconds, 1, takes)
  const cut = piecesOf({
    segment: track.segment,
    times: spans.map(({ second }) => second),
    takes: () => true,
    fewest: 2,
  })
  const charge = drawn.map((part) => open(before + part))
  return cut.map(({ cluster, rows }) => ({
    cluster,
    segment: track.segment,
    seconds: rows.flatMap((row): SagSecond[] => {
      const span = spans[row]
      if (span === undefined) return []
      return [
        {
          count: span.rows.length,
          seconds: (seconds[0] ?? 0) + span.second + 0.5,
          volts: meanOver(volts, span.rows),
          amps: meanOver(packAmps, span.rows),
          open: meanOver(charge, span.rows),
        },
      ]
    }),
  }))
}

/**
 * Seconds of a log by pieces, each with the open-circuit volts of the charge that is left: that of the build less what was
 * drawn.
 */
export function sagPiecesOf({ tracks }: Pick<Prepared, 'tracks'>, build: Machine, chemistry: ChemistryId) {
  const { series, capacity, stateOfCharge } = build.pack
  const open = (drawn: number) =>
    series * openCircuitVolts(chemistry, Math.min(1, Math.max(0, stateOfCharge - drawn / capacity)))
  let before = 0
  return tracks.flatMap((track) => {
    const found = piecesOfTrack(track, open, before)
    before += drawnOf(track).at(-1) ?? 0
    return found
  })
}

/**
 * V − V_oc(charge) + I R_b of a second, over √{[σ_V² + (R_b σ_I)²]/n}, one free offset a piece: it tells the cells'
 * resistance.
 *
 * *Source:* Kirchhoff's laws; charge from the build's state of charge less ∫I dt.
 */
export function sagBlock({ tracks, noise }: Prepared, build: Machine, chemistry: ChemistryId): Block {
  const sigmaVolts = noise.get('packVolts')?.sigma ?? NaN
  const sigmaAmps = noise.get('packAmps')?.sigma ?? NaN
  const pieces = sagPiecesOf({ tracks }, build, chemistry)
  const scale = ({ count }: SagSecond, resistance: number) =>
    Math.sqrt((sigmaVolts ** 2 + (resistance * sigmaAmps) ** 2) / count)
  return {
    name: 'sag',
    clusters: pieces.flatMap(({ cluster, seconds }) => seconds.map(() => cluster)),
    reads: new Set(['pack.cellResistanceMilliohm']),
    offsets: pieces.length,
    residualsOf: ({ pack }) =>
      joined(
        pieces.map(({ seconds }) => {
          const scales = seconds.map((second) => scale(second, pack.resistance))
          const residuals = Float64Array.from(
            seconds,
            ({ volts, amps, open: rest }, at) =>
              (volts - rest + amps * pack.resistance) / (scales[at] ?? NaN),
          )
          return withoutOffset(
            residuals,
            Float64Array.from(scales, (one) => 1 / one),
          )
        }),
      ),
    noiseBetween: ({ pack }, changed) =>
      Float64Array.from(
        pieces.flatMap(({ seconds }) => seconds),
        (second) =>
          (Math.abs(changed.pack.resistance - pack.resistance) * sigmaAmps) /
          Math.sqrt(second.count) /
          scale(second, pack.resistance),
      ),
    spun: 0,
    places: pieces.flatMap(({ segment, seconds }) =>
      seconds.map((second) => ({ segment, seconds: second.seconds })),
    ),
  }
}
