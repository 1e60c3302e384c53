import { coarse, compareLists } from './order.ts'

/** Numbers of candidates named as alternatives of a row; more are counted. */
export const mostAlternatives = 20

/** Candidates with the same figures: the one with the most in hand stands for them. */
export interface FoldedRow {
  /** What the row is ordered and distinguished by; see `Shortlist`. */
  readonly key: Float64Array
  /** The candidate shown. */
  index: number
  /** Its worst margin, of every limit. */
  margin: number
  /** Candidates in the row. */
  count: number
  /** The lowest of their numbers, ascending; one more than are named, since the one shown is among them. */
  readonly members: number[]
}

/**
 * The best rows of a search, a set number of them, best first.
 *
 * Rows are ordered by their key alone, and candidates with equal keys are one row. What is in a row therefore does not
 * depend on the order in which candidates come, or on how they were dealt out to threads: a row among the best of all
 * is among the best of any part that has a candidate of it.
 */
export class Shortlist {
  readonly rows: FoldedRow[] = []
  readonly #most: number

  /** @param most rows kept, 1 or more */
  constructor(most: number) {
    this.#most = most
  }

  /** Whether a row whose key begins with these two numbers could still get in, or fold into one that is. */
  mayTake(first: number, second: number): boolean {
    if (this.rows.length < this.#most) return true
    const last = this.rows.at(-1)
    if (last === undefined) return true
    const lastFirst = last.key[0] ?? 0
    return first < lastFirst || (first === lastFirst && second <= (last.key[1] ?? 0))
  }

  /** Takes a candidate; `key` is copied where it is kept. */
  add(key: Float64Array, index: number, margin: number): void {
    this.addRow({ key, index, margin, count: 1, members: [index] }, true)
  }

  /** Takes a row of another part of the search. */
  addRow(row: FoldedRow, copyKey = false): void {
    const at = this.#placeOf(row.key)
    const there = this.rows[at]
    if (there !== undefined && compareLists(there.key, row.key) === 0) {
      fold(there, row)
    } else if (at < this.#most) {
      this.rows.splice(at, 0, copyKey ? { ...row, key: row.key.slice() } : row)
      if (this.rows.length > this.#most) this.rows.pop()
    }
  }

  /** Place of the first row that is not before a key. */
  #placeOf(key: Float64Array): number {
    let low = 0
    let high = this.rows.length
    while (low < high) {
      const middle = (low + high) >> 1
      const row = this.rows[middle]
      if (row !== undefined && compareLists(row.key, key) < 0) low = middle + 1
      else high = middle
    }
    return low
  }
}

/** Margins that differ by rounding alone are one: another compiler's last digit must not name another candidate. */
function fold(into: FoldedRow, row: FoldedRow): void {
  const more = coarse(row.margin) - coarse(into.margin)
  if (more > 0 || (!(more < 0) && row.index < into.index)) {
    into.index = row.index
    into.margin = row.margin
  }
  into.count += row.count
  for (const member of row.members) addMember(into.members, member)
}

function addMember(members: number[], member: number): void {
  if (members.length > mostAlternatives && member > (members.at(-1) ?? 0)) return
  let at = members.length
  while (at > 0 && (members[at - 1] ?? 0) > member) at -= 1
  members.splice(at, 0, member)
  if (members.length > mostAlternatives + 1) members.pop()
}
