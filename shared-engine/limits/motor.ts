import type { Machine } from '../machine/parts.ts'
import { caseNumber } from '../cases/case.ts'
import type { Evaluation } from '../cases/evaluation.ts'
import { rpmOf } from '../units/rpm.ts'
import { addMaximum, addTemperature, type Ledger } from './ledger.ts'
import { listedLimit, type Limit } from './limit.ts'

const speed = { part: 'motor', question: 'fast', sense: 'maximum', unit: 'rpm', kind: 'rpm' } as const
const current = { part: 'motor', question: 'hot', sense: 'maximum', unit: 'A', kind: 'amps' } as const

const freeRpm = listedLimit({ id: 'motor.free-rpm', label: 'Free-running rpm', ...speed, needs: [] })
const loadedRpm = listedLimit({ id: 'motor.loaded-rpm', label: 'Rpm at top speed', ...speed, needs: [] })
const burst = listedLimit({
  id: 'motor.current-burst',
  label: 'Motor burst current',
  ...current,
  needs: ['motor.burstAmps'],
})
const continuous = listedLimit({
  id: 'motor.current-continuous',
  label: 'Motor continuous current',
  ...current,
  needs: ['motor.continuousAmps'],
})
const temperature = listedLimit({
  id: 'motor.temperature',
  label: 'Motor temperature',
  part: 'motor',
  question: 'hot',
  sense: 'temperature',
  unit: 'degC',
  kind: 'temperature',
  needs: ['motor.thermalResistanceKPerW'],
})

/** Limits of the motor, in the ledger's order. */
export const motorLimits: readonly Limit[] = [freeRpm, loadedRpm, burst, continuous, temperature]

/** Adds those that the machine has. *Source:* `docs/model.md` §8, rows of the same ids. */
export function measureMotor(ledger: Ledger, e: Evaluation, machine: Machine): void {
  const { ratedMaxRpm, burstAmps, continuousAmps, thermalResistance, maxTemperature } = machine.motor
  const { top, heat } = e
  addMaximum(ledger, freeRpm, rpmOf(e.worstFreeSpeed), ratedMaxRpm, caseNumber.free)
  if (top.exists) addMaximum(ledger, loadedRpm, rpmOf(top.motorSpeed), ratedMaxRpm, caseNumber.top)
  if (burstAmps !== null) addMaximum(ledger, burst, e.restAmps, burstAmps, caseNumber.rest)
  if (continuousAmps !== null && top.exists)
    addMaximum(ledger, continuous, heat.amps, continuousAmps, caseNumber.top)
  if (thermalResistance !== null && top.exists) {
    addTemperature(ledger, temperature, heat.motorTemperature, maxTemperature, heat.sink)
  }
}
