import type { CoefficientGround, Machine, SoilGround } from '../machine/parts.ts'
import { gravity } from '../constants.ts'
import { power } from '../numeric/power.ts'
import { shearShare } from './soil-shear.ts'

/** What the ground takes and gives under a standing machine, on its slope or on the level. */
export class Footing {
  /** W, N, across the ground. */
  weight = 0
  /** W_t, N on the tracks. */
  trackWeight = 0
  /** R_g, N: rolling or compaction, and skis. */
  groundResistance = 0
  /** R(0), N: with slope and tow. */
  standingResistance = 0
  /** F_max, N. */
  gripThrust = 0
  /** z, m; NaN where the model knows no sinkage. */
  sinkage = NaN
  /** p, Pa under the tracks; NaN as above. */
  groundPressure = NaN
  /** A c + W_t tan φ, N: thrust of endless slip; NaN as above. */
  shearStrength = NaN
  /** L/K: the soil's x at a slip of 1; NaN as above. */
  fullShear = NaN
  /** K/L: slip for one more of x; NaN as above. */
  slipPerShear = NaN
}

/**
 * Fills a footing.
 *
 * W = m g cos θ, W_t = W · onTrack, W_s = W − W_t;  R(0) = R_g + m g sin θ + towForce.
 *
 * @param sine, cosine of the slope's angle: 0 and 1 for the level
 * @param mass, towForce kg and N, the build's where left out
 * *Source:* statics; `docs/model.md` §5.
 */
export function setFooting(
  footing: Footing,
  machine: Machine,
  sine: number,
  cosine: number,
  mass = machine.vehicle.mass,
  towForce = machine.vehicle.towForce,
): void {
  const { vehicle, ground } = machine
  const heaviness = mass * gravity
  footing.weight = heaviness * cosine
  footing.trackWeight = footing.weight * vehicle.onTrackShare
  if (ground.model === 'coefficient') setCoefficientFooting(footing, ground)
  else setSoilFooting(footing, machine, ground)
  footing.groundResistance += ground.skiFriction * (footing.weight - footing.trackWeight)
  footing.standingResistance = footing.groundResistance + heaviness * sine + towForce
}

/**
 * Fills the footing of the same ground without its slope.
 *
 * @param level to fill
 * @param footing of the slope, which on the level is the same
 * *Source:* `docs/model.md` §5 with θ = 0.
 */
export function setLevelFooting(level: Footing, machine: Machine, footing: Footing): void {
  if (machine.ground.grade !== 0) {
    setFooting(level, machine, 0, 1)
    return
  }
  level.weight = footing.weight
  level.trackWeight = footing.trackWeight
  level.groundResistance = footing.groundResistance
  level.standingResistance = footing.standingResistance
  level.gripThrust = footing.gripThrust
  level.sinkage = footing.sinkage
  level.groundPressure = footing.groundPressure
  level.shearStrength = footing.shearStrength
  level.fullShear = footing.fullShear
  level.slipPerShear = footing.slipPerShear
}

/**
 * Ground by two coefficients.
 *
 * R_g = c_rr W_t (+ μ_ski W_s);  F_max = μ W_t.
 *
 * *Source:* common practice; values as in `reference/ground.json` or the builder's own pull test.
 */
function setCoefficientFooting(footing: Footing, ground: CoefficientGround): void {
  footing.groundResistance = ground.rollingCoefficient * footing.trackWeight
  footing.gripThrust = ground.gripCoefficient * footing.trackWeight
  footing.sinkage = NaN
  footing.groundPressure = NaN
  footing.shearStrength = NaN
  footing.fullShear = NaN
  footing.slipPerShear = NaN
}

/**
 * Ground by pressure-sinkage and shear.
 *
 * k = k_c/b + k_φ, b = min(L, B);  z = (p/k)^{1/n}, p = W_t/(count L B);  R_c = count B k z^{n+1}/(n + 1);
 * F_s(i) = (A c + W_t tan φ) φ(i L/K), F_max = F_s(1).
 *
 * *Source:* Bekker's sinkage and compaction resistance, Janosi and Hanamoto's shear: Wong, Theory of Ground Vehicles.
 */
function setSoilFooting(footing: Footing, machine: Machine, soil: SoilGround): void {
  const count = machine.track.count
  const length = machine.vehicle.contactLength ?? NaN // the build's rules ask for both with this model
  const width = machine.vehicle.contactWidth ?? NaN
  const area = count * length * width
  const pressure = footing.trackWeight / area
  const modulus = soilModulusOf(soil, length, width)
  const sinkage = power(pressure / modulus, 1 / soil.exponent)
  footing.groundPressure = pressure
  footing.sinkage = sinkage
  footing.groundResistance = (count * width * pressure * sinkage) / (soil.exponent + 1) // k z^n is p
  footing.shearStrength = area * soil.cohesion + footing.trackWeight * soil.tanFriction
  footing.fullShear = length / soil.shearModulus
  footing.slipPerShear = soil.shearModulus / length
  footing.gripThrust = footing.shearStrength * shearShare(footing.fullShear)
}

/**
 * Modulus of sinkage of a patch.
 *
 * k = k_c/b + k_φ, b the smaller side of the patch.
 *
 * @param length, width of one patch, m
 * @returns N/m^(n+2); the build's rules refuse what is not positive
 * *Source:* Bekker; Wong, Theory of Ground Vehicles.
 */
export function soilModulusOf(
  soil: Pick<SoilGround, 'cohesiveModulus' | 'frictionalModulus'>,
  length: number,
  width: number,
): number {
  return soil.cohesiveModulus / Math.min(length, width) + soil.frictionalModulus
}
