import type { Shape } from '../scene.ts'
import { px } from './outline.ts'
import type { DrawnPart, Room } from './part.ts'

const outerWidth = 74
const mostHalf = 44
/** A cell narrower than this (px) is only a line. */
const leastCell = 3.4

interface Grid {
  readonly columns: number
  readonly rows: number
  readonly cell: number
}

/** The arrangement in which `cells` cells (twice as tall as wide) get the largest in a box. */
function gridOf(cells: number, width: number, height: number): Grid {
  let best: Grid = { columns: 1, rows: cells, cell: 0 }
  for (let rows = 1; rows <= Math.min(cells, 24); rows++) {
    const columns = Math.ceil(cells / rows)
    const cell = Math.min(width / columns, height / rows / 2)
    if (cell > best.cell) best = { columns, rows, cell }
  }
  return best
}

function cellPath(x: number, y: number, cell: number): string {
  const width = cell * 0.72
  const height = 2 * cell * 0.76
  const nub = cell * 0.26
  const left = x + (cell - width) / 2
  const top = y + 2 * cell * 0.14
  const middle = left + width / 2
  return (
    `M${px(left)} ${px(top)}H${px(middle - nub / 2)}V${px(top - 1.2)}H${px(middle + nub / 2)}V${px(top)}` +
    `H${px(left + width)}V${px(top + height)}H${px(left)}Z`
  )
}

/** Every cell of the pack where they can be told apart, else its size in words; a symbol, not to scale. */
export function drawPack(series: number, parallel: number, room: Room): DrawnPart {
  const half = Math.min(mostHalf, room.half)
  const cells = series * parallel
  const grid = gridOf(cells, outerWidth - 10, 2 * half - 10)
  const words = parallel > 1 ? `${series}S ${parallel}P` : `${series}S`
  const shapes: Shape[] = [
    {
      shape: 'path',
      d: `M0 ${-half}H${outerWidth}V${half}H0Z`,
      fill: 'paper',
      stroke: { role: 'ink', width: 1.1 },
    },
  ]
  if (grid.cell >= leastCell) {
    const left = (outerWidth - grid.columns * grid.cell) / 2
    const top = -grid.rows * grid.cell
    const paths = Array.from({ length: cells }, (_, index) => {
      const column = index % grid.columns
      const row = Math.floor(index / grid.columns)
      return cellPath(left + column * grid.cell, top + row * 2 * grid.cell, grid.cell)
    })
    shapes.push({ shape: 'path', d: paths.join(''), stroke: { role: 'ink', width: 0.8 } })
  } else {
    const at = { x: outerWidth / 2, y: 5 }
    shapes.push({ shape: 'text', at, text: words, size: 15, role: 'ink', anchor: 'middle' })
  }
  return {
    shapes,
    wheels: [],
    loops: [],
    width: outerWidth,
    middle: outerWidth / 2,
    entry: 0,
    exit: outerWidth,
    description: `${series} cell${series === 1 ? '' : 's'} in series, ${parallel} in parallel`,
    scale: null,
  }
}
