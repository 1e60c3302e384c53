import type { Evaluation } from '../cases/evaluation.ts'
import type { Machine } from '../machine/parts.ts'
import type { Build } from '../entries/schema.ts'
import { caseNumber } from '../cases/case.ts'
import { rpmOf } from '../units/rpm.ts'
import { burstWorking, continuousWorking, labelSource } from '../workings/currents.ts'
import { burstHeatWorking, motorTemperatureWorking } from '../workings/hot-limits.ts'
import { absentOf } from './limit.ts'
import { allMeasured, limitsOfPart, type PartLimitFacts } from './part.ts'
import { addMaximum, addTemperature, type Ledger } from './ledger.ts'

const speed = { question: 'fast', sense: 'maximum', unit: 'rpm', kind: 'rpm', needs: [] } as const
const current = { question: 'hot', sense: 'maximum', unit: 'A', kind: 'amps' } as const

const heatOfOne = ['motor.thermalResistanceKPerW', 'motor.heatCapacityJPerK'] as const
const capacitiesOfTwo = ['motor.windingHeatCapacityJPerK', 'motor.caseHeatCapacityJPerK'] as const

/** Whether winding and case are told apart: then the entries of one node are not read. */
const hasTwoNodes = ({ motor }: Build) =>
  motor.windingToCaseKPerW !== undefined && motor.caseToSinkKPerW !== undefined

const facts = {
  'motor.free-rpm': {
    group: 'holds',
    label: 'Motor rpm, running free at full charge',
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
    label: 'Motor rpm under load',
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
    label: 'Motor current, the most that the ground lets happen',
    group: 'holds',
    ...current,
    needs: ['motor.burstAmps'],
    working: burstWorking('motor'),
  },
  'motor.burst-heat': {
    label: 'Winding through a burst',
    group: 'holds',
    question: 'hot',
    sense: 'maximum',
    unit: 's',
    kind: 'duration',
    needs: heatOfOne,
    lacking: (build) => absentOf(build, hasTwoNodes(build) ? capacitiesOfTwo : heatOfOne),
    working: burstHeatWorking,
  },
  'motor.current-continuous': {
    label: 'Motor current through the pattern',
    group: 'lasts',
    ...current,
    needs: ['motor.continuousAmps'],
    working: continuousWorking('motor'),
  },
  'motor.temperature': {
    label: 'Winding, hottest in the pattern',
    group: 'lasts',
    question: 'hot',
    sense: 'temperature',
    unit: 'degC',
    kind: 'temperature',
    needs: ['motor.thermalResistanceKPerW'],
    working: motorTemperatureWorking,
  },
} as const satisfies Readonly<Record<string, PartLimitFacts>>

export type MotorLimitId = keyof typeof facts

/** Limits of the motor, in the ledger’s order. */
export const motorLimits = limitsOfPart('motor', facts)

const {
  'motor.free-rpm': freeRpm,
  'motor.loaded-rpm': loadedRpm,
  'motor.current-burst': burst,
  'motor.burst-heat': burstHeat,
  'motor.current-continuous': continuous,
  'motor.temperature': temperature,
  ...unmeasured
} = motorLimits
allMeasured(unmeasured)

/** Adds those that the machine has. *Source:* `docs/model.md` §8, rows of the same ids. */
export function measureMotor(ledger: Ledger, e: Evaluation, machine: Machine): void {
  const { ratedMaxRpm, burstAmps, continuousAmps, maxTemperature } = machine.motor
  const { top, heat, bursts, pattern } = e
  addMaximum(ledger, freeRpm, rpmOf(e.worstFreeSpeed), ratedMaxRpm, caseNumber.free)
  if (top.exists) addMaximum(ledger, loadedRpm, rpmOf(top.motorSpeed), ratedMaxRpm, caseNumber.top)
  if (burstAmps !== null) addMaximum(ledger, burst, bursts.motorAmps, burstAmps, bursts.motorCase)
  measureBurstHeat(ledger, e, machine)
  if (continuousAmps !== null) {
    addMaximum(ledger, continuous, pattern.motorAmpsRms, continuousAmps, caseNumber.pattern)
  }
  if (heat.hasMotor) addTemperature(ledger, temperature, heat.end.hottest, maxTemperature, heat.feed)
}

/** A burst in a jam or a pivot turn, whichever the motor bears for less; left out where it bears both for ever. */
function measureBurstHeat(ledger: Ledger, { times }: Evaluation, { service }: Machine): void {
  const { launch, pivot } = times
  const pivotFirst = pivot.warmSeconds < launch.warmSeconds || Number.isNaN(launch.warmSeconds)
  const seconds = pivotFirst ? pivot.warmSeconds : launch.warmSeconds
  if (Number.isNaN(seconds)) return
  addMaximum(
    ledger,
    burstHeat,
    service.burstSeconds,
    seconds,
    pivotFirst ? caseNumber.pivot : caseNumber.launch,
  )
}
