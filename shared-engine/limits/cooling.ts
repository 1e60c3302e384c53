import type { Evaluation } from '../cases/evaluation.ts'
import type { Machine } from '../machine/parts.ts'
import { caseNumber } from '../cases/case.ts'
import { boilingWorking, freezingWorking, warmingWorking } from '../workings/coolant-limits.ts'
import { allMeasured, limitsOfPart, type PartLimitFacts } from './part.ts'
import { addColdness, addMaximum, addTemperature, type Ledger } from './ledger.ts'

const facts = {
  'cooling.boiling': {
    label: 'Coolant, hottest',
    group: 'holds',
    question: 'hot',
    sense: 'temperature',
    unit: 'degC',
    kind: 'temperature',
    needs: [],
    working: boilingWorking,
  },
  'cooling.freezing': {
    label: 'Coolant in the cold',
    group: 'holds',
    question: 'hot',
    sense: 'coldness',
    unit: 'degC',
    kind: 'temperature',
    needs: [],
    working: freezingWorking,
  },
  'cooling.warming': {
    label: 'Coolant’s warming in one round',
    group: 'lasts',
    question: 'hot',
    sense: 'maximum',
    unit: 'K',
    kind: 'temperatureDifference',
    needs: [],
    working: warmingWorking,
  },
} as const satisfies Readonly<Record<string, PartLimitFacts>>

export type CoolingLimitId = keyof typeof facts

/** Limits of the coolant circuit, in the ledger’s order. */
export const coolingLimits = limitsOfPart('cooling', facts)

const {
  'cooling.boiling': boiling,
  'cooling.freezing': freezing,
  'cooling.warming': warming,
  ...unmeasured
} = coolingLimits
allMeasured(unmeasured)

/** Most that a coolant should warm in one round, K. *Source:* assumption. */
const mostWarming = 20

/** Adds those that the machine has. *Source:* `docs/model.md` §8, rows of the same ids. */
export function measureCooling(ledger: Ledger, { heat }: Evaluation, { cooling, ground }: Machine): void {
  if (cooling === null) return
  addTemperature(ledger, boiling, heat.hot, heat.boils, ground.airTemperature)
  addColdness(ledger, freezing, ground.airTemperature, cooling.freezes)
  addMaximum(ledger, warming, heat.hot - heat.feed, mostWarming, caseNumber.pattern)
}
