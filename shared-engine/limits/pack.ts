import type { Evaluation } from '../cases/evaluation.ts'
import type { Machine } from '../machine/parts.ts'
import { caseNumber } from '../cases/case.ts'
import { floorVolts } from '../reference/chemistry.ts'
import { motorModel } from '../workings/circuit.ts'
import { longRun, ratedAmps } from '../workings/currents.ts'
import { worstPackAmps } from '../workings/run.ts'
import { allMeasured, limitsOfPart, type PartLimitFacts } from './part.ts'
import { addMaximum, addMinimum, type Ledger } from './ledger.ts'

const current = { question: 'hot', sense: 'maximum', unit: 'A', kind: 'amps' } as const

const facts = {
  'pack.current-burst': {
    group: 'holds',
    label: 'Pack burst current',
    ...current,
    needs: ['pack.burstC'],
    working: {
      title: 'The pack’s greatest current of a full-throttle run against what its label allows for seconds.',
      source: `${motorModel}; the limit is the pack’s label, C rating times capacity`,
      afterTop: true,
      write: (d) => {
        worstPackAmps(d)
        ratedAmps(d, 'pack.burstC')
        return { actual: 'I_p', allowed: 'I_B' }
      },
    },
  },
  'pack.current-continuous': {
    group: 'lasts',
    label: 'Pack continuous current',
    ...current,
    needs: ['pack.continuousC'],
    working: {
      title: 'The pack’s current of a long run against what its label allows for long.',
      source: 'the limit is the pack’s label, C rating times capacity',
      assumptions: longRun,
      afterTop: true,
      write: (d) => {
        d.given(
          'q_I',
          ['fraction', 'current of a run over that at top speed'],
          d.checked.machine.service.loadShare,
        )
        d.figure('I_t', 'topPackAmps')
        d.figure('I_a', 'accessoryAmps')
        const told = ['amps', 'pack current of a long run'] as const
        d.step('I_p', told, 'q_I * (I_t - I_a) + I_a', 'accessories draw all the time')
        ratedAmps(d, 'pack.continuousC')
        return { actual: 'I_p', allowed: 'I_B' }
      },
    },
  },
  'pack.floor-voltage': {
    group: 'holds',
    label: 'Pack volts under load',
    question: 'hot',
    sense: 'minimum',
    unit: 'V',
    kind: 'volts',
    needs: [],
    working: {
      title: 'The pack’s volts at the worst moment of a run against the floor of its chemistry.',
      source: `${motorModel}; floor under load: common practice, no source`,
      afterTop: true,
      unformed: 'the pack sags to nothing at that current: it counts as over.',
      write: (d) => {
        const { build } = d.checked
        worstPackAmps(d)
        d.figure('V_oc', 'packOpenVolts')
        d.figure('R_b', 'packOhm')
        d.step('V_b', ['volts', 'pack volts under that current'], 'V_oc - I_p * R_b')
        d.entry('S', 'pack.series')
        const floor = ['volts', 'floor of one loaded cell (common practice, no source)'] as const
        d.row('v_f', 'pack.chemistry', floor, floorVolts(build.pack.chemistry))
        d.step('V_f', ['volts', 'floor of the pack'], 'S * v_f')
        return { actual: 'V_b', allowed: 'V_f' }
      },
    },
  },
} as const satisfies Readonly<Record<string, PartLimitFacts>>

export type PackLimitId = keyof typeof facts

/** Limits of the pack, in the ledger’s order. */
export const packLimits = limitsOfPart('pack', facts)

const {
  'pack.current-burst': burst,
  'pack.current-continuous': continuous,
  'pack.floor-voltage': floorVoltage,
  ...unmeasured
} = packLimits
allMeasured(unmeasured)

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
