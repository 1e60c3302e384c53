/** Prefixes of the International System: exact by definition. */
export const mega = 1e6
export const kilo = 1000
export const milli = 1e-3

export const secondsPerMinute = 60
export const minutesPerHour = 60
export const secondsPerHour = 3600
export const secondsPerDay = 86_400
export const radiansPerDegree = Math.PI / 180

/** An angle in degrees. @param radians rad */
export function degreesOf(radians: number): number {
  return (radians * 180) / Math.PI
}

/**
 * Exact factors of the customary units.
 *
 * *Source:* NIST Special Publication 811 (2008 edition), appendix B.8, and the definitions that it rests on: the
 * international yard and pound (1959) and standard gravity. All are exact by definition.
 */
export const metresPerInch = 0.0254
export const metresPerFoot = 0.3048
export const metresPerMile = 1609.344
export const kilogramsPerPound = 0.45359237
export const kilogramsPerOunce = kilogramsPerPound / 16
/** One pound-force: a pound in standard gravity 9.80665 m/s². */
export const newtonsPerPoundForce = 4.4482216152605
export const newtonsPerOunceForce = newtonsPerPoundForce / 16
/** One kilogram-force, as luggage scales show it. */
export const newtonsPerKilogramForce = 9.80665
/** 231 cubic inches. */
export const cubicMetresPerGallon = 231 * metresPerInch ** 3
/** 550 foot-pounds-force per second. */
export const wattsPerHorsepower = 550 * metresPerFoot * newtonsPerPoundForce
/** 75 kilogram-force metres per second. */
export const wattsPerMetricHorsepower = 735.49875
