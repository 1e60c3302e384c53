import type { Machine } from '../machine/parts.ts'
import { caseNumber } from '../cases/case.ts'
import type { Evaluation } from '../cases/evaluation.ts'
import { addMaximum, type Ledger } from './ledger.ts'
import { listedLimit, type Limit } from './limit.ts'

/** Most accessories of the build's schema. */
const most = 20

/** Limits of the converters, one for every accessory that a build may hold, counted from 1. */
export const converterLimits: readonly Limit[] = Array.from({ length: most }, (_, index) =>
  listedLimit({
    id: `converter.${index + 1}.current`,
    label: `Converter ${index + 1} current`,
    part: 'accessories',
    question: 'hot',
    sense: 'maximum',
    unit: 'A',
    kind: 'amps',
    needs: [`accessories.${index}.volts`, `accessories.${index}.converterAmps`],
  }),
)

/** Adds those that the machine has. *Source:* `docs/model.md` §8, `converter.<n>.current`. */
export function measureConverters(ledger: Ledger, _: Evaluation, machine: Machine): void {
  const { converters } = machine.accessories
  for (let index = 0; index < converters.length; index += 1) {
    const limit = converterLimits[index]
    const converter = converters[index]
    if (limit === undefined || converter === undefined) continue
    const { amps, allowedAmps } = converter
    if (amps !== null && allowedAmps !== null) addMaximum(ledger, limit, amps, allowedAmps, caseNumber.build)
  }
}
