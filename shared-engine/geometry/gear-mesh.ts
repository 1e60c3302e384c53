import { inverseInvolute, involute } from '../numeric/involute.ts'

/** Two spur wheels, each with its profile shift in modules. */
interface ShiftedPair {
  readonly driverTeeth: number
  readonly drivenTeeth: number
  /** x_1, x_2. */
  readonly driverShift: number
  readonly drivenShift: number
  /** φ, rad, of the rack. */
  readonly pressureAngle: number
}

/** What two wheels decide by their shape alone; lengths in modules. */
export interface GearMesh {
  /** φ_w, rad. */
  readonly workingAngle: number
  /** a. */
  readonly centre: number
  /** r_b1, r_b2. */
  readonly driverBase: number
  readonly drivenBase: number
  /** ε. */
  readonly contactRatio: number
  /** 1/ρ_1 + 1/ρ_2 at the pitch point. */
  readonly curvature: number
}

/**
 * Involute of the working pressure angle.
 *
 * inv φ_w = inv φ + 2 tan φ (x_1 + x_2)/(z_1 + z_2).
 *
 * @returns rad; ≤ 0 where the wheels cannot mesh without backlash
 * *Source:* ISO 21771, working transverse pressure angle.
 */
export function workingInvolute(pair: ShiftedPair): number {
  const shift = pair.driverShift + pair.drivenShift
  const teeth = pair.driverTeeth + pair.drivenTeeth
  return involute(pair.pressureAngle) + (2 * Math.tan(pair.pressureAngle) * shift) / teeth
}

/** φ_w, rad: φ itself where the shifts make nothing together; NaN where there is none. */
function workingAngleOf(pair: ShiftedPair): number {
  if (pair.driverShift + pair.drivenShift === 0) return pair.pressureAngle
  return inverseInvolute(workingInvolute(pair))
}

/** Share of a line of action that one wheel's tip reaches, at most to the other's base tangent: √(r_a² − r_b²), modules. */
function reach(teeth: number, shift: number, base: number, whole: number): number {
  const tip = teeth / 2 + 1 + shift
  return Math.min(Math.sqrt(Math.max(0, tip * tip - base * base)), whole)
}

/**
 * Mesh of two spur wheels with profile shift, addendum 1 + x, no backlash.
 *
 * r_b = (z/2) cos φ;  a = (r_b1 + r_b2)/cos φ_w;  r_a = z/2 + 1 + x;
 * ε = [Σ min(√(r_a² − r_b²), a sin φ_w) − a sin φ_w]/(π cos φ): no tip works beyond the other wheel's base tangent;
 * ρ = r_b tan φ_w.
 *
 * @returns lengths in modules; NaN where the wheels cannot mesh ({@link workingInvolute} ≤ 0)
 * *Source:* ISO 21771; addendum 1.0: ISO 53.
 */
export function gearMeshOf(pair: ShiftedPair): GearMesh {
  const workingAngle = workingAngleOf(pair)
  const cosine = Math.cos(pair.pressureAngle)
  const driverBase = (pair.driverTeeth / 2) * cosine
  const drivenBase = (pair.drivenTeeth / 2) * cosine
  const centre = (driverBase + drivenBase) / Math.cos(workingAngle)
  const whole = centre * Math.sin(workingAngle)
  const action =
    reach(pair.driverTeeth, pair.driverShift, driverBase, whole) +
    reach(pair.drivenTeeth, pair.drivenShift, drivenBase, whole) -
    whole
  const tangent = Math.tan(workingAngle)
  return {
    workingAngle,
    centre,
    driverBase,
    drivenBase,
    contactRatio: action / (Math.PI * cosine),
    curvature: 1 / (driverBase * tangent) + 1 / (drivenBase * tangent),
  }
}

/**
 * Teeth below which a rack undercuts a wheel.
 *
 * z = 2 (1 − x)/sin²φ.
 *
 * @param shift x, modules
 * @param pressureAngle φ, rad
 * @returns teeth, not whole
 * *Source:* ISO 21771; Shigley, eq. 13-13, with k = 1 − x.
 * @example undercutBelow(0, Math.PI / 9) // 17.0973
 */
export function undercutBelow(shift: number, pressureAngle: number): number {
  const sine = Math.sin(pressureAngle)
  return (2 * (1 - shift)) / (sine * sine)
}

/**
 * Profile shift that just clears a wheel of undercut.
 *
 * x = 1 − z sin²φ/2.
 *
 * @param teeth z
 * @param pressureAngle φ, rad
 * @returns modules, at least 0
 * *Source:* ISO 21771, the same condition solved for x.
 * @example shiftNeeded(12, Math.PI / 9) // 0.29813
 */
export function shiftNeeded(teeth: number, pressureAngle: number): number {
  const sine = Math.sin(pressureAngle)
  return Math.max(0, 1 - (teeth * sine * sine) / 2)
}
