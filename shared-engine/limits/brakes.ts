import type { Evaluation } from '../cases/evaluation.ts'
import type { Machine } from '../machine/parts.ts'
import { caseNumber } from '../cases/case.ts'
import { brakeHoldWorking, parkWorking } from '../workings/brake-limits.ts'
import { allMeasured, limitsOfPart, type PartLimitFacts } from './part.ts'
import { addMinimum, type Ledger } from './ledger.ts'

const force = { question: 'hold', sense: 'minimum', unit: 'N', kind: 'force' } as const

const facts = {
  'vehicle.brake-hold': {
    label: 'Brakes hold the speed downhill',
    group: 'holds',
    ...force,
    needs: [],
    working: brakeHoldWorking,
  },
  'vehicle.park': {
    label: 'Wheel brake holds on the slope',
    group: 'mishap',
    ...force,
    needs: ['vehicle.brakeForceN'],
    working: parkWorking,
  },
} as const satisfies Readonly<Record<string, PartLimitFacts>>

export type BrakeLimitId = keyof typeof facts

/** Limits of the brakes, in the ledger’s order. */
export const brakeLimits = limitsOfPart('vehicle', facts)

const { 'vehicle.brake-hold': hold, 'vehicle.park': park, ...unmeasured } = brakeLimits
allMeasured(unmeasured)

/** Adds those that the machine has. *Source:* `docs/model.md` §8, rows of the same ids. */
export function measureBrakes(ledger: Ledger, e: Evaluation, { vehicle, track }: Machine): void {
  const { footing, braking } = e
  if (!Number.isNaN(braking.holdForce)) {
    addMinimum(ledger, hold, braking.holdForce, braking.holdAsked, caseNumber.pattern)
  }
  const asked = footing.standingResistance - footing.groundResistance
  if (!(vehicle.brakeForce > 0) || !(asked > 0)) return
  const held = Math.min(footing.gripThrust, vehicle.brakeForce + track.internalDrag)
  addMinimum(ledger, park, held + footing.groundResistance, asked, caseNumber.rest)
}
