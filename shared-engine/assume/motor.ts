import { rpmOf, torqueConstantOf } from '../units/rpm.ts'

// What can be said of a motor of which only the speed constant and the mass are known. Each number is one of a wide
// band: a maker's sheet or a bench test beats it at once.

/** Motor turns an outer shell or an inner rotor: the two families have other magnets, lever arms and speeds. */
interface MotorFamily {
  /** Magnet poles, as most of the family have. */
  readonly poles: number
  /** N·m/√W of a motor of 1 kg. */
  readonly motorConstant: number
  /** Share of the mass that turns, times (radius of gyration ÷ outside diameter)². */
  readonly inertiaShare: number
  /** m/s that the outside diameter may reach at the fastest speed on the label. */
  readonly surfaceSpeed: number
}

/** *Source:* common practice, no source: labels of hobby motors of 0.1 to 3 kg, from memory; off by a factor of two. */
const families: Readonly<Record<'inner' | 'outer', MotorFamily>> = {
  inner: { poles: 4, motorConstant: 0.1, inertiaShare: 0.005, surfaceSpeed: 95 },
  outer: { poles: 14, motorConstant: 0.3, inertiaShare: 0.04, surfaceSpeed: 40 },
}

/** rpm/V times √kg from which a motor is taken for one whose rotor turns inside. *Source:* as of the families. */
const innerFrom = 600
/** kg/m³ of a whole motor, of its outside length and diameter; length over diameter. *Source:* as of the families. */
const bulk = { density: 3800, lengthOverDiameter: 1.5 } as const

/**
 * The family of a motor: a fast winding for its size is one with an inner rotor.
 *
 * Inner where Kv √m ≥ 600 (rpm/V)·√kg, or where it has fewer than ten poles.
 *
 * @param speedConstant Kv, rpm/V
 * @param mass m, kg
 * @param poles where they were counted
 * *Source:* common practice, no source.
 */
export function isInnerRotor(speedConstant: number, mass: number, poles: number | null): boolean {
  return poles === null ? speedConstant * Math.sqrt(mass) >= innerFrom : poles < 10
}

const familyOf = (inner: boolean) => families[inner ? 'inner' : 'outer']

/** Magnet poles of most motors of the family. *Source:* common practice, no source. */
export function usualPoles(inner: boolean): number {
  return familyOf(inner).poles
}

/**
 * Winding resistance from speed constant and mass.
 *
 * R = (K_t/K_m)², K_t = 60/(2π Kv), K_m = K_1 m^(5/6): of motors of one shape, flux and current density the torque grows
 * with the fourth power of a length and copper loss with the third, so torque over the root of loss grows with length^(5/2).
 *
 * @param speedConstant Kv, rpm/V
 * @param mass m, kg
 * @returns Ω between two leads at 20 °C
 * *Source:* scaling of similar machines as above; K_1 common practice, no source. Off by a factor of two either way.
 */
export function assumedResistance(speedConstant: number, mass: number, inner: boolean): number {
  const motorConstant = familyOf(inner).motorConstant * mass ** (5 / 6)
  return (torqueConstantOf(speedConstant) / motorConstant) ** 2
}

/**
 * Free-run current from speed constant and mass: friction and iron take a torque in proportion to the mass.
 *
 * I_0 = q m/K_t, q = 0.05 N·m/kg.
 *
 * @param speedConstant Kv, rpm/V
 * @param mass m, kg
 * @returns A
 * *Source:* common practice, no source.
 */
export function assumedNoLoadAmps(speedConstant: number, mass: number): number {
  return (0.05 * mass) / torqueConstantOf(speedConstant)
}

/**
 * Outside diameter of a motor of a mass.
 *
 * d = ∛(4 m/(1.5 π ρ)), ρ = 3,800 kg/m³ of the whole.
 *
 * @param mass m, kg
 * @returns m
 * *Source:* volume of a cylinder; density and proportion common practice, no source.
 */
export function assumedDiameter(mass: number): number {
  return Math.cbrt((4 * mass) / (bulk.lengthOverDiameter * Math.PI * bulk.density))
}

/**
 * Mass of a motor of a size.
 *
 * m = ρ π d² l/4.
 *
 * @param diameter d, m, outside
 * @param length l, m, without the shaft
 * @returns kg
 * *Source:* volume of a cylinder; density common practice, no source.
 * @example massOfSize(0.036, 0.05) // 0.193
 */
export function massOfSize(diameter: number, length: number): number {
  return (bulk.density * Math.PI * diameter ** 2 * length) / 4
}

/**
 * Inertia of the rotor from the mass.
 *
 * J = k m d²: an inner rotor a quarter of the mass, a solid cylinder of 0.4 d: k = 0.25 · ½ · 0.2²; an outer one a fifth,
 * a ring of 0.9 d: k = 0.2 · 0.45², both rounded.
 *
 * @param mass m, kg
 * @returns kg·m²
 * *Source:* inertia of cylinder and ring (mechanics); shares common practice, no source.
 */
export function assumedInertia(mass: number, inner: boolean): number {
  return familyOf(inner).inertiaShare * mass * assumedDiameter(mass) ** 2
}

/**
 * Fastest speed that a label of this size would allow: the outside reaches a usual surface speed.
 *
 * ω = 2 v/d.
 *
 * @param mass m, kg, which decides the diameter
 * @returns rpm
 * *Source:* common practice, no source. The maker's number may be half or twice of it: never spin up by this one.
 */
export function assumedRatedRpm(mass: number, inner: boolean): number {
  return rpmOf((2 * familyOf(inner).surfaceSpeed) / assumedDiameter(mass))
}

/**
 * Current limit of a controller that suits the motor.
 *
 * I = p m/V, p = 3 kW/kg for seconds.
 *
 * @param mass m, kg
 * @param volts V, nominal, of the pack
 * @returns A in the motor's leads
 * *Source:* common practice, no source.
 */
export function assumedCurrentLimit(mass: number, volts: number): number {
  return (3000 * mass) / volts
}

/**
 * Mass of a machine's motors from that of the machine: a twentieth, shared by its motors.
 *
 * @param mass of the machine, kg
 * @param count motors
 * @returns kg of one motor
 * *Source:* common practice, no source.
 */
export function assumedMotorMass(mass: number, count: number): number {
  return (0.05 * mass) / count
}
