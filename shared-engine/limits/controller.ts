import type { Evaluation } from '../cases/evaluation.ts'
import type { Machine } from '../machine/parts.ts'
import { caseNumber } from '../cases/case.ts'
import { rpmOf } from '../units/rpm.ts'
import { burstWorking, continuousWorking, labelSource, temperatureWorking } from '../workings/currents.ts'
import { allMeasured, limitsOfPart, type PartLimitFacts } from './part.ts'
import { addMaximum, addTemperature, type Ledger } from './ledger.ts'

const current = { question: 'hot', sense: 'maximum', unit: 'A', kind: 'amps' } as const

const facts = {
  'controller.electrical-rpm': {
    group: 'holds',
    label: 'Electrical rpm',
    question: 'fast',
    sense: 'maximum',
    unit: 'rpm',
    kind: 'rpm',
    needs: ['controller.maxElectricalRpm'],
    working: {
      title: 'The electrical speed of the free-running motor against what the controller can switch.',
      source: labelSource,
      write: (d) => {
        d.figure('n_e', 'electricalRpm')
        d.entry('n_max', 'controller.maxElectricalRpm')
        return { actual: 'n_e', allowed: 'n_max' }
      },
    },
  },
  'controller.current-burst': {
    group: 'holds',
    label: 'Controller burst current',
    ...current,
    needs: ['controller.burstAmps'],
    working: burstWorking('controller'),
  },
  'controller.current-continuous': {
    group: 'lasts',
    label: 'Controller continuous current',
    ...current,
    needs: ['controller.continuousAmps'],
    working: continuousWorking('controller'),
  },
  'controller.temperature': {
    group: 'lasts',
    label: 'Controller temperature',
    question: 'hot',
    sense: 'temperature',
    unit: 'degC',
    kind: 'temperature',
    needs: ['controller.thermalResistanceKPerW', 'controller.maxTemperatureC'],
    working: temperatureWorking('controller', {
      title: 'The controller’s steady temperature against its limit, counted from what cools it.',
    }),
  },
} as const satisfies Readonly<Record<string, PartLimitFacts>>

export type ControllerLimitId = keyof typeof facts

/** Limits of the controller, in the ledger’s order. */
export const controllerLimits = limitsOfPart('controller', facts)

const {
  'controller.electrical-rpm': electricalRpm,
  'controller.current-burst': burst,
  'controller.current-continuous': continuous,
  'controller.temperature': temperature,
  ...unmeasured
} = controllerLimits
allMeasured(unmeasured)

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
