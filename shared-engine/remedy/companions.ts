import type { Build } from '../entries/schema.ts'

/** A number that goes with another one. */
interface Companion {
  readonly path: string
  readonly value: number
}

/**
 * Entries that cannot stay where one entry is changed: a motor of the same size for another speed constant has other
 * windings.
 *
 * R = R_0 (Kv_0/Kv)²;  I_nl = I_nl0 Kv/Kv_0, for the same losses of the same iron.
 *
 * @returns in bench units; none where the entry goes alone
 * *Source:* copper of the same weight, wound with more or fewer turns: common practice, no source.
 */
export function companionsOf({ motor }: Build, path: string, value: number): readonly Companion[] {
  if (path !== 'motor.kvRpmPerVolt') return []
  const share = value / motor.kvRpmPerVolt
  return [
    { path: 'motor.resistanceMilliohm', value: rounded(motor.resistanceMilliohm / share ** 2) },
    { path: 'motor.noLoadAmps', value: rounded(motor.noLoadAmps * share) },
  ]
}

/** As a sheet would state it. */
const rounded = (value: number) => Number(value.toPrecision(3))
