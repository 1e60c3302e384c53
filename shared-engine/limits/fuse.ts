import type { Evaluation } from '../cases/evaluation.ts'
import { caseNumber } from '../cases/case.ts'
import type { Machine } from '../machine/parts.ts'
import { fuseSeconds } from '../reference/heat.ts'
import { labelSource } from '../workings/currents.ts'
import { addMaximum, type Ledger } from './ledger.ts'
import { allMeasured, limitsOfPart, type PartLimitFacts } from './part.ts'

/** Share of its rating that a fuse bears for long. *Source:* common practice, no source. */
const fuseShare = 0.75

const packFacts = {
  'pack.fuse-continuous': {
    label: 'Fuse through the pattern',
    group: 'lasts',
    question: 'hot',
    sense: 'maximum',
    unit: 'A',
    kind: 'amps',
    needs: ['pack.fuseAmps'],
    working: {
      title: 'The pack’s RMS current through the pattern against what the fuse bears for long.',
      source: 'common practice, no source: a fuse bears three quarters of its rating for long',
      write: (d) => {
        d.figure('I_B', 'patternPackAmpsRms')
        d.entry('I_f', 'pack.fuseAmps')
        d.step('I_max', ['amps', 'what the fuse bears for long'], `${fuseShare} * I_f`)
        return { actual: 'I_B', allowed: 'I_max' }
      },
    },
  },
  'pack.fuse-burst': {
    label: 'Fuse through a burst',
    group: 'holds',
    question: 'hot',
    sense: 'maximum',
    unit: 's',
    kind: 'time',
    needs: ['pack.fuseAmps'],
    working: {
      title: 'How long a burst lasts against the soonest that the fuse opens at its current.',
      source: 'shortest opening times of blade fuses, ISO 8820-3, from memory',
      write: (d) => {
        d.entry('t', 'service.burstSeconds')
        d.figure('I_b', 'burstPackAmps')
        d.entry('I_f', 'pack.fuseAmps')
        const times = d.step('x', ['none', 'times its rating'], 'I_b / I_f')
        const words = 'from the table at x, straight in the logarithms of both, held at its ends'
        d.found('t_f', ['time', 'soonest opening'], words, fuseSeconds(times))
        return { actual: 't', allowed: 't_f' }
      },
    },
  },
} as const satisfies Readonly<Record<string, PartLimitFacts>>

const controllerFacts = {
  'controller.ripple-current': {
    label: 'Ripple current of the capacitors',
    group: 'lasts',
    question: 'hot',
    sense: 'maximum',
    unit: 'A',
    kind: 'amps',
    needs: ['controller.busRippleAmps'],
    working: {
      title:
        'The ripple current that the controller’s capacitors carry through the pattern, against their rating.',
      source: labelSource,
      write: (d) => {
        d.figure('I_C', 'rippleAmps')
        d.entry('I_max', 'controller.busRippleAmps')
        return { actual: 'I_C', allowed: 'I_max' }
      },
    },
  },
} as const satisfies Readonly<Record<string, PartLimitFacts>>

export type FuseLimitId = keyof typeof packFacts | keyof typeof controllerFacts

const packLimits = limitsOfPart('pack', packFacts)
const controllerLimits = limitsOfPart('controller', controllerFacts)

/** Limits of the fuse and of the capacitors, in the ledger's order. */
export const fuseLimits = { ...packLimits, ...controllerLimits }

const {
  'pack.fuse-continuous': continuous,
  'pack.fuse-burst': burst,
  'controller.ripple-current': ripple,
  ...unmeasured
} = fuseLimits
allMeasured(unmeasured)

/** Adds those that the machine has. *Source:* `docs/model.md` §8, rows of the same ids. */
export function measureFuse(ledger: Ledger, e: Evaluation, { pack, controller, service }: Machine): void {
  const { fuseAmps } = pack
  const { bursts, pattern, wiring } = e
  if (fuseAmps !== null) {
    addMaximum(ledger, continuous, pattern.packAmpsRms, fuseShare * fuseAmps, caseNumber.pattern)
    const opens = fuseSeconds(bursts.packAmps / fuseAmps)
    addMaximum(ledger, burst, service.burstSeconds, opens, bursts.packCase)
  }
  if (controller.busRippleAmps !== null)
    addMaximum(ledger, ripple, wiring.rippleAmps, controller.busRippleAmps, caseNumber.pattern)
}
