import { caseNumber } from '../cases/case.ts'
import type { Evaluation } from '../cases/evaluation.ts'
import { addMaximum, addMinimum, type Ledger } from './ledger.ts'
import { listedLimit, type Limit } from './limit.ts'

const force = { part: 'vehicle', question: 'hold', unit: 'N', kind: 'force' } as const

const frontLift = listedLimit({
  id: 'vehicle.front-lift',
  label: 'Front lifting',
  ...force,
  sense: 'maximum',
  needs: ['vehicle.cgHeightMm', 'vehicle.cgAheadMm'],
})
const start = listedLimit({
  id: 'vehicle.start',
  label: 'Starting from rest',
  ...force,
  sense: 'minimum',
  needs: [],
})
const pivotTurn = listedLimit({
  id: 'vehicle.pivot-turn',
  label: 'Turning on the spot',
  ...force,
  sense: 'minimum',
  needs: ['vehicle.gaugeMm', 'vehicle.contactLengthMm', 'ground.turnFriction'],
})

/** Limits of the whole machine, in the ledger's order. */
export const vehicleLimits: readonly Limit[] = [frontLift, start, pivotTurn]

/** Adds those that the machine has. *Source:* `docs/model.md` §8, rows of the same ids. */
export function measureVehicle(ledger: Ledger, e: Evaluation): void {
  const { startThrust, footing, level } = e
  if (!Number.isNaN(e.frontLiftThrust)) {
    addMaximum(ledger, frontLift, e.frontLiftPush, e.frontLiftThrust, caseNumber.rest)
  }
  addMinimum(
    ledger,
    start,
    Math.min(startThrust, footing.gripThrust),
    footing.standingResistance,
    caseNumber.rest,
  )
  if (!Number.isNaN(e.pivotThrust)) {
    addMinimum(ledger, pivotTurn, Math.min(startThrust, level.gripThrust) / 2, e.pivotThrust, caseNumber.rest)
  }
}
