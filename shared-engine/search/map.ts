/** Cells of the map, across and up. */
const mapColumns = 128
const mapRows = 96

/** The span of the map, in the measures' units. */
export interface MapSpan {
  readonly low: readonly [number, number]
  readonly high: readonly [number, number]
}

/** Cells in which candidates lie: plain lists that cross threads. */
export interface MapPart {
  readonly cell: Uint32Array
  /** Candidates in the cell, and those of them that hold everything. */
  readonly count: Uint32Array
  readonly holding: Uint32Array
  /** The candidate that stands for the cell: one that holds before one that does not, then the most in hand. */
  readonly index: Float64Array
  readonly x: Float64Array
  readonly y: Float64Array
  readonly margin: Float64Array
  readonly holds: Uint8Array
}

const cells = mapColumns * mapRows

/**
 * Candidates gathered in cells of equal size, so that a map of any number of them has at most a few thousand marks. What
 * lies past the span counts to the cell at its edge, with its true place.
 */
export class SearchMap {
  readonly span: MapSpan
  readonly #used: number[] = []
  readonly #count = new Uint32Array(cells)
  readonly #holding = new Uint32Array(cells)
  readonly #index = new Float64Array(cells)
  readonly #x = new Float64Array(cells)
  readonly #y = new Float64Array(cells)
  readonly #margin = new Float64Array(cells)
  readonly #holds = new Uint8Array(cells)

  constructor(span: MapSpan) {
    this.span = span
  }

  /** Takes a candidate; one without a place on the map is left out. */
  add(x: number, y: number, index: number, margin: number, holds: boolean): void {
    if (!Number.isFinite(x) || !Number.isFinite(y)) return
    const { low, high } = this.span
    const cell = slot(y, low[1], high[1], mapRows) * mapColumns + slot(x, low[0], high[0], mapColumns)
    this.#put(cell, 1, holds ? 1 : 0, index, x, y, margin, holds ? 1 : 0)
  }

  /** Adds the cells of another part. */
  addPart(part: MapPart): void {
    const at = (list: ArrayLike<number>, place: number) => list[place] ?? 0
    for (let place = 0; place < part.cell.length; place += 1) {
      this.#put(
        at(part.cell, place),
        at(part.count, place),
        at(part.holding, place),
        at(part.index, place),
        at(part.x, place),
        at(part.y, place),
        at(part.margin, place),
        at(part.holds, place),
      )
    }
  }

  #put(
    cell: number,
    count: number,
    holding: number,
    index: number,
    x: number,
    y: number,
    margin: number,
    holds: number,
  ): void {
    const before = this.#count[cell] ?? 0
    if (before === 0) this.#used.push(cell)
    if (before === 0 || this.#isBetter(cell, index, margin, holds)) {
      this.#index[cell] = index
      this.#x[cell] = x
      this.#y[cell] = y
      this.#margin[cell] = margin
      this.#holds[cell] = holds
    }
    this.#count[cell] = before + count
    this.#holding[cell] = (this.#holding[cell] ?? 0) + holding
  }

  #isBetter(cell: number, index: number, margin: number, holds: number): boolean {
    const thereHolds = this.#holds[cell] ?? 0
    if (holds !== thereHolds) return holds > thereHolds
    const thereMargin = this.#margin[cell] ?? 0
    if (margin !== thereMargin) return margin > thereMargin
    return index < (this.#index[cell] ?? 0)
  }

  /** The cells in use, by place. */
  part(): MapPart {
    const cell = Uint32Array.from(this.#used).sort()
    const of = <List extends Uint32Array | Float64Array | Uint8Array>(list: List, into: List) => {
      cell.forEach((place, at) => (into[at] = list[place] ?? 0))
      return into
    }
    const size = cell.length
    return {
      cell,
      count: of(this.#count, new Uint32Array(size)),
      holding: of(this.#holding, new Uint32Array(size)),
      index: of(this.#index, new Float64Array(size)),
      x: of(this.#x, new Float64Array(size)),
      y: of(this.#y, new Float64Array(size)),
      margin: of(this.#margin, new Float64Array(size)),
      holds: of(this.#holds, new Uint8Array(size)),
    }
  }

  /** Forgets everything. */
  clear(): void {
    for (const cell of this.#used) this.#count[cell] = this.#holding[cell] = 0
    this.#used.length = 0
  }
}

/** Which of so many equal slots a value falls into; the first or last where it lies outside. */
function slot(value: number, low: number, high: number, count: number): number {
  if (!(high > low)) return 0
  return Math.max(0, Math.min(count - 1, Math.floor(((value - low) / (high - low)) * count)))
}
