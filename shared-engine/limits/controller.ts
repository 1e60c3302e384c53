import type { Evaluation } from '../cases/evaluation.ts'
import type { Machine } from '../machine/parts.ts'
import { caseNumber } from '../cases/case.ts'
import { rpmOf } from '../units/rpm.ts'
import { knowsSwitching } from '../motor/controller-loss.ts'
import { burstWorking, continuousWorking, labelSource } from '../workings/currents.ts'
import { controllerTemperatureWorking, overVoltsWorking } from '../workings/hot-limits.ts'
import { allMeasured, limitsOfPart, type PartLimitFacts } from './part.ts'
import { addMaximum, addTemperature, type Ledger } from './ledger.ts'

const current = { question: 'hot', sense: 'maximum', unit: 'A', kind: 'amps' } as const

const facts = {
  'controller.electrical-rpm': {
    group: 'holds',
    label: 'Electrical rpm, running free',
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
    label: 'Controller current, the most that the ground lets happen',
    group: 'holds',
    ...current,
    needs: ['controller.burstAmps'],
    working: burstWorking('controller'),
  },
  'controller.over-volts': {
    label: 'Volts at the controller',
    group: 'holds',
    question: 'hot',
    sense: 'maximum',
    unit: 'V',
    kind: 'volts',
    needs: ['controller.maxVolts'],
    working: overVoltsWorking,
  },
  'controller.current-continuous': {
    label: 'Controller current through the pattern',
    group: 'lasts',
    ...current,
    needs: ['controller.continuousAmps'],
    working: continuousWorking('controller'),
  },
  'controller.temperature': {
    label: 'Controller, hottest in the pattern',
    group: 'lasts',
    question: 'hot',
    sense: 'temperature',
    unit: 'degC',
    kind: 'temperature',
    needs: [
      'controller.thermalResistanceKPerW',
      'controller.maxTemperatureC',
      'controller.pwmKhz',
      'controller.switchingNs',
    ],
    working: controllerTemperatureWorking,
  },
} as const satisfies Readonly<Record<string, PartLimitFacts>>

export type ControllerLimitId = keyof typeof facts

/** Limits of the controller, in the ledger’s order. */
export const controllerLimits = limitsOfPart('controller', facts)

const {
  'controller.electrical-rpm': electricalRpm,
  'controller.current-burst': burst,
  'controller.over-volts': overVolts,
  'controller.current-continuous': continuous,
  'controller.temperature': temperature,
  ...unmeasured
} = controllerLimits
allMeasured(unmeasured)

/** Adds those that the machine has. *Source:* `docs/model.md` §8, rows of the same ids. */
export function measureController(ledger: Ledger, e: Evaluation, machine: Machine): void {
  const { controller, ground } = machine
  const { maxElectricalRpm, burstAmps, continuousAmps, thermalResistance, maxTemperature } = controller
  const { heat, bursts, pattern } = e
  if (maxElectricalRpm !== null) {
    const fastest = rpmOf(e.worstFreeSpeed) * machine.motor.polePairs
    addMaximum(ledger, electricalRpm, fastest, maxElectricalRpm, caseNumber.free)
  }
  if (burstAmps !== null) addMaximum(ledger, burst, bursts.motorAmps, burstAmps, bursts.motorCase)
  measureOverVolts(ledger, e, machine)
  if (continuousAmps !== null) {
    addMaximum(ledger, continuous, pattern.motorAmpsRms, continuousAmps, caseNumber.pattern)
  }
  if (thermalResistance !== null && maxTemperature !== null && knowsSwitching(controller)) {
    addTemperature(ledger, temperature, heat.controller, maxTemperature, ground.airTemperature)
  }
}

/** A full pack at rest or at the start of a stop, with half of the bus ripple on top. */
function measureOverVolts(ledger: Ledger, e: Evaluation, { controller, pack }: Machine): void {
  const allowed = Math.min(controller.maxVolts ?? Infinity, controller.busRatedVolts ?? Infinity)
  if (allowed === Infinity) return
  const braked = e.braking.packVolts > pack.fullVolts
  const volts = braked ? e.braking.packVolts : pack.fullVolts
  const ripple = Number.isNaN(e.wiring.busRipple) ? 0 : e.wiring.busRipple
  addMaximum(ledger, overVolts, volts + ripple / 2, allowed, braked ? caseNumber.brake : caseNumber.rest)
}
