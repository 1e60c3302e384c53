import { defineLimit, setMaximum, type Limit } from './limit.ts'

/** Most accessories of the build's schema. */
const most = 20

/** Limit of the n-th accessory's converter, counted from 1. *Source:* engine contract §8. */
function converterLimit(number: number): Limit {
  const index = number - 1
  return defineLimit({
    id: `converter.${number}.current`,
    label: `Converter ${number} current`,
    part: 'accessories',
    question: 'hot',
    sense: 'maximum',
    unit: 'A',
    kind: 'amps',
    needs: [`accessories.${index}.volts`, `accessories.${index}.converterAmps`],
    measure: (out, _e, machine) => {
      const converter = machine.accessories.converters[index]
      if (converter === undefined || converter.amps === null || converter.allowedAmps === null) return false
      return setMaximum(out, converter.amps, converter.allowedAmps, 'build')
    },
  })
}

/** Limits of the converters, one for every accessory that a build may hold. */
export const converterLimits: readonly Limit[] = Array.from({ length: most }, (_, index) =>
  converterLimit(index + 1),
)
