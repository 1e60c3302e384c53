import { describe, expect, it } from 'vitest'
import { rowSpringsOf } from '../../shared-engine/geometry/row-springs.ts'
import { Sharing, setLoad } from '../../shared-engine/track/sharing.ts'
import { loaded, type Rows } from '../laws/springs.ts'

// Rows of teeth between a loop that stretches and a sprocket that does not are two things that others have solved before:
// a ladder of resistors (loop: in series, teeth: to ground, force: current) and a line of rivets or a glued lap.

/** n rows whose stiffness is κ times that of the loop between two of them, no slack, under 1 N. */
function rowsOf(engaged: number, relative: number): Rows {
  return { engaged, stiffness: relative * 1e5, loop: 2000, pitch: 0.02, error: 0, pull: 1, slack: 0 }
}

/** Forces of all rows from the tight side: the first of each shorter chain takes its part of what is left. */
function sharesOf(engaged: number, relative: number): number[] {
  const shares: number[] = []
  let left = 1
  for (let rows = engaged; rows > 0; rows -= 1) {
    const share = left * loaded(rowsOf(rows, relative)).first
    shares.push(share)
    left -= share
  }
  return shares
}

// *Source:* A. M. Morgan-Voyce, *Ladder-Network Analysis Using Fibonacci Numbers*, IRE Transactions on Circuit Theory 6
// (1959): a ladder of equal resistors carries currents in the ratios of Fibonacci numbers. From memory.
describe('rows as stiff as the loop between them', () => {
  it.each([
    [1, [1], 1],
    [2, [2, 1], 3],
    [3, [5, 2, 1], 8],
    [4, [13, 5, 2, 1], 21],
    [6, [89, 34, 13, 5, 2, 1], 144],
  ])('%d of them share as %j of %d', (engaged, parts, whole) => {
    const shares = sharesOf(engaged, 1)
    // 12 digits: closed form
    for (const [row, part] of parts.entries()) expect(shares[row]).toBeCloseTo(part / whole, 12)
    expect(loaded(rowsOf(engaged, 1)).last).toBeCloseTo(1 / whole, 12)
  })

  it('endless many leave the first 1/φ, the golden section, as an endless ladder is φ ohms', () => {
    // 12 digits: the hundredth row has 1e-40 of the pull
    expect(loaded(rowsOf(100, 1)).first).toBeCloseTo((Math.sqrt(5) - 1) / 2, 12)
  })
})

// *Source:* O. Volkersen, *Die Nietkraftverteilung in zugbeanspruchten Nietverbindungen mit konstanten
// Laschenquerschnitten*, Luftfahrtforschung 15 (1938): greatest over mean shear of a lap, (ω/2) coth(ω/2) + (1 − ψ)/(1 + ψ)
// (ω/2) tanh(ω/2); a rigid partner is ψ = 0, ω² = stiffness of the layer × length over that of the strap. From memory.
describe('very many soft rows', () => {
  it.each([0.1, 0.5, 1, 2, 4, 8])('are a glued lap of ω = %d: greatest over mean shear', (omega) => {
    const engaged = 20_000
    const greatest = engaged * loaded(rowsOf(engaged, (omega / engaged) ** 2)).first
    const half = omega / 2
    const printed = half / Math.tanh(half) + half * Math.tanh(half)
    // 5e-4: a row is a piece of ω/20,000 of the lap, and the first stands half of it in
    expect(Math.abs(greatest / printed - 1)).toBeLessThan(5e-4)
    // at the far end the rigid partner leaves ω/sinh ω
    const least = engaged * loaded(rowsOf(engaged, (omega / engaged) ** 2)).last
    expect(Math.abs((least * Math.sinh(omega)) / omega - 1)).toBeLessThan(5e-4)
  })
})

// *Source:* the contract's own equations, worked by hand for two rows: f_1 + f_2 = F and f_1 − f_2 = k e + κ (T_n + f_2),
// so f_2 = (F − k e − κ T_n)/(2 + κ).
describe('two rows with a pitch error and a slack tension, κ = 1', () => {
  it.each([
    [0, 0, 1 / 3],
    [0.2, 0, 0.8 / 3],
    [-0.2, 0, 0.4],
    [0, 0.3, 0.7 / 3],
    [-0.5, 0.3, 0.4],
    [0.6, 0.3, 0.1 / 3],
    // k e + κ T_n > F lifts the second, F + k e + κ (T_n + F) < 0 the first
    [0.8, 0.3, 0],
    [-2.5, 0, 1],
  ])('k e = %d F, T_n = %d F: the second carries %d F', (error, slack, second) => {
    const sharing = new Sharing()
    setLoad(sharing, rowSpringsOf(1, 1, 1, error, 2), 1, slack)
    const alone = second === 0 || second === 1
    expect(sharing.rows).toBe(alone ? 1 : 2)
    // 12 digits: closed form
    expect(sharing.first).toBeCloseTo(alone ? 1 : 1 - second, 12)
    expect(sharing.last).toBeCloseTo(alone ? 1 : second, 12)
  })
})
