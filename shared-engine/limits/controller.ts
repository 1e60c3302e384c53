import type { Machine } from '../machine/parts.ts'
import { caseNumber } from '../cases/case.ts'
import type { Evaluation } from '../cases/evaluation.ts'
import { rpmOf } from '../units/rpm.ts'
import { addMaximum, addTemperature, type Ledger } from './ledger.ts'
import { listedLimit, type Limit } from './limit.ts'

const current = { part: 'controller', question: 'hot', sense: 'maximum', unit: 'A', kind: 'amps' } as const

const electricalRpm = listedLimit({
  id: 'controller.electrical-rpm',
  label: 'Electrical rpm',
  part: 'controller',
  question: 'fast',
  sense: 'maximum',
  unit: 'rpm',
  kind: 'rpm',
  needs: ['controller.maxElectricalRpm'],
})
const burst = listedLimit({
  id: 'controller.current-burst',
  label: 'Controller burst current',
  ...current,
  needs: ['controller.burstAmps'],
})
const continuous = listedLimit({
  id: 'controller.current-continuous',
  label: 'Controller continuous current',
  ...current,
  needs: ['controller.continuousAmps'],
})
const temperature = listedLimit({
  id: 'controller.temperature',
  label: 'Controller temperature',
  part: 'controller',
  question: 'hot',
  sense: 'temperature',
  unit: 'degC',
  kind: 'temperature',
  needs: ['controller.thermalResistanceKPerW', 'controller.maxTemperatureC'],
})

/** Limits of the controller, in the ledger's order. */
export const controllerLimits: readonly Limit[] = [electricalRpm, burst, continuous, temperature]

/** Adds those that the machine has. *Source:* `docs/model.md` §8, rows of the same ids. */
export function measureController(ledger: Ledger, e: Evaluation, machine: Machine): void {
  const { maxElectricalRpm, burstAmps, continuousAmps, thermalResistance, maxTemperature } =
    machine.controller
  const { top, heat } = e
  if (maxElectricalRpm !== null) {
    const fastest = rpmOf(e.worstFreeSpeed) * machine.motor.polePairs
    addMaximum(ledger, electricalRpm, fastest, maxElectricalRpm, caseNumber.free)
  }
  if (burstAmps !== null) addMaximum(ledger, burst, e.restAmps, burstAmps, caseNumber.rest)
  if (continuousAmps !== null && top.exists)
    addMaximum(ledger, continuous, heat.amps, continuousAmps, caseNumber.top)
  if (thermalResistance !== null && maxTemperature !== null && top.exists) {
    addTemperature(ledger, temperature, heat.controllerTemperature, maxTemperature, heat.sink)
  }
}
