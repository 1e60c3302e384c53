import type { Machine } from '../machine/parts.ts'
import { caseNumber } from '../cases/case.ts'
import type { Evaluation } from '../cases/evaluation.ts'
import { addMaximum, addMinimum, type Ledger } from './ledger.ts'
import { listedLimit, type Limit } from './limit.ts'

const current = { part: 'pack', question: 'hot', sense: 'maximum', unit: 'A', kind: 'amps' } as const

const burst = listedLimit({
  id: 'pack.current-burst',
  label: 'Pack burst current',
  ...current,
  needs: ['pack.burstC'],
})
const continuous = listedLimit({
  id: 'pack.current-continuous',
  label: 'Pack continuous current',
  ...current,
  needs: ['pack.continuousC'],
})
const floorVoltage = listedLimit({
  id: 'pack.floor-voltage',
  label: 'Pack volts under load',
  part: 'pack',
  question: 'hot',
  sense: 'minimum',
  unit: 'V',
  kind: 'volts',
  needs: [],
})

/** Limits of the pack, in the ledger's order. */
export const packLimits: readonly Limit[] = [burst, continuous, floorVoltage]

/** Adds those that the machine has. *Source:* `docs/model.md` §8, rows of the same ids. */
export function measurePack(ledger: Ledger, e: Evaluation, machine: Machine): void {
  if (!e.top.exists) return
  const { burstAmps, continuousAmps, floorVolts } = machine.pack
  if (burstAmps !== null) addMaximum(ledger, burst, e.runPackAmps, burstAmps, caseNumber.run)
  if (continuousAmps !== null) {
    const amps = machine.service.loadShare * e.top.packDriveAmps + e.accessoryAmps
    addMaximum(ledger, continuous, amps, continuousAmps, caseNumber.top)
  }
  addMinimum(ledger, floorVoltage, e.runPackVolts, floorVolts, caseNumber.run)
}
