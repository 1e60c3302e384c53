import { fieldOf } from '../entries/fields.ts'
import type { Errors } from './errors.ts'
import { fitEntryOf, type Tell } from './entries.ts'

export type RefusalCode =
  'not-in-build' | 'no-channel' | 'no-effect' | 'together' | 'noise' | 'alone' | 'range' | 'unsettled'

/** Why an entry is not offered, and which drive would tell it. */
export interface Refusal {
  readonly code: RefusalCode
  /** Entries that it cannot be told from. */
  readonly with: readonly string[]
  readonly tell: Tell
}

const tellOf = (path: string): Tell => fitEntryOf(path)?.tell ?? 'coast'

const pairs: readonly (readonly [readonly string[], readonly string[], Tell])[] = [
  [['ground.rollingCoefficient'], ['track.internalDragN'], 'off-ground'],
  [['motor.kvRpmPerVolt'], ['motor.resistanceMilliohm'], 'light-and-hard'],
  [['motor.thermalResistanceKPerW'], ['motor.heatCapacityJPerK'], 'long-and-cool'],
  [
    ['ground.rollingCoefficient', 'track.internalDragN'],
    ['vehicle.dragCoefficient', 'track.internalDragNPerMps'],
    'slow-and-fast',
  ],
  [['vehicle.dragCoefficient'], ['track.internalDragNPerMps'], 'fast'],
]

/** The drive that parts entries from each other. */
function tellApart(path: string, others: readonly string[]): Tell {
  const all = [path, ...others]
  const own = pairs.find(
    ([one, other]) =>
      (one.includes(path) && other.some((name) => others.includes(name))) ||
      (other.includes(path) && one.some((name) => others.includes(name))),
  )
  const any = pairs.find(
    ([one, other]) => one.some((name) => all.includes(name)) && other.some((name) => all.includes(name)),
  )
  return (own ?? any)?.[2] ?? tellOf(path)
}

/** A refusal of an entry by itself. */
export function refusedAlone(path: string, code: RefusalCode): Refusal {
  return { code, with: [], tell: tellOf(path) }
}

/** A refusal of an entry that goes together with others. */
function refusedTogether(path: string, others: readonly string[]): Refusal {
  return { code: 'together', with: others, tell: tellApart(path, others) }
}

/** Groups that go together, as refusals by path; the first group that an entry is in counts. */
export function ofGroups(groups: readonly (readonly string[])[]): ReadonlyMap<string, Refusal> {
  const refusals = new Map<string, Refusal>()
  for (const group of groups)
    for (const path of group)
      if (!refusals.has(path))
        refusals.set(
          path,
          refusedTogether(
            path,
            group.filter((other) => other !== path),
          ),
        )
  return refusals
}

/** More noise than this in what an entry's column has left, and the entry is the sensor's. */
const mostNoise = 0.1

/**
 * Entries that stand against sensor noise, and those that follow them: correlated by half or more. The noisiest comes
 * first and is named with the others.
 */
export function ofNoise(
  paths: readonly string[],
  shares: readonly number[],
  { correlation }: Errors,
): ReadonlyMap<string, Refusal> {
  const refusals = new Map<string, Refusal>()
  const noisy = [...paths.keys()]
    .filter((at) => (shares[at] ?? 0) > mostNoise)
    .sort((one, other) => (shares[other] ?? 0) - (shares[one] ?? 0))
  for (const at of noisy) {
    const path = paths[at] ?? ''
    if (!refusals.has(path)) refusals.set(path, refusedAlone(path, 'noise'))
    paths.forEach((other, place) => {
      if (refusals.has(other) || Math.abs(correlation[at]?.[place] ?? 0) < 0.5) return
      refusals.set(other, { code: 'noise', with: [path], tell: tellOf(path) })
    })
  }
  return refusals
}

/** Whether a value that came to rest can be offered; null where it can. */
export function ofValue(
  at: number,
  paths: readonly string[],
  value: number,
  build: number,
  { plusMinus, correlation }: Errors,
): Refusal | null {
  const path = paths[at] ?? ''
  const { low = -Infinity, high = Infinity } = fieldOf(path) ?? {}
  if (!((plusMinus[at] ?? Infinity) <= Math.max(Math.abs(value), Math.abs(build)) / 2)) {
    const partner = paths.find((_, other) => other !== at && Math.abs(correlation[at]?.[other] ?? 0) >= 0.9)
    return partner === undefined ? refusedAlone(path, 'alone') : refusedTogether(path, [partner])
  }
  return value >= low && value <= high ? null : refusedAlone(path, 'range')
}
