/**
 * What an entry mostly is on machines of 1 to 300 kg, in its bench unit: a number outside is taken as it is, and said to be
 * unusual, since a slip of a power of ten stays within what is allowed. *Source:* common practice, no source.
 */
const usualRanges: Readonly<Record<string, readonly [number, number]>> = {
  'motor.kvRpmPerVolt': [30, 8_000],
  'motor.resistanceMilliohm': [0.5, 2_000],
  'motor.noLoadAmps': [0.05, 30],
  'motor.ratedMaxRpm': [1_500, 100_000],
  'motor.massKg': [0.02, 30],
  'pack.series': [1, 28],
  'pack.capacityMah': [300, 100_000],
  'pack.cellResistanceMilliohm': [0.1, 60],
  'track.pitchMm': [4, 130],
  'track.sprocketTeeth': [5, 40],
  'vehicle.massKg': [0.5, 600],
}

/**
 * The usual range of an entry that a value lies outside of.
 *
 * @param value in the entry's bench unit
 * @returns least and greatest, bench unit; null where the value is usual, or nothing is known of what is
 * @example unusualRange('motor.kvRpmPerVolt', 15_000) // [30, 8000]
 */
export function unusualRange(path: string, value: number): readonly [number, number] | null {
  const range = usualRanges[path]
  if (range === undefined) return null
  return value < range[0] || value > range[1] ? range : null
}

/** Paths of entries whose usual range is known. */
export const usualPaths: readonly string[] = Object.keys(usualRanges)
