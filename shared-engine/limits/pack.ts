import type { Evaluation } from '../cases/evaluation.ts'
import type { Machine } from '../machine/parts.ts'
import { caseNumber } from '../cases/case.ts'
import {
  chargeAmpsWorking,
  chargeVoltsWorking,
  coldPackWorking,
  floorVoltsWorking,
  packBurstWorking,
  packContinuousWorking,
  packTemperatureWorking,
  spinUpVoltsWorking,
} from '../workings/pack-limits.ts'
import { allMeasured, limitsOfPart, type PartLimitFacts } from './part.ts'
import { addColdness, addMaximum, addMinimum, addTemperature, type Ledger } from './ledger.ts'

const current = { question: 'hot', sense: 'maximum', unit: 'A', kind: 'amps' } as const
const volts = { question: 'hot', unit: 'V', kind: 'volts', needs: [] } as const
const degrees = { question: 'hot', unit: 'degC', kind: 'temperature', needs: [] } as const

const facts = {
  'pack.current-burst': {
    label: 'Pack current, the most that the ground lets happen',
    group: 'holds',
    ...current,
    needs: ['pack.burstC'],
    working: packBurstWorking,
  },
  'pack.floor-voltage': {
    label: 'Pack volts under that current',
    group: 'holds',
    sense: 'minimum',
    ...volts,
    working: floorVoltsWorking,
  },
  'pack.spin-up-volts': {
    label: 'Pack volts in a spin-up',
    group: 'holds',
    sense: 'minimum',
    ...volts,
    working: spinUpVoltsWorking,
  },
  'pack.charge-volts': {
    label: 'Pack volts while braking, full pack',
    group: 'holds',
    sense: 'maximum',
    ...volts,
    working: chargeVoltsWorking,
  },
  'pack.cold': {
    label: 'Pack in the cold',
    group: 'holds',
    sense: 'coldness',
    ...degrees,
    working: coldPackWorking,
  },
  'pack.current-continuous': {
    label: 'Pack current through the pattern',
    group: 'lasts',
    ...current,
    needs: ['pack.continuousC'],
    working: packContinuousWorking,
  },
  'pack.temperature': {
    label: 'Pack at the end of a charge',
    group: 'lasts',
    sense: 'temperature',
    ...degrees,
    working: packTemperatureWorking,
  },
  'pack.charge-current': {
    label: 'Charging current while braking',
    group: 'lasts',
    ...current,
    needs: ['pack.chargeC'],
    working: chargeAmpsWorking,
  },
} as const satisfies Readonly<Record<string, PartLimitFacts>>

export type PackLimitId = keyof typeof facts

/** Limits of the pack, in the ledger’s order. */
export const packLimits = limitsOfPart('pack', facts)

const {
  'pack.current-burst': burst,
  'pack.floor-voltage': floorVoltage,
  'pack.spin-up-volts': spinUpVolts,
  'pack.charge-volts': chargeVolts,
  'pack.cold': cold,
  'pack.current-continuous': continuous,
  'pack.temperature': temperature,
  'pack.charge-current': chargeCurrent,
  ...unmeasured
} = packLimits
allMeasured(unmeasured)

/** Coldest cells that may give current, °C. *Source:* common practice, no source. */
const coldest = -20

/** Adds those that the machine has. *Source:* `docs/model.md` §8, rows of the same ids. */
export function measurePack(ledger: Ledger, e: Evaluation, machine: Machine): void {
  const { pack, service } = machine
  const { burstAmps, continuousAmps, floorVolts } = pack
  const { bursts, pattern } = e
  if (burstAmps !== null) addMaximum(ledger, burst, bursts.packAmps, burstAmps, bursts.packCase)
  addMinimum(ledger, floorVoltage, bursts.packVolts, floorVolts, bursts.packCase)
  if (!Number.isNaN(bursts.spinUpVolts)) {
    addMinimum(ledger, spinUpVolts, bursts.spinUpVolts, floorVolts, caseNumber['spin-up'])
  }
  measureCharging(ledger, e, machine)
  addColdness(ledger, cold, service.packTemperature, coldest)
  if (continuousAmps !== null) {
    addMaximum(ledger, continuous, pattern.packAmpsRms, continuousAmps, caseNumber.pattern)
  }
  const warmest = e.packEnd > service.packTemperature ? e.packEnd : service.packTemperature
  addTemperature(ledger, temperature, warmest, pack.maxTemperature, service.packTemperature)
}

/** Below this much, A, nothing charges: rounding. *Source:* `docs/model.md` §8. */
const nothingCharged = 1e-9

/** What braking feeds back: cells as cold as freezing take none, by 20 °C all that the label says. */
function measureCharging(ledger: Ledger, { braking }: Evaluation, machine: Machine): void {
  const { pack, controller, service } = machine
  if (!(controller.brakeAmps > 0)) return
  const full = Math.max(Number.isNaN(braking.chargeAmps) ? 0 : braking.chargeAmps, braking.rowChargeAmps)
  if (full > nothingCharged) {
    const reached = pack.fullVolts + full * pack.resistance
    addMaximum(ledger, chargeVolts, reached, pack.ceilingVolts, caseNumber.brake)
  }
  const most = Math.max(full, braking.patternChargeAmps)
  if (pack.chargeAmps === null || !(most > nothingCharged)) return
  const warm = Math.max(0, Math.min(1, service.packTemperature / 20))
  addMaximum(ledger, chargeCurrent, most, pack.chargeAmps * warm, caseNumber.brake)
}
