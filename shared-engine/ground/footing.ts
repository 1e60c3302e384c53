import type { CoefficientGround, Machine, SoilGround } from '../machine/parts.ts'
import { gravity } from '../constants.ts'
import { power } from '../numeric/power.ts'
import { snowFactor, snowStrength, usableCohesion } from './snow-strength.ts'
import { shearShare } from './soil-shear.ts'
import { weightTransfer } from './weight-transfer.ts'

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
  /** F_max, N, with what the transferred weight brings. */
  gripThrust = 0
  /** f_1: grip for one more newton on the tracks. */
  gripPerWeight = 0
  /** Δ, N, moved from the skis to the tracks by the thrust itself; counted in F_max alone. */
  transferred = 0
  /** z, m; NaN where the model knows no sinkage. */
  sinkage = NaN
  /** p, Pa under the tracks; NaN as above. */
  groundPressure = NaN
  /** A c′ + (W_t + Δ) tan φ, N: thrust of endless slip; NaN as above. */
  shearStrength = NaN
  /** tan φ as it is counted on; NaN as above. */
  tanFriction = NaN
  /** L/K: the soil's x at a slip of 1; NaN as above. */
  fullShear = NaN
  /** K/L: slip for one more of x; NaN as above. */
  slipPerShear = NaN
}

/** Makes a footing the same as another, number by number. *Source:* none needed, it only copies. */
export function copyFooting(footing: Footing, other: Footing): void {
  footing.weight = other.weight
  footing.trackWeight = other.trackWeight
  footing.groundResistance = other.groundResistance
  footing.standingResistance = other.standingResistance
  footing.gripThrust = other.gripThrust
  footing.gripPerWeight = other.gripPerWeight
  footing.transferred = other.transferred
  footing.sinkage = other.sinkage
  footing.groundPressure = other.groundPressure
  footing.shearStrength = other.shearStrength
  footing.tanFriction = other.tanFriction
  footing.fullShear = other.fullShear
  footing.slipPerShear = other.slipPerShear
}

/**
 * Fills a footing.
 *
 * W = m g cos θ, W_t = W · onTrack, W_s = W − W_t;  R(0) = R_g + m g sin θ + towForce;  F_max grows by f_1 Δ.
 *
 * @param sine, cosine of the slope's angle
 * @param mass m, kg, and towForce, N: those of the build where left out
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
  const onTracks = machine.vehicle.onTrackShare
  setGround(footing, machine, sine, cosine, mass, towForce, onTracks, true)
  const { gripThrust, gripPerWeight } = footing
  const transferred = transferredWeight(machine, footing, gripThrust, gripPerWeight, towForce)
  footing.transferred = transferred
  if (transferred === 0) return
  if (machine.ground.model === 'coefficient') footing.gripThrust += footing.gripPerWeight * transferred
  else {
    footing.shearStrength += footing.tanFriction * transferred
    footing.gripThrust = footing.shearStrength * shearShare(footing.fullShear)
  }
}

/**
 * Fills the footing of the same ground without its slope, where no thrust moves weight: turning on the spot, cruise.
 *
 * @param level to fill
 * *Source:* `docs/model.md` §5 with θ = 0 and Δ = 0.
 */
export function setLevelFooting(level: Footing, machine: Machine): void {
  const { mass, towForce, onTrackShare } = machine.vehicle
  setGround(level, machine, 0, 1, mass, towForce, onTrackShare, true)
}

/**
 * Fills the footing of a machine whose front is up: the same ground with all weight on the tracks, at its full strength.
 *
 * *Source:* statics; `docs/model.md` §5: more grip is worse here, so that nothing is held back.
 */
export function setLiftedFooting(lifted: Footing, machine: Machine, sine: number, cosine: number): void {
  const { mass, towForce } = machine.vehicle
  setGround(lifted, machine, sine, cosine, mass, towForce, 1, false)
}

/**
 * The most thrust that the ground can let through, for what has to bear it.
 *
 * F_max of §5 with whole cohesion and snow of any strength, with its own Δ.
 *
 * @param footing of the slope, filled
 * @returns N
 * *Source:* `docs/model.md` §5: more grip is worse here.
 */
export function mostGripOf(machine: Machine, footing: Footing): number {
  const { ground, vehicle } = machine
  if (ground.model === 'coefficient') return footing.gripThrust
  const share = shearShare(footing.fullShear)
  const area = footing.trackWeight / footing.groundPressure
  const grip = (area * ground.cohesion + footing.trackWeight * ground.tanFriction) * share
  const perWeight = ground.tanFriction * share
  return grip + perWeight * transferredWeight(machine, footing, grip, perWeight, vehicle.towForce)
}

/** Δ, N; 0 where skis or the centre of mass are not known. */
function transferredWeight(
  machine: Machine,
  footing: Footing,
  grip: number,
  perWeight: number,
  tow: number,
): number {
  const { centreHeight, centreAhead, skiDistance, towHeight } = machine.vehicle
  const onSkis = footing.weight - footing.trackWeight
  if (skiDistance === null || centreHeight === null || centreAhead === null || !(onSkis > 0)) return 0
  const transfer = { height: centreHeight, skiDistance, tow, towHeight }
  return weightTransfer(transfer, grip, perWeight, footing.groundResistance, onSkis)
}

/**
 * Weights, resistances and grip before any thrust moves weight.
 *
 * @param onTracks part of the weight that is on the tracks
 * @param cautious strength as it is counted on: cohesion and snow held to what a light machine can ask of them
 */
function setGround(
  footing: Footing,
  machine: Machine,
  sine: number,
  cosine: number,
  mass: number,
  towForce: number,
  onTracks: number,
  cautious: boolean,
): void {
  const { ground } = machine
  const heaviness = mass * gravity
  footing.weight = heaviness * cosine
  footing.trackWeight = footing.weight * onTracks
  footing.transferred = 0
  if (ground.model === 'coefficient') setCoefficientFooting(footing, ground)
  else setSoilFooting(footing, machine, ground, cautious)
  footing.groundResistance += ground.skiFriction * (footing.weight - footing.trackWeight)
  footing.standingResistance = footing.groundResistance + heaviness * sine + towForce
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
  footing.gripPerWeight = ground.gripCoefficient
  footing.tanFriction = NaN
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
 * F_s(i) = (A c′ + W_t tan φ) φ(i L/K), F_max = F_s(1), c′ = min(c, p/2); snow: both parts brought down by one factor to
 * what snow bears at that pressure.
 *
 * @param cautious false: whole c, snow of any strength
 * *Source:* Bekker's sinkage and compaction resistance, Janosi and Hanamoto's shear: Wong, Theory of Ground Vehicles; snow
 * as in {@link snowStrength}.
 */
function setSoilFooting(footing: Footing, machine: Machine, soil: SoilGround, cautious: boolean): void {
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
  const cohesion = cautious ? usableCohesion(soil.cohesion, pressure) : soil.cohesion
  const strength = area * cohesion + footing.trackWeight * soil.tanFriction
  const factor = cautious && soil.snow ? snowFactor(strength, area * snowStrength(pressure)) : 1
  footing.shearStrength = strength * factor
  footing.tanFriction = soil.tanFriction * factor
  footing.fullShear = length / soil.shearModulus
  footing.slipPerShear = soil.shearModulus / length
  const share = shearShare(footing.fullShear)
  footing.gripThrust = footing.shearStrength * share
  footing.gripPerWeight = footing.tanFriction * share
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
