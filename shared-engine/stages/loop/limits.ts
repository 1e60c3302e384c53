import type { StageLimitFacts } from '../../limits/stage-kind.ts'
import type { Draft } from '../../workings/draft.ts'
import type { ComparedRow, LimitWorking } from '../../workings/limit.ts'
import { driverSpeed } from '../../workings/stage-duty.ts'

// What belts and chains have in common: one limit of their pull, and the line on which they run.

/** Facts of the pull's limit: the same for a belt and a chain. */
export const pullFacts = {
  label: 'Belt or chain pull, for long',
  sense: 'maximum',
  unit: 'N',
  kind: 'force',
  needs: [],
} as const satisfies Partial<StageLimitFacts>

/** Facts of the limit of a pull that comes once. */
export const peakFacts = {
  ...pullFacts,
  group: 'holds',
  label: 'Belt or chain pull, once',
} as const satisfies Partial<StageLimitFacts>

/** Working of the pull's limit of the reduction of a number; only what it compares is a belt's or a chain's own. */
export function pullWorking(number: number, write: LimitWorking['write']): LimitWorking {
  return {
    title: `The pull of the belt or chain of stage ${number} against what it may carry.`,
    source: 'torque over the driver’s pitch radius',
    unformed:
      'the belt’s own mass takes all that it may carry, or too few teeth are in mesh: it counts as over.',
    write,
  }
}

/** `r_a` and `v_k`: radius and speed of the driver’s pitch line. */
export function pitchLine(d: Draft, number: number, row: ComparedRow, expression: string): void {
  driverSpeed(d, number, row.case)
  d.step('r_a', ['length', 'pitch radius of the driver'], expression)
  d.step('v_k', ['speed', 'speed of the pitch line'], 'omega_k * r_a')
}
