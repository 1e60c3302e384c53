import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { climbRatioOf, rowRoom, setRowForces } from '../../shared-engine/track/climb.ts'
import { largestRowForce } from '../../shared-engine/track/sharing.ts'
import { loaded, power, rows, springsOf, solved, type Rows } from './springs.ts'

// The closed form beside a direct solution of the same springs: equations written out, solved by elimination, as many
// rows as can carry from the tight side. *Source:* the spring model of `docs/model.md` §6, after Gerbert et al. (1978).

/** Forces of `count` rows that all carry, their tight side under T_0. */
function forcesOf({ stiffness, loop, pitch, error, pull, slack }: Rows, count: number): number[] {
  const perTension = (stiffness * pitch) / loop
  const matrix = Array.from({ length: count }, () => new Array<number>(count).fill(0))
  const right = new Array<number>(count).fill(0)
  for (let row = 0; row < count - 1; row += 1) {
    const line = matrix[row] ?? []
    line[row + 1] = (line[row + 1] ?? 0) + 1
    line[row] = (line[row] ?? 0) - 1
    for (let before = 0; before <= row; before += 1) line[before] = (line[before] ?? 0) - perTension
    right[row] = -stiffness * error - perTension * (pull + slack)
  }
  matrix[count - 1] = new Array<number>(count).fill(1)
  right[count - 1] = pull
  return solved(matrix, right)
}

/** The forces of the rows that carry: as many as can, lifted at one end. */
function slowForces(rows: Rows): number[] {
  for (let count = rows.engaged; count > 1; count -= 1) {
    const forces = forcesOf(rows, count)
    if (Math.min(...forces) >= -1e-12 * rows.pull) return forces
  }
  return [rows.pull]
}

describe('rows of teeth that share a pull', () => {
  it('carry what the springs say', () => {
    let lifted = 0
    fc.assert(
      fc.property(rows, (at) => {
        const forces = slowForces(at)
        if (forces.length < at.engaged) lifted += 1
        const sharing = loaded(at)
        // 1e-9 of the pull, and what elimination loses where the error's own tension is far larger
        const lost = 1e-9 * at.pull + 1e-12 * Math.abs(springsOf(at).errorTension)
        expect(Math.abs(largestRowForce(sharing) - Math.max(...forces))).toBeLessThan(lost)
      }),
      { numRuns: 3000 },
    )
    expect(lifted).toBeGreaterThan(100)
  })

  it('share alike on a loop that does not give, and leave all to the first on one that does', () => {
    const base = { engaged: 8, stiffness: 1e5, pitch: 0.02, error: 0, pull: 400, slack: 0 }
    expect(loaded({ ...base, loop: 1e15 }).first).toBeCloseTo(50, 5)
    expect(loaded({ ...base, loop: 1e-3 }).first).toBeCloseTo(400, 2)
  })

  it('climb by the worst of the rows, one by one', () => {
    fc.assert(
      fc.property(rows, power(0, 2.5), (at, pretension) => {
        const forces = slowForces(at)
        let worst = 0
        for (const [index, force] of forces.entries()) {
          const behind = forces.slice(index + 1).reduce((sum, one) => sum + one, 0)
          if (force > 0) worst = Math.max(worst, force / (pretension + force / 2 + behind))
        }
        const found = climbRatioOf(loaded(at), springsOf(at), 2 * Math.PI, pretension, 1)
        // 1e-7 of a row's own ratio: elimination's digits, spread over the smallest hold
        const lost = 1e-7 + (1e-11 * Math.abs((at.error * at.loop) / at.pitch)) / pretension
        expect(Math.abs(found - worst)).toBeLessThan(lost * Math.max(1, worst))
      }),
      { numRuns: 1500 },
    )
  })

  it('without pretension climb alike at any load: 2 · slope · z/2π at the last row', () => {
    fc.assert(
      fc.property(power(0, 4), (pull) => {
        const at = { engaged: 6, stiffness: 1e5, loop: 1e5, pitch: 0.02, error: 0, pull, slack: 0 }
        expect(climbRatioOf(loaded(at), springsOf(at), 1, 0, 12)).toBeCloseTo(12 / Math.PI, 9)
      }),
    )
  })
})

describe('forces of all rows', () => {
  it('add up to the pull and are the ends’ own, however far the pitch error’s tension is above the pull', () => {
    const forces = new Float64Array(rowRoom)
    fc.assert(
      fc.property(rows, power(-6, 0), (at, part) => {
        const small = { ...at, pull: at.pull * part }
        const sharing = loaded(small)
        setRowForces(forces, sharing, springsOf(small))
        const carried = forces.subarray(1, sharing.rows + 1)
        const sum = carried.reduce((so, force) => so + force, 0)
        // 1e-9: closed form; of the pull, not of the far larger levels
        expect(Math.abs(sum - small.pull)).toBeLessThan(1e-9 * small.pull)
        expect(Math.abs((carried[0] ?? NaN) - sharing.first)).toBeLessThan(1e-9 * small.pull)
        expect(Math.abs((carried[sharing.rows - 1] ?? NaN) - sharing.last)).toBeLessThan(1e-9 * small.pull)
      }),
      { numRuns: 1000 },
    )
  })
})
