import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { largestRowForce } from '../../shared-engine/track/sharing.ts'
import { loaded, rows, solved, type Rows } from './springs.ts'

// Which rows carry, without being told at which end rows lift: every contiguous set is solved with the places of all
// rows, lifted ones too, and kept only where its rows press and all others stand clear. *Source:* the spring model of
// `docs/model.md` §6, after Gerbert et al. (1978); contact without pull as a complementarity problem.

/** k u of every row, N, where rows `from` to `to` carry: k times the springs' own equations. */
function pressesOf(at: Rows, from: number, to: number): number[] {
  const { engaged, stiffness, loop, pitch, error, pull, slack } = at
  const perTension = (stiffness * pitch) / loop
  const carries = (row: number): boolean => row >= from && row <= to
  // k u_{j+1} − k u_j + k e + κ (T_0 − Σ_{i ≤ j} f_i) = 0, and Σ f_i = F
  const matrix = Array.from({ length: engaged }, (_, equation) =>
    Array.from({ length: engaged }, (_, row) => {
      if (equation === engaged - 1) return carries(row) ? 1 : 0
      const drop = carries(row) && row <= equation ? -perTension : 0
      return drop + (row === equation + 1 ? 1 : 0) - (row === equation ? 1 : 0)
    }),
  )
  const right = Array.from({ length: engaged }, (_, equation) =>
    equation === engaged - 1 ? pull : -stiffness * error - perTension * (pull + slack),
  )
  return solved(matrix, right)
}

/** By how much a set breaks contact: a carrying row that pulls or a lifted one that presses, N. */
function wrongBy(presses: readonly number[], from: number, to: number): number {
  return Math.max(0, ...presses.map((press, row) => (row >= from && row <= to ? -press : press)))
}

/**
 * What rounding leaves of a force that is none, N: 1e-9 of the pull, and elimination's digits where the error's own
 * tension is far larger.
 */
function lostBy(at: Rows): number {
  return 1e-9 * at.pull + 1e-11 * Math.abs((at.error * at.loop) / at.pitch)
}

/**
 * The most rows that press while the others stand clear, their forces, and how badly contact is broken at best.
 *
 * Where tooth is stiff beside loop, each row leaves the next a small part of its own force: 1/740 a row is 1e-17 of the
 * pull at the seventh, less than the last digit of what it is solved from, and of either sign. Such a row presses and
 * stands clear alike, so every set within rounding is sound; only a row that the widest of them leaves out has lifted.
 */
function contactOf(at: Rows): { from: number; to: number; forces: number[]; wrong: number } {
  let best = { from: 0, to: -1, forces: [NaN], wrong: Infinity }
  let wrong = Infinity
  for (let from = 0; from < at.engaged; from += 1) {
    for (let to = from; to < at.engaged; to += 1) {
      const presses = pressesOf(at, from, to)
      const broken = wrongBy(presses, from, to)
      wrong = Math.min(wrong, broken)
      const wider = to - from - (best.to - best.from)
      if (broken < lostBy(at) && (wider > 0 || (wider === 0 && broken < best.wrong)))
        best = { from, to, forces: presses.slice(from, to + 1), wrong: broken }
    }
  }
  return { ...best, wrong }
}

describe('rows that lift', () => {
  it('are at one end alone, that of a loop too long or too short, and the others carry what the springs say', () => {
    const seen = { all: 0, tight: 0, slack: 0, brink: 0 }
    fc.assert(
      fc.property(rows, (at) => {
        const { from, to, forces, wrong } = contactOf(at)
        const sharing = loaded(at)
        const lost = lostBy(at)
        expect(wrong).toBeLessThan(lost)
        const [atTight, atSlack] = [from > 0, to < at.engaged - 1]
        expect(atTight && atSlack).toBe(false)
        // the contract's own words: the slack end lifts only of a loop too long, the tight end only of one too short
        if (atTight) expect(sharing.tight).toBeLessThan(0)
        if (atSlack) expect(sharing.slack).toBeGreaterThan(0)
        seen[atTight ? 'tight' : atSlack ? 'slack' : 'all'] += 1
        const [first, last] = [forces[0] ?? NaN, forces[forces.length - 1] ?? NaN]
        expect(Math.abs(largestRowForce(sharing) - Math.max(first, last))).toBeLessThan(lost)
        // a row at the brink may count as carrying nothing on one side and as lifted on the other
        if (sharing.rows !== forces.length) {
          seen.brink += 1
          return
        }
        expect(Math.abs(sharing.first - first)).toBeLessThan(lost)
        expect(Math.abs(sharing.last - last)).toBeLessThan(lost)
      }),
      { numRuns: 1000 },
    )
    // lifted ends of both kinds were among them
    expect(Math.min(seen.all, seen.tight, seen.slack)).toBeGreaterThan(50)
    // 1 %: few rows stand just at the brink
    expect(seen.brink).toBeLessThan(10)
  })
})
