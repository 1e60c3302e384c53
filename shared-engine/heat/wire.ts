import { copperResistivity, copperTemperatureCoefficient } from '../constants.ts'
import { referenceTemperature } from '../motor/constants.ts'

/** Copper and insulation of one conductor. */
interface Conductor {
  /** m² of copper. */
  readonly area: number
  /** m over the insulation. */
  readonly outside: number
}

/**
 * Heat that one metre gives to still air for each kelvin to the power 1.25.
 *
 * h = π D (0.21/D^0.6 + 3.94).
 *
 * @param outside D, m
 * @returns W/(m·K^1.25)
 * *Source:* IEC 60287-2-1, a single cable in free air, from memory.
 */
function heatGivenBy(outside: number): number {
  return Math.PI * outside * (0.21 / outside ** 0.6 + 3.94)
}

/**
 * Steady temperature of a conductor.
 *
 * h ΔT^1.25 = I² ρ/A [1 + α (T − 20)]: its heat grows slower than what it gives away, so there is always one.
 *
 * @param amps I, A RMS of this conductor
 * @param air °C
 * @returns °C
 * *Source:* {@link heatGivenBy}; IEC 60028 for the copper; the conductor as warm as its surface [assumption].
 */
export function steadyWireTemperature({ area, outside }: Conductor, amps: number, air: number): number {
  const given = heatGivenBy(outside)
  const heat = (amps * amps * copperResistivity) / area
  const growth = heat * copperTemperatureCoefficient
  const start = heat * (1 + copperTemperatureCoefficient * (air - referenceTemperature))
  if (!(start > 0)) return air
  // Newton on a convex function: from below it steps over the root once, and then comes down to it.
  let rise = (start / given) ** 0.8
  for (let step = 0; step < 50; step += 1) {
    const quarter = Math.sqrt(Math.sqrt(rise))
    const miss = given * rise * quarter - start - growth * rise
    const change = miss / (1.25 * given * quarter - growth)
    rise -= change
    if (!(Math.abs(change) > 1e-13 * rise)) break
  }
  return air + rise
}

/**
 * Current at which a conductor is steadily at a temperature.
 *
 * I = √(h ΔT^1.25 A/(ρ [1 + α (T − 20)])).
 *
 * @param limit T, °C
 * @returns A of one conductor; 0 where the air is as hot
 * *Source:* the same balance, solved for the current.
 */
export function ampacityOf({ area, outside }: Conductor, limit: number, air: number): number {
  const rise = limit - air
  if (!(rise > 0)) return 0
  const warm = 1 + copperTemperatureCoefficient * (limit - referenceTemperature)
  return Math.sqrt((heatGivenBy(outside) * rise ** 1.25 * area) / (copperResistivity * warm))
}

/** Copper: K of the adiabatic law, A·√s/m², and the temperature at which its resistance would reach 0, °C below 0. */
const adiabaticConstant = 226e6
const adiabaticOffset = 234.5

/**
 * Temperature of a conductor after a burst from which no heat leaves.
 *
 * T₂ = (T + 234.5) e^{t (I/(226 A))²} − 234.5, A in mm².
 *
 * @param start T, °C
 * @param amps I, A of one conductor
 * @param seconds t
 * @returns °C
 * *Source:* IEC 60949, adiabatic law for copper.
 */
export function wireTemperatureAfter(area: number, start: number, amps: number, seconds: number): number {
  const density = amps / (adiabaticConstant * area)
  return (start + adiabaticOffset) * Math.exp(seconds * density * density) - adiabaticOffset
}

/** m of a mil; a circular mil is the square of one, whatever π is. */
const metresPerMil = 25.4e-6
const meltingCelsius = 1083

/**
 * Current that melts a copper conductor in a time.
 *
 * I = A √(log₁₀[(1083 − T)/(234 + T) + 1]/(33 t)), A in circular mils.
 *
 * @param start T, °C
 * @param seconds t
 * @returns A of one conductor
 * *Source:* Onderdonk; the sum 234 + T is that of the resistance's own zero, as Stauffacher's derivation has it.
 */
export function fusingAmpsOf(area: number, start: number, seconds: number): number {
  const circularMils = (4 * area) / (Math.PI * metresPerMil * metresPerMil)
  return circularMils * Math.sqrt(Math.log10((meltingCelsius - start) / (234 + start) + 1) / (33 * seconds))
}
