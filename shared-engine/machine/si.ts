/** What one bench unit of the stored build's keys is in SI; exact by definition of the prefixes. */
export const milli = 1e-3
export const micro = 1e-6
export const kilo = 1e3
export const mega = 1e6
export const percent = 0.01
/** g·cm² in kg·m². */
export const gcm2 = 1e-7
/** L/min in m³/s. */
export const litrePerMinute = 1e-3 / 60
/** Degrees in rad. */
export const degree = Math.PI / 180

/** An entry that may be missing, as the physics takes it. */
export function absent(entry: number | undefined): number | null {
  return entry ?? null
}

/** An entry that may be missing, times what one of its units is in SI. */
export function scaled(entry: number | undefined, unit: number): number | null {
  return entry === undefined ? null : entry * unit
}
