import type { Evaluation } from '../cases/evaluation.ts'
import type { Machine } from '../machine/parts.ts'
import { caseNumber } from '../cases/case.ts'
import { labelSource } from '../workings/currents.ts'
import type { LimitWorking } from '../workings/limit.ts'
import { addMaximum, type Ledger } from './ledger.ts'
import { listedLimit, type Limit } from './limit.ts'

export type ConverterLimitId = `converter.${number}.current`

/** Most accessories of the build's schema. */
const most = 20

/** Limits of the converters, one for every accessory that a build may hold. *Source:* `docs/model.md` §8. */
export const converterLimits: readonly Limit[] = Array.from({ length: most }, (_, index) =>
  listedLimit({
    id: `converter.${index + 1}.current`,
    label: `Converter ${index + 1} current`,
    group: 'lasts',
    part: 'accessories',
    question: 'hot',
    sense: 'maximum',
    unit: 'A',
    kind: 'amps',
    needs: [`accessories.${index}.volts`, `accessories.${index}.converterAmps`],
    working: workingOf(index),
  }),
)

function workingOf(index: number): LimitWorking {
  return {
    title: `What accessory ${index + 1} draws from its converter against what the converter gives.`,
    source: labelSource,
    write: (d) => {
      const path = `accessories.${index}`
      d.entry('P', `${path}.watts`)
      d.entry('V', `${path}.volts`)
      d.step('I', ['amps', 'current out of the converter'], 'P / V')
      d.entry('I_max', `${path}.converterAmps`)
      return { actual: 'I', allowed: 'I_max' }
    },
  }
}

/** Adds those that the machine has. */
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
