import { evaluate } from '../cases/evaluate.ts'
import { Evaluation } from '../cases/evaluation.ts'
import type { Checked } from '../check.ts'
import { machineOf } from '../machine/machine.ts'
import { formatText } from '../units/display.ts'
import type { UnitSystem } from '../units/kinds.ts'

/**
 * What motors had that were measured, of what their labels and sheets say: the least of Kv, the most of resistance under load
 * (leads, commutation, heat).
 *
 * *Source:* five motors for Kv, two for resistance, from memory (`docs/validation.md`).
 */
const leastKv = 0.9
const mostResistance = 2.5

/** Entries that are a maker's word, of Kv and resistance. */
function statedOf({ origins, tolerances }: Checked['build']): readonly ('kv' | 'resistance')[] {
  const isStated = (path: string) => origins[path] === 'stated' && tolerances[path] === undefined
  return [
    ...(isStated('motor.kvRpmPerVolt') ? (['kv'] as const) : []),
    ...(isStated('motor.resistanceMilliohm') ? (['resistance'] as const) : []),
  ]
}

/**
 * Top speed as low as motors that were measured would make it, m/s, where Kv or resistance is a maker's word; null where
 * neither is, or the machine does not get going as it stands. 0: with such a motor it would not.
 *
 * *Source:* as {@link leastKv}.
 */
export function lowestBySheet(checked: Checked): number | null {
  const { build, figures } = checked
  const stated = statedOf(build)
  if (stated.length === 0 || figures.topSpeedMps === null) return null
  const { motor } = build
  const machine = machineOf({
    ...build,
    motor: {
      ...motor,
      kvRpmPerVolt: motor.kvRpmPerVolt * (stated.includes('kv') ? leastKv : 1),
      resistanceMilliohm: motor.resistanceMilliohm * (stated.includes('resistance') ? mostResistance : 1),
    },
  })
  const evaluation = new Evaluation(false)
  evaluate(evaluation, machine)
  return evaluation.top.exists ? evaluation.top.groundSpeed : 0
}

/** The same in a sentence; empty where there is nothing to say. */
export function sheetBandWords(checked: Checked, system: UnitSystem): string {
  const low = lowestBySheet(checked)
  const { topSpeedMps } = checked.figures
  if (low === null || topSpeedMps === null || low > 0.995 * topSpeedMps) return ''
  const stated = statedOf(checked.build)
  const had = [
    ...(stated.includes('kv') ? ['up to 10 % less Kv'] : []),
    ...(stated.includes('resistance') ? ['1.8 to 2.5 times the resistance under load'] : []),
  ].join(' and ')
  const end = low === 0 ? 'would not get going at all' : `comes to ${formatText(low, 'speed', system)}`
  return `By the maker’s values top speed is an upper end: motors that were measured had ${had}; the worst of them ${end}. Two loaded runs tell.`
}
