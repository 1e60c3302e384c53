/**
 * Which of many points no other one beats: less is better in both numbers.
 *
 * A point is beaten where another is no worse in both and better in one; equal points do not beat each other.
 * Sorted by the first number, a point is on the front where its second is below all before it: O(n log n).
 *
 * @param first, second of the points; neither NaN
 * @param count how many of them
 * @returns places of the front, by rising first number, equal points by place
 * *Source:* H. T. Kung, F. Luccio, F. P. Preparata, *On Finding the Maxima of a Set of Vectors*, J. ACM 22 (1975), two
 * dimensions.
 * @example frontOf([1, 2, 3], [3, 1, 2], 3) // [0, 1]
 */
export function frontOf(first: ArrayLike<number>, second: ArrayLike<number>, count: number): number[] {
  const order = Array.from({ length: count }, (_, place) => place)
  const one = (place: number) => first[place] ?? NaN
  const other = (place: number) => second[place] ?? NaN
  order.sort((a, b) => one(a) - one(b) || other(a) - other(b) || a - b)
  const front: number[] = []
  let lowest = Infinity
  let at = NaN
  for (const place of order) {
    if (front.length === 0 || other(place) < lowest || (other(place) === lowest && one(place) === at)) {
      front.push(place)
      lowest = other(place)
      at = one(place)
    }
  }
  return front
}

/** How many points are gathered before the beaten ones are thrown out. */
const gathered = 8_192

/** The front of points that keep coming, each with the number of its candidate. */
export class GrowingFront {
  count = 0
  first = new Float64Array(gathered)
  second = new Float64Array(gathered)
  index = new Float64Array(gathered)
  #nextThinning = gathered

  add(first: number, second: number, index: number): void {
    if (this.count >= this.first.length) this.#makeRoom()
    this.first[this.count] = first
    this.second[this.count] = second
    this.index[this.count] = index
    this.count += 1
  }

  /** Throws out what is beaten; the rest stands by rising first number, equal points by their candidates' numbers. */
  settle(): void {
    const front = frontOf(this.first, this.second, this.count)
    front.sort(
      (a, b) =>
        this.#at(this.first, a) - this.#at(this.first, b) ||
        this.#at(this.index, a) - this.#at(this.index, b),
    )
    this.first = Float64Array.from(front, (place) => this.#at(this.first, place))
    this.second = Float64Array.from(front, (place) => this.#at(this.second, place))
    this.index = Float64Array.from(front, (place) => this.#at(this.index, place))
    this.count = front.length
  }

  #at(list: Float64Array, place: number): number {
    return list[place] ?? NaN
  }

  #makeRoom(): void {
    if (this.count >= this.#nextThinning) this.settle()
    // Twice what is left, so that a front that keeps growing is settled ever more rarely.
    this.#nextThinning = Math.max(gathered, 2 * this.count)
    for (const name of ['first', 'second', 'index'] as const) {
      const grown = new Float64Array(this.#nextThinning)
      grown.set(this[name].subarray(0, this.count))
      this[name] = grown
    }
  }
}
