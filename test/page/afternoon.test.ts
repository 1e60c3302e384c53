import { describe, expect, it } from 'vitest'
import { completeBuild } from '../../shared-engine/index.ts'
import { measure } from '../../shared-engine/measure/measure.ts'
import { nextReadings } from '../../shared-engine/measure/next.ts'
import { readReadingsValue } from '../../shared-engine/measure/read.ts'
import { testsTelling } from '../../shared-engine/measure/tells.ts'
import {
  uncertaintyOf,
  type Uncertainty,
  type UncertainLimit,
} from '../../shared-engine/uncertainty/uncertainty.ts'
import { takeMeasured } from '../../src-renderer/fields/edits.ts'
import { afternoons, type Step } from './afternoon-steps.ts'
import { demoBuild, workspaceWith } from './states.ts'

// Every guess of a demo replaced by readings, taken into the build as the window does it: the bands shrink.

const drawn = (build: Parameters<typeof uncertaintyOf>[0]) => uncertaintyOf(build, { samples: 100, seed: 5 })

/** Band of actual over allowed, as a part of itself: what is left of a doubt whether a limit is near or far. */
const bandOf = ({ margin5, margin50, margin95 }: UncertainLimit) =>
  ((margin95 ?? NaN) - (margin5 ?? NaN)) / (1 - (margin50 ?? NaN))

/** Limits that an entry moves more than all others together would by chance, with their bands. */
function movedBy({ limits }: Uncertainty, paths: readonly string[]): ReadonlyMap<string, number> {
  const strong = limits.filter(({ influences }) =>
    influences.some(
      ({ path, rankCorrelation }) => paths.includes(path) && Math.abs(rankCorrelation ?? 0) > 0.5,
    ),
  )
  return new Map(strong.map((limit) => [limit.id, bandOf(limit)]))
}

function readAndTaken(workspace: ReturnType<typeof workspaceWith>['workspace'], step: Step): number {
  const build = completeBuild(workspace.session.stored)
  const { test, path, readings } = step
  const document = { format: 'pitchline-readings', version: 1, test, ...readings }
  const read = readReadingsValue(test, document, build)
  if (!read.ok) throw new Error(JSON.stringify(read.mistakes))
  const measured = measure(read.value, build)
  if (!measured.ok) throw new Error(JSON.stringify(measured.mistakes))
  const result = measured.value.results.find((one) => one.path === path)
  if (!result || result.value === null || result.plusMinus === null) throw new Error(path)
  expect(result.verdict).toBe('good')
  expect(takeMeasured(workspace, { ...result, origin: measured.value.origin, from: 'a measurement' })).toBe(
    '',
  )
  // Nothing of the result is far from what the readings come to by hand, and its tolerance says by how much.
  expect(Math.abs(result.value - step.byHand)).toBeLessThan(result.plusMinus)
  return result.value
}

describe.each(Object.entries(afternoons))('an afternoon with the %s', (name, steps) => {
  const { workspace } = workspaceWith([])
  const { session } = workspace
  session.open(demoBuild(name), true)
  const build = () => completeBuild(session.stored)
  const guesses = () =>
    Object.entries(build().origins).flatMap(([path, origin]) => (origin === 'guessed' ? [path] : []))

  it('leaves no guess, and each limit that a guess moved is known better', () => {
    const before = drawn(build())
    expect(steps.map(({ guessed }) => guessed)).toEqual(expect.arrayContaining(guesses()))
    for (const step of steps) {
      expect(testsTelling(step.guessed)).toContain(step.test)
      const value = readAndTaken(workspace, step)
      expect(Number(session.entry(step.path))).toBeCloseTo(value, -Math.floor(Math.log10(value)) + 1)
      expect(session.stored.origins?.[step.path]).toBe('measured')
    }
    expect(guesses()).toEqual([])
    const after = drawn(build())
    const moved = movedBy(
      before,
      steps.flatMap(({ guessed, path }) => [guessed, path]),
    )
    expect(moved.size).toBeGreaterThan(8)
    const wider = after.limits.filter((limit) => bandOf(limit) >= (moved.get(limit.id) ?? Infinity))
    expect(wider.map(({ id }) => id)).toEqual([])
    const halved = after.limits.filter((limit) => bandOf(limit) < (moved.get(limit.id) ?? 0) / 2)
    expect(halved.length).toBeGreaterThan(2)
  })

  it('is taken back step by step, each by its name', () => {
    for (const _step of steps) {
      expect(session.history.undoName).toMatch(/^take .* from a measurement$/)
      session.history.undo()
    }
    expect(session.stored).toEqual(demoBuild(name))
  })
})

it('what is worth measuring next is of the worst limit that a reading can tell something of', () => {
  const build = completeBuild(demoBuild('culvert-crawler'))
  const { limits } = drawn(build)
  const next = nextReadings({ limits })
  expect(next.length).toBeGreaterThan(0)
  const before = limits.slice(
    0,
    limits.findIndex(({ id }) => id === next[0]?.limit),
  )
  for (const { influences } of before)
    for (const { path, band, bandIfHalved } of influences)
      expect(testsTelling(path).length === 0 || (bandIfHalved ?? Infinity) >= (band ?? 0), path).toBe(true)
})
