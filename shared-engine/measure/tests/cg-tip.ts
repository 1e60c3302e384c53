import { output, type GuidedTest } from '../kind.ts'
import { tangentOfSine } from './cg-lift.ts'

/**
 * Height of the centre of mass by tipping about the patch's rear edge: h = x/tan θ, sin θ = rise/board.
 *
 * *Source:* at the tipping angle the centre of mass is above the edge.
 */
export const cgTip: GuidedTest = {
  id: 'cg-tip',
  outputs: (bench) => {
    const rise = bench.mean('riseMm')
    const board = bench.mean('boardMm')
    const ahead = bench.entry('vehicle.cgAheadMm')
    return {
      height: output(ahead / tangentOfSine(rise / board), 'x / tan(asin(H / L))', {
        x: ahead,
        H: rise,
        L: board,
      }),
    }
  },
}
