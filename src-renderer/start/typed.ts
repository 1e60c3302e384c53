import { massOfSize } from '../../shared-engine/assume/motor.ts'
import { readEntry } from '../../shared-engine/units/entry.ts'

/** Diameter and length of a motor as people write them: "36 x 50", "40 × 74 mm", "1.6 by 2.9 in". */
const size = /^\s*([\d.,]+)\s*(?:x|×|\*|by)\s*([\d.,]+)\s*(mm|cm|in|")?\s*$/i

/**
 * Mass of a motor of which the size was typed.
 *
 * @returns kg; null where what was typed is no size
 * @example massOfTypedSize('36 x 50') // 0.193
 */
export function massOfTypedSize(typed: string): number | null {
  const [, diameter, length, unit = 'mm'] = size.exec(typed) ?? []
  if (diameter === undefined || length === undefined) return null
  const [across, along] = [diameter, length].map((number) => readEntry(number, 'length', { unit }))
  if (across?.ok !== true || along?.ok !== true) return null
  return massOfSize(across.value.value, along.value.value)
}

/** A reduction as it was typed: both wheels, or a ratio. */
export type TypedReduction =
  { readonly driverTeeth: number; readonly drivenTeeth: number } | { readonly ratio: number }

const teeth = /^\s*(\d+)\s*(?:\/|:|to|-|–|>)\s*(\d+)\s*$/i

/**
 * A reduction as people write it: "12/58", "12:58", "12 to 58", or a ratio, "4.83" and "4.83:1".
 *
 * @returns null where it is none of them
 */
export function typedReduction(typed: string): TypedReduction | null {
  const [, first, second] = teeth.exec(typed) ?? []
  if (first !== undefined && second !== undefined && second !== '1')
    return { driverTeeth: Number(first), drivenTeeth: Number(second) }
  const reading = readEntry(typed.replace(/\s*:\s*1\s*$/, ''), 'none', { unit: '' })
  return reading.ok && reading.value.value > 0 ? { ratio: reading.value.value } : null
}
