/**
 * Turns per minute of an angular speed: ω · 60/2π. Figures are in rpm, so the conversion is asked for far
 * more often than any other.
 *
 * @param speed ω, rad/s
 * @returns rpm
 * @example rpmOf(2 * Math.PI) // 60
 */
export function rpmOf(speed: number): number {
  return (speed * 60) / (2 * Math.PI)
}

/** Turns per minute in one radian per second, for formulas that take it as one number: 60/2π. */
export const rpmPerRadianPerSecond = 60 / (2 * Math.PI)

/** Angular speed of turns per minute, rad/s: the inverse of {@link rpmOf}. */
export function angularSpeedOf(rpm: number): number {
  return (rpm * 2 * Math.PI) / 60
}

/**
 * Volts for each radian per second of a motor that makes `Kv` turns per minute of each volt, which is also its torque
 * for each amp: K_t = 60/(2π Kv).
 *
 * @param speedConstant Kv, rpm/V
 * @returns V·s/rad, the same as N·m/A
 */
export function torqueConstantOf(speedConstant: number): number {
  return 60 / (2 * Math.PI * speedConstant)
}
