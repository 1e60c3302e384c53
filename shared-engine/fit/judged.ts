import { keysOf, valueAt } from '../entries/path.ts'
import type { Build } from '../entries/schema.ts'
import type { FittedBlock, FittedEntry } from './answer.ts'
import { fitEntryOf } from './entries.ts'
import { lagOneOf, type Errors } from './errors.ts'
import { movingInAir } from './marked.ts'
import type { Prepared } from './prepare.ts'
import { ofValue, refusedAlone, type Refusal } from './refuse.ts'
import { runsZOf } from './runs-test.ts'
import { markedNote, missesNote, spinNote, type FitNote } from './sentences.ts'
import type { BlockState, Solved } from './solve.ts'

/** What is said of an entry that was solved for: told, rough, or refused by its value or its errors. */
export function judgedEntry(
  path: string,
  build: Build,
  paths: readonly string[],
  solution: Solved,
  errors: Errors,
  refusals: ReadonlyMap<string, Refusal>,
): FittedEntry {
  const at = paths.indexOf(path)
  const value = solution.values[at] ?? NaN
  const own = valueAt(build, keysOf(path))
  const refusal =
    refusals.get(path) ??
    ofValue(at, paths, value, typeof own === 'number' ? own : 0, errors) ??
    (solution.settled ? null : refusedAlone(path, 'unsettled'))
  return entryOf(path, build, { value, errors, at }, refusal)
}

/** An entry as it is answered: refused where there is a reason or nothing was found. */
export function entryOf(
  path: string,
  build: Build,
  found: { readonly value: number; readonly errors: Errors; readonly at: number } | null,
  refusal: Refusal | null,
): FittedEntry {
  const own = valueAt(build, keysOf(path))
  const head = { path, unit: fitEntryOf(path)?.unit ?? '', build: typeof own === 'number' ? own : null }
  if (refusal !== null || found === null) {
    const none = {
      value: null,
      standardError: null,
      fromTolerances: null,
      degreesOfFreedom: null,
      plusMinus: null,
    }
    return { ...head, ...none, verdict: 'refused', ...(refusal ?? refusedAlone(path, 'alone')) }
  }
  const { value, errors, at } = found
  const plusMinus = errors.plusMinus[at] ?? NaN
  const size = Math.max(Math.abs(value), Math.abs(head.build ?? 0))
  return {
    ...head,
    value,
    standardError: errors.standardErrors[at] ?? NaN,
    fromTolerances: errors.fromTolerances[at] ?? NaN,
    degreesOfFreedom: errors.degreesOfFreedom[at] ?? NaN,
    plusMinus,
    verdict: plusMinus > size / 5 ? 'rough' : 'told',
  }
}

/** How well one kind of residual agrees, after a fit of so many entries. */
export function blockOf({ block, residuals, scale, weights }: BlockState, entries: number): FittedBlock {
  const squares = residuals.reduce((sum, value) => sum + value * value, 0)
  return {
    name: block.name,
    rows: residuals.length,
    pieces: new Set(block.clusters).size,
    chiSquared: squares / Math.max(1, residuals.length - entries - block.offsets),
    scale,
    runsZ: runsZOf(residuals),
    lagOne: lagOneOf(residuals, block.clusters),
    downweighted: weights.filter((weight) => weight < 1).length,
  }
}

/** Past these a block's residuals are no noise. */
const mostChiSquared = 4
const leastRunsZ = -4

/** Of stretches that were marked, and moved in the air. */
export function markNotes(logged: Prepared): readonly FitNote[] {
  const parts = movingInAir(logged)
  return parts.length === 0 ? [] : [markedNote(parts)]
}

/** Of kinds of residuals that the model misses, and of what was left out as spinning. */
export function notesOf({ blocks }: Solved, entries: number): readonly FitNote[] {
  const spun = blocks.reduce((sum, { block }) => sum + block.spun, 0)
  const missed = blocks
    .map((state) => blockOf(state, entries))
    .filter(({ chiSquared, runsZ }) => chiSquared > mostChiSquared || runsZ < leastRunsZ)
  return [...(spun > 0 ? [spinNote(spun)] : []), ...missed.map(({ name }) => missesNote(name))]
}
