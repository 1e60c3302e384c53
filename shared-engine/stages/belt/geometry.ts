import { fullTurn } from '../../constants.ts'

/** Two pulleys and the open toothed belt round them. */
export interface BeltDrive {
  /** m. */
  readonly pitch: number
  readonly driverTeeth: number
  readonly drivenTeeth: number
  /** m between the axles. */
  readonly centre: number
}

/** Pitch radius of a pulley, m: r = p z/2π. *Source:* ISO 5294, pitch diameter. */
export function pulleyRadius(pitch: number, teeth: number): number {
  return (pitch * teeth) / fullTurn
}

/**
 * Half of what the belt's straight runs lean towards each other.
 *
 * θ = asin((r_2 − r_1)/C), r_2 ≥ r_1.
 *
 * @returns rad, 0 for equal pulleys
 * *Source:* geometry of the open belt.
 */
export function beltLean(drive: BeltDrive): number {
  const difference = pulleyRadius(drive.pitch, Math.abs(drive.drivenTeeth - drive.driverTeeth))
  return Math.asin(difference / drive.centre)
}

/**
 * Whole teeth in mesh on the smaller pulley.
 *
 * z_m = ⌊z_s (½ − θ/π)⌋, 1e-9 added before rounding down.
 *
 * *Source:* ISO 5295, first edition.
 */
export function teethInMesh(drive: BeltDrive): number {
  const smaller = Math.min(drive.driverTeeth, drive.drivenTeeth)
  return Math.floor(smaller * (0.5 - beltLean(drive) / Math.PI) + 1e-9)
}

/**
 * Pitch length of an open belt.
 *
 * L = 2 C cos θ + π (r_1 + r_2) + 2 θ (r_2 − r_1).
 *
 * @param centre C, m
 * @returns m
 * *Source:* geometry of the open belt; ISO 5295.
 */
export function beltLength(pitch: number, driverTeeth: number, drivenTeeth: number, centre: number): number {
  const smaller = pulleyRadius(pitch, Math.min(driverTeeth, drivenTeeth))
  const larger = pulleyRadius(pitch, Math.max(driverTeeth, drivenTeeth))
  const lean = Math.asin((larger - smaller) / centre)
  return 2 * centre * Math.cos(lean) + Math.PI * (larger + smaller) + 2 * lean * (larger - smaller)
}
