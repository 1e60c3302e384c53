import type { Build } from '../entries/schema.ts'
import { machineOf } from '../machine/machine.ts'
import { fitEntryOf } from './entries.ts'
import { blockOf } from './judged.ts'
import { latenessOfHeat } from './lag-changes.ts'
import { lagsOf, withoutLags, type Lag } from './lags.ts'
import { machinesOf } from './model.ts'
import { carriedOut, planOf } from './plan.ts'
import type { Prepared } from './prepare.ts'
import { refusedAlone } from './refuse.ts'

/** s of lag that the search for the temperature's begins from. */
const lagStarts = [0, 5, 10, 20, 40, 80]
const mostLagRounds = 5
/** Past this a temperature may come late. */
const worthALook = 2

const carriedAt = (build: Build, prepared: Prepared, asked: readonly string[]) => {
  const plan = planOf(build, prepared, asked)
  return { plan, carried: carriedOut(plan) }
}

/** How well the temperature is met with a lag taken out: the scale of what is left; infinite where it is not met at all. */
function leftOfHeat(build: Build, logged: Prepared, asked: readonly string[], seconds: number): number {
  const moved = withoutLags(logged, [{ channel: 'motorCelsius', seconds, standardError: 0 }])
  const states = carriedAt(build, moved, asked).carried.solution?.blocks ?? []
  return states.find(({ block }) => block.name === 'heat')?.scale ?? Infinity
}

/** A plan carried through with what comes late taken out: currents first, then the temperature until it comes to rest. */
function carriedWithLags(build: Build, logged: Prepared, asked: readonly string[]) {
  const currents: readonly Lag[] = lagsOf(logged, machineOf(build), build.pack.chemistry)
  const plain = { lags: currents, ...carriedAt(build, withoutLags(logged, currents), asked) }
  const heat = plain.carried.solution?.blocks.find(({ block }) => block.name === 'heat')
  if (heat === undefined || blockOf(heat, plain.carried.paths.length).chiSquared < worthALook) return plain
  const lump = asked.filter((path) => fitEntryOf(path)?.block === 'heat')
  const left = lagStarts.map((seconds) => leftOfHeat(build, withoutLags(logged, currents), lump, seconds))
  let known = lagStarts[left.indexOf(Math.min(...left))] ?? 0
  for (let round = 0; round < mostLagRounds; round += 1) {
    const withHeat = (seconds: number, standardError = 0): readonly Lag[] => [
      ...currents,
      { channel: 'motorCelsius', seconds, standardError },
    ]
    const { plan, carried } = carriedAt(build, withoutLags(logged, withHeat(known)), asked)
    if (carried.solution === null) return plain
    const machine = machinesOf(plan.base, carried.paths)(carried.solution.values)
    const found = latenessOfHeat(
      carried.solution,
      machine,
      known,
      (seconds) => planOf(build, withoutLags(logged, withHeat(seconds)), asked).blocks,
    )
    if (found === null) return plain
    if (found.settled) return { plan, carried, lags: withHeat(known, found.standardError) }
    known = found.seconds
  }
  return plain
}

const isOfHeat = (path: string) => fitEntryOf(path)?.block === 'heat'

/**
 * As {@link carriedWithLags}, but for a temperature that finds no rest: its entries are left as they are, and the others
 * solved for alone, which hang on it by the warmth of the winding only.
 */
export function carriedToRest(build: Build, logged: Prepared, asked: readonly string[]) {
  const whole = { ...carriedWithLags(build, logged, asked), solvedFor: asked }
  const others = asked.filter((path) => !isOfHeat(path))
  if (whole.carried.solution?.settled !== false || others.length === asked.length || others.length === 0)
    return whole
  const rest = { ...carriedWithLags(build, logged, others), solvedFor: others }
  if (rest.carried.solution?.settled !== true) return whole
  const restless = asked.filter(isOfHeat).map((path) => [path, refusedAlone(path, 'unsettled')] as const)
  const refusals = new Map([...rest.carried.refusals, ...restless, ...whole.plan.refusals])
  return { ...rest, carried: { ...rest.carried, refusals } }
}
