import type { Evaluation } from '../cases/evaluation.ts'
import { caseNumber } from '../cases/case.ts'
import type { Machine, StepDownPart } from '../machine/parts.ts'
import { voltsLeft } from '../pack/step-down.ts'
import { labelSource } from '../workings/currents.ts'
import type { LimitWorking } from '../workings/limit.ts'
import { loadsOf } from '../workings/wires.ts'
import { addMaximum, addMinimum, type Ledger } from './ledger.ts'
import { listedLimit, type Limit, type LimitFacts } from './limit.ts'

const checks = ['current', 'peak', 'brown-out', 'input'] as const
type SupplyCheck = (typeof checks)[number]

/** Limits of step-down supplies and of accessories on the bare pack; they count from 1. */
export type SupplyLimitId = `stepdown.${number}.${SupplyCheck}` | `accessory.${number}.over-volts`

/** Most supplies and accessories of the build's schema. */
const mostSupplies = 6
const mostAccessories = 20

type OwnFacts = Pick<LimitFacts, 'label' | 'group' | 'sense' | 'unit' | 'kind'> & {
  readonly needs: (path: string) => readonly string[]
  readonly working: (index: number) => LimitWorking
}

const most = { sense: 'maximum', unit: 'A', kind: 'amps' } as const
const least = { sense: 'minimum', unit: 'V', kind: 'volts', group: 'holds' } as const

const facts: Readonly<Record<SupplyCheck, OwnFacts>> = {
  current: {
    label: 'all its loads',
    group: 'lasts',
    ...most,
    needs: () => [],
    working: (index) => ({
      title: 'What all loads draw from the supply against what it gives for long.',
      source: labelSource,
      write: (d) => {
        const sum = loadsOf(d, index, 'watts')
        d.entry('V', `stepDowns.${index}.volts`)
        d.step('I', ['amps', 'current of all loads'], `(${sum}) / V`)
        d.entry('I_max', `stepDowns.${index}.amps`)
        return { actual: 'I', allowed: 'I_max' }
      },
    }),
  },
  peak: {
    label: 'all peaks at once',
    group: 'holds',
    ...most,
    needs: () => [],
    working: (index) => ({
      title: 'What all loads ask for at their peaks, at once, against what the supply gives for a moment.',
      source: labelSource,
      write: (d) => {
        const sum = loadsOf(d, index, 'peakWatts')
        d.entry('V', `stepDowns.${index}.volts`)
        d.step('I', ['amps', 'current of all peaks'], `(${sum}) / V`)
        d.entry('I_p', `stepDowns.${index}.peakAmps`)
        return { actual: 'I', allowed: 'I_p' }
      },
    }),
  },
  'brown-out': {
    label: 'volts left at the receiver',
    ...least,
    needs: (path) => [`${path}.lowestVolts`],
    working: (index) => ({
      title: 'The volts left at the loads with all peaks at once, against the least that they work at.',
      source: 'Ohm’s law',
      assumptions: [
        'Beyond its peak a supply passes no more, and its volts fall with the share that is missing.',
      ],
      write: (d) => {
        const told = ['volts', 'volts left at the loads'] as const
        d.entry('V', `stepDowns.${index}.volts`)
        if ((d.checked.machine.stepDowns[index]?.peakLoadAmps ?? 0) > 0) {
          d.step('I', ['amps', 'current of all peaks'], `(${loadsOf(d, index, 'peakWatts')}) / V`)
          d.entry('I_p', `stepDowns.${index}.peakAmps`)
          d.entry('R_o', `stepDowns.${index}.outputMilliohm`)
          d.step('V_l', told, 'V * min(1, I_p / I) - min(I, I_p) * R_o')
        } else d.step('V_l', told, 'V', 'nothing hangs on it')
        d.entry('V_min', `stepDowns.${index}.lowestVolts`)
        return { actual: 'V_l', allowed: 'V_min' }
      },
    }),
  },
  input: {
    label: 'volts left for it',
    ...least,
    needs: (path) => [`${path}.minimumInputVolts`],
    working: inputWorking,
  },
}

