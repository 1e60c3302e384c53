import { kilo, mega, minutesPerHour } from '../units/factors.ts'

/** Exponent of the life equation by what rolls. *Source:* ISO 281. */
const lifeExponent = { ball: 3, roller: 10 / 3 } as const
type BearingKind = keyof typeof lifeExponent

/**
 * Hours that nine in ten bearings reach.
 *
 * L_10h = 10⁶/(60 N) · (C/P)^p, p = 3 for balls and 10/3 for rollers.
 *
 * @param dynamic C, N, the maker's dynamic rating
 * @param load P, N
 * @param rpm N of the shaft
 * @returns h; NaN where the load or the speed is 0
 * *Source:* ISO 281, basic rating life.
 */
export function bearingLifeHours(dynamic: number, load: number, rpm: number, kind: BearingKind): number {
  if (!(load > 0 && rpm > 0)) return NaN
  return (mega / (minutesPerHour * rpm)) * (dynamic / load) ** lifeExponent[kind]
}

/** n d_m at which a greased bearing runs too fast, rpm · mm. *Source:* common practice, no source. */
export const greasedSpeed = 500_000

/**
 * Speed factor of a bearing.
 *
 * N (bore + outer)/2, mm and rpm, the unit in which bearings are listed.
 *
 * @param bore, outer m
 * @param rpm N of the shaft
 * @returns mm/min
 * *Source:* common practice, no source.
 */
export function bearingSpeed(bore: number, outer: number, rpm: number): number {
  return (rpm * (bore + outer) * kilo) / 2
}
