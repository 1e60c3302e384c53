import type { Evaluation } from '../cases/evaluation.ts'
import type { Machine } from '../machine/parts.ts'
import { caseNumber } from '../cases/case.ts'
import { rpmOf } from '../units/rpm.ts'
import { burstWorking, continuousWorking, labelSource, temperatureWorking } from '../workings/currents.ts'
import { runaway } from '../workings/heat.ts'
import { allMeasured, limitsOfPart, type PartLimitFacts } from './part.ts'
import { addMaximum, addTemperature, type Ledger } from './ledger.ts'

const speed = { question: 'fast', sense: 'maximum', unit: 'rpm', kind: 'rpm', needs: [] } as const
const current = { question: 'hot', sense: 'maximum', unit: 'A', kind: 'amps' } as const

const facts = {
  'motor.free-rpm': {
    group: 'holds',
    label: 'Free-running rpm',
    ...speed,
    working: {
      title: 'The free-running speed against what the motor’s maker allows: unloaded, it must not burst.',
      source: labelSource,
      write: (d) => {
        d.figure('n', 'freeRpm')
        d.entry('n_max', 'motor.ratedMaxRpm')
        return { actual: 'n', allowed: 'n_max' }
      },
    },
  },
  'motor.loaded-rpm': {
    group: 'holds',
    label: 'Rpm at top speed',
    ...speed,
    working: {
      title: 'The motor’s speed at top speed against what its maker allows.',
      source: labelSource,
      afterTop: true,
      write: (d) => {
        d.figure('n', 'topMotorRpm')
        d.entry('n_max', 'motor.ratedMaxRpm')
        return { actual: 'n', allowed: 'n_max' }
      },
    },
  },
  'motor.current-burst': {
    group: 'holds',
    label: 'Motor burst current',
    ...current,
    needs: ['motor.burstAmps'],
    working: burstWorking('motor'),
  },
  'motor.current-continuous': {
    group: 'lasts',
    label: 'Motor continuous current',
    ...current,
    needs: ['motor.continuousAmps'],
    working: continuousWorking('motor'),
  },
  'motor.temperature': {
    group: 'lasts',
    label: 'Motor temperature',
    question: 'hot',
    sense: 'temperature',
    unit: 'degC',
    kind: 'temperature',
    needs: ['motor.thermalResistanceKPerW'],
    working: temperatureWorking('motor', {
      title: 'The winding’s steady temperature against its limit, counted from what cools it.',
      missing: runaway,
    }),
  },
} as const satisfies Readonly<Record<string, PartLimitFacts>>

export type MotorLimitId = keyof typeof facts

/** Limits of the motor, in the ledger’s order. */
export const motorLimits = limitsOfPart('motor', facts)

const {
  'motor.free-rpm': freeRpm,
  'motor.loaded-rpm': loadedRpm,
  'motor.current-burst': burst,
  'motor.current-continuous': continuous,
  'motor.temperature': temperature,
  ...unmeasured
} = motorLimits
allMeasured(unmeasured)

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