function inputWorking(index: number): LimitWorking {
  return {
    title:
      'The pack’s volts under its greatest burst or in a spin-up, against the least that the supply works from.',
    source: labelSource,
    write: (d, row) => {
      const { bursts } = d.checked.evaluation
      if (row.case === 'spin-up') {
        const told = ['volts', 'pack volts as the track begins to spin'] as const
        d.given('V_s', told, bursts.spinUpVolts)
      } else d.figure('V_s', 'burstPackVolts')
      d.step('V_B', ['volts', 'pack volts at their lowest'], 'V_s')
      d.entry('V_min', `stepDowns.${index}.minimumInputVolts`)
      return { actual: 'V_B', allowed: 'V_min' }
    },
  }
}

const made = (check: SupplyCheck): readonly Limit[] =>
  Array.from({ length: mostSupplies }, (_, index) => {
    const { label, group, sense, unit, kind, needs, working } = facts[check]
    return listedLimit({
      id: `stepdown.${index + 1}.${check}`,
      label: `Step-down ${index + 1}, ${label}`,
      group,
      part: 'accessories',
      question: 'hot',
      sense,
      unit,
      kind,
      needs: needs(`stepDowns.${index}`),
      working: working(index),
    })
  })

const limits = {
  current: made('current'),
  peak: made('peak'),
  'brown-out': made('brown-out'),
  input: made('input'),
} as const satisfies Record<SupplyCheck, readonly Limit[]>

const overVolts: readonly Limit[] = Array.from({ length: mostAccessories }, (_, index) =>
  listedLimit({
    id: `accessory.${index + 1}.over-volts`,
    label: `Accessory ${index + 1} on the bare pack`,
    group: 'holds',
    part: 'accessories',
    question: 'hot',
    sense: 'maximum',
    unit: 'V',
    kind: 'volts',
    needs: [`accessories.${index}.maxVolts`],
    working: {
      title: 'The full pack’s volts against what the accessory stands.',
      source: labelSource,
      missing: ({ build }) =>
        build.accessories[index]?.stepDown === undefined
          ? null
          : { why: 'it hangs on a step-down supply and not on the bare pack.' },
      write: (d) => {
        d.given('V_full', ['volts', 'pack volts at rest, full'], d.checked.machine.pack.fullVolts)
        d.entry('V_max', `accessories.${index}.maxVolts`)
        return { actual: 'V_full', allowed: 'V_max' }
      },
    },
  }),
)

/** Limits of all supplies and accessories that a build may hold. *Source:* `docs/model.md` §8. */
export const supplyLimits: readonly Limit[] = [...checks.flatMap((check) => limits[check]), ...overVolts]

/** Limits of the first so many. */
export function limitsOfSupplies(supplies: number, accessories: number): readonly Limit[] {
  return [...checks.flatMap((check) => limits[check].slice(0, supplies)), ...overVolts.slice(0, accessories)]
}

/** Adds those that the machine has. */
export function measureSupplies(ledger: Ledger, e: Evaluation, machine: Machine): void {
  const { stepDowns, accessories, pack } = machine
  for (let index = 0; index < stepDowns.length; index += 1) {
    const supply = stepDowns[index]
    if (supply !== undefined) measureSupply(ledger, e, supply, index)
  }
  for (let index = 0; index < accessories.converters.length; index += 1) {
    const allowed = accessories.converters[index]?.maxVolts ?? null
    const limit = overVolts[index]
    if (allowed !== null && limit !== undefined)
      addMaximum(ledger, limit, pack.fullVolts, allowed, caseNumber.rest)
  }
}

function measureSupply(ledger: Ledger, { bursts }: Evaluation, supply: StepDownPart, index: number): void {
  const current = limits.current[index]
  const peak = limits.peak[index]
  const brownOut = limits['brown-out'][index]
  const input = limits.input[index]
  if (current === undefined || peak === undefined || brownOut === undefined || input === undefined) return
  addMaximum(ledger, current, supply.loadAmps, supply.amps, caseNumber.build)
  addMaximum(ledger, peak, supply.peakLoadAmps, supply.peakAmps, caseNumber.build)
  if (supply.lowestVolts !== null) {
    const left = voltsLeft(supply, supply.peakLoadAmps)
    addMinimum(ledger, brownOut, left, supply.lowestVolts, caseNumber.build)
  }
  if (supply.minimumInputVolts === null) return
  const spins = bursts.spinUpVolts < bursts.packVolts
  const volts = spins ? bursts.spinUpVolts : bursts.packVolts
  addMinimum(ledger, input, volts, supply.minimumInputVolts, spins ? caseNumber['spin-up'] : bursts.packCase)
}
