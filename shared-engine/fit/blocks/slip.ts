import type { Machine } from '../../machine/parts.ts'
import { angularSpeedOf } from '../../units/rpm.ts'
import { piecesOf } from '../pieces.ts'
import type { Prepared } from '../prepare.ts'
import { beltSpeedOf, slipOf } from './belt.ts'
import type { Block } from './block.ts'

/** Slower than this a belt's slip says nothing, m/s. */
const leastSpeed = 1

/**
 * Ground speed less v_b (1 − i), over √{σ_g² + [(1 − i) σ_v]²}: it tells the slip.
 *
 * *Source:* definition of slip.
 */
export function slipBlock({ tracks, noise }: Prepared, build: Machine): Block {
  const sigmaGround = noise.get('groundMps')?.sigma ?? NaN
  const sigmaBelt = beltSpeedOf(build, angularSpeedOf(noise.get('motorRpm')?.sigma ?? NaN))
  const rows = tracks
    .filter(({ offGround }) => !offGround)
    .flatMap((track) => {
      const { seconds, segment, ground, speed } = track
      const belt = speed.map((one) => beltSpeedOf(build, one))
      const takes = (row: number) => (belt[row] ?? NaN) >= leastSpeed && !Number.isNaN(ground[row])
      return piecesOf({ segment, times: seconds, takes, fewest: 5 }).flatMap((piece) =>
        piece.rows.map((row) => ({
          cluster: piece.cluster,
          segment,
          seconds: seconds[row] ?? NaN,
          ground: ground[row] ?? NaN,
          belt: belt[row] ?? NaN,
        })),
      )
    })
  return {
    name: 'slip',
    clusters: rows.map(({ cluster }) => cluster),
    reads: new Set(['ground.slipPercent']),
    offsets: 0,
    residualsOf: (machine) => {
      const grip = 1 - slipOf(machine)
      const scale = Math.hypot(sigmaGround, grip * sigmaBelt)
      return Float64Array.from(rows, ({ ground, belt }) => (ground - belt * grip) / scale)
    },
    spun: 0,
    places: rows,
  }
}
