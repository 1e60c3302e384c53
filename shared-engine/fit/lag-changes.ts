import { Matrix, QrDecomposition } from 'ml-matrix'
import type { Machine } from '../machine/parts.ts'
import { sumOfSquares } from '../numeric/linear-fit.ts'
import type { Block } from './blocks/block.ts'
import { lagOneOf } from './errors.ts'
import { withoutLags, type Lag } from './lags.ts'
import type { Prepared } from './prepare.ts'
import { weightFactors, type Solved } from './solve.ts'

/**
 * What one standard error of each lag does to all residuals of a fit, one behind the other; a row that a moved log does not
 * have stays as it is.
 *
 * @param blocksOf blocks of a log
 */
export function changesByLags(
  lags: readonly Lag[],
  logged: Prepared,
  solved: Solved,
  machine: Machine,
  blocksOf: (prepared: Prepared) => readonly Block[],
): readonly (readonly number[])[] {
  return lags.map((lag) => {
    const [above, below] = [1, -1].map((sign) => {
      const seconds = lag.seconds + sign * lag.standardError
      const moved = lags.map((one) => (one === lag ? { ...lag, seconds } : one))
      return residualsByPlace(blocksOf(withoutLags(logged, moved)), machine)
    })
    return solved.blocks.flatMap(({ block }) =>
      block.places.map((place) => {
        const key = placeOf(block, place)
        const [one, other] = [above?.get(key), below?.get(key)]
        return one === undefined || other === undefined ? 0 : (one - other) / 2
      }),
    )
  })
}

const placeOf = ({ name }: Block, { segment, seconds }: Block['places'][number]) =>
  `${name} ${segment} ${seconds}`

function residualsByPlace(blocks: readonly Block[], machine: Machine): ReadonlyMap<string, number> {
  return new Map(
    blocks.flatMap((block) => {
      const residuals = block.residualsOf(machine)
      return block.places.map((place, at) => [placeOf(block, place), residuals[at] ?? 0] as const)
    }),
  )
}

/** s to both sides for the slope of the residuals with the temperature's lag. */
const little = 1
/** A lag is taken out from this many standard errors on, and from this many seconds. */
const sure = 4
const shortest = 1
/** s; more is no sensor's lag. */
const longest = 120

/**
 * How much later than already known the motor's temperature comes: the step of Gauss and Newton for a lag beside the entries
 * of the `heat` block; null where the log shows no sure one.
 *
 * A sensor on the case, or one slow by itself, reads late by about its time constant where the heat changes slowly.
 *
 * @param known s that are taken out already
 * @param blocksAt blocks of the log with a lag of the temperature taken out, s
 */
export function latenessOfHeat(
  solved: Solved,
  machine: Machine,
  known: number,
  blocksAt: (seconds: number) => readonly Block[],
): { readonly seconds: number; readonly standardError: number; readonly settled: boolean } | null {
  const factors = weightFactors(solved.blocks)
  const places = solved.blocks.flatMap(({ block }) => block.places.map((place) => [block, place] as const))
  const rows = places.flatMap(([{ name }], row) => (name === 'heat' ? [row] : []))
  if (rows.length < fewestMeans) return null
  const [above, below] = [little, -little].map((by) => residualsByPlace(blocksAt(known + by), machine))
  const late = rows.map((row) => {
    const [block, place] = places[row] ?? []
    const key = block === undefined || place === undefined ? '' : placeOf(block, place)
    const [one, other] = [above?.get(key), below?.get(key)]
    return one === undefined || other === undefined ? 0 : ((one - other) / 2 / little) * (factors[row] ?? 0)
  })
  const of = (column: readonly number[]) => rows.map((row) => column[row] ?? 0)
  const columns = [...solved.columns.map(of).filter((column) => sumOfSquares(column) > 0), late]
  const found = lastOf(columns, of(solved.weighted))
  if (found === null) return null
  // What is left once the lag is in tells how neighbours go together; with it out, it is the lag itself that does.
  const clusters = rows.map((row) => `${places[row]?.[1].segment}`)
  const r = Math.min(0.99, lagOneOf(found.left, clusters))
  const standardError = found.standardError * Math.sqrt(Math.max(1, (1 + r) / (1 - r)))
  const seconds = known - found.value
  if (!(seconds > Math.max(sure * standardError, shortest)) || seconds > longest) return null
  return { seconds, standardError, settled: Math.abs(found.value) < standardError / 10 }
}

/** Fewest means of five seconds that can show a lag. */
const fewestMeans = 20

/** The last coefficient of a straight regression with its standard error; null where the columns depend on each other. */
function lastOf(
  columns: readonly (readonly number[])[],
  said: readonly number[],
): { readonly value: number; readonly standardError: number; readonly left: readonly number[] } | null {
  const size = columns.length
  const design = new Matrix(said.map((_, row) => columns.map((column) => column[row] ?? 0)))
  const qr = new QrDecomposition(design)
  if (said.length <= size || !qr.isFullRank()) return null
  const values = qr.solve(Matrix.columnVector([...said])).to1DArray()
  const left = said.map((one, row) =>
    columns.reduce((sum, column, k) => sum - (column[row] ?? 0) * (values[k] ?? 0), one),
  )
  // The last column's length once the others are taken out of it.
  const corner = qr.upperTriangularMatrix.get(size - 1, size - 1)
  const spread = Math.sqrt(sumOfSquares(left) / (said.length - size))
  return { value: values[size - 1] ?? NaN, standardError: spread / Math.abs(corner), left }
}
