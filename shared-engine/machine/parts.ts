import type { RowSprings } from '../geometry/row-springs.ts'
import type { StagePart } from './stage.ts'

export type { ShaftPart } from './stage-common.ts'
export type { StagePart } from './stage.ts'

/**
 * The machine as the physics sees it: the stored build in SI (m, kg, s, N, A, V, Ω, rad/s, Pa; °C for temperatures,
 * fractions for percentages), tables already looked up. `null` means "not entered": the figures that need it do not exist.
 */
export interface Machine {
  readonly name: string
  readonly pack: PackPart
  readonly controller: ControllerPart
  readonly motor: MotorPart
  readonly stages: readonly StagePart[]
  readonly train: Train
  readonly track: TrackPart
  readonly vehicle: VehiclePart
  readonly ground: GroundPart
  readonly cooling: CoolingPart | null
  readonly accessories: AccessoriesPart
  readonly service: ServicePart
}

/** The pack at its service temperature; accessories are in {@link AccessoriesPart}. */
export interface PackPart {
  readonly series: number
  /** V, resting, at the given charge. */
  readonly openVolts: number
  /** V, resting, full. */
  readonly fullVolts: number
  /** Ω, cells and wiring. */
  readonly resistance: number
  /** A·s, whole pack, as labelled. */
  readonly capacity: number
  readonly stateOfCharge: number
  readonly reserve: number
  readonly continuousAmps: number | null
  readonly burstAmps: number | null
  /** V, whole pack: what the trade treats as the loaded floor. */
  readonly floorVolts: number
}

export interface ControllerPart {
  readonly resistance: number
  readonly continuousAmps: number | null
  readonly burstAmps: number | null
  /** A of one motor; Infinity where resistance alone limits it. */
  readonly currentLimit: number
  readonly maxElectricalRpm: number | null
  readonly heatCapacity: number | null
  readonly thermalResistance: number | null
  readonly maxTemperature: number | null
  /** Hz. */
  readonly pwmFrequency: number | null
  /** F. */
  readonly busCapacitance: number | null
  /** The most duty the driver allows, 0 to 1. */
  readonly throttleCap: number
}

export interface MotorPart {
  readonly count: number
  /** N·m/A and V·s/rad at 20 °C. */
  readonly torqueConstant: number
  /** 1/K, change of flux with temperature. */
  readonly fluxCoefficient: number
  /** Ω at 20 °C, terminal to terminal. */
  readonly resistance: number
  readonly noLoadAmps: number
  /** Part of the no-load current that grows with speed, 0 to 1. */
  readonly viscousShare: number
  /** rad/s of the free-run test. */
  readonly referenceSpeed: number
  readonly polePairs: number
  readonly ratedMaxRpm: number
  readonly continuousAmps: number | null
  readonly burstAmps: number | null
  /** kg·m². */
  readonly rotorInertia: number
  readonly maxTemperature: number
  readonly heatCapacity: number | null
  readonly thermalResistance: number | null
}

/** All reductions together. */
export interface Train {
  /** Motor turns per sprocket turn. */
  readonly ratio: number
  readonly efficiency: number
  /** kg·m² at one motor's shaft: rotor and driven wheels. */
  readonly inertiaAtMotor: number
}

export interface TrackPart {
  readonly count: number
  readonly pitch: number
  readonly sprocketTeeth: number
  readonly loopPitches: number
  /** m of belt per sprocket turn. */
  readonly advance: number
  readonly radius: number
  readonly massPerMetre: number
  /** kg of one loop. */
  readonly loopMass: number
  readonly pretension: number
  readonly breakingTension: number | null
  /** rad. */
  readonly wrap: number
  readonly engagedTeeth: number
  readonly teethAcross: number
  readonly share: number
  /** Part of a loop's pull on the most loaded tooth, by that share. */
  readonly toothShare: number
  readonly loopStiffness: number | null
  readonly pitchError: number
  /** How the rows share by stiffness; null where loop or tooth have none. */
  readonly springs: RowSprings | null
  readonly tooth: ToothPart | null
  readonly internalDrag: number
  readonly internalDragPerSpeed: number
}

export interface ToothPart {
  readonly height: number
  readonly root: number
  readonly width: number
  readonly loadHeight: number
  /** Pa; null where neither entry nor material gives one. */
  readonly modulus: number | null
  readonly poisson: number
  /** rad from the radial direction. */
  readonly flank: number | null
  readonly flankFriction: number
  /** Push outwards for each newton of pull; null without a flank. */
  readonly climbSlope: number | null
  /** Pa, knock-down taken off. */
  readonly allowedShear: number
  readonly allowedTensile: number
  readonly allowedBearing: number
}

export interface VehiclePart {
  /** kg, ready to run and loaded. */
  readonly mass: number
  readonly towForce: number
  readonly onTrackShare: number
  readonly contactLength: number | null
  readonly contactWidth: number | null
  readonly gauge: number | null
  readonly centreHeight: number | null
  readonly centreAhead: number | null
  /** m², frontal area times drag coefficient. */
  readonly dragArea: number
}

interface GroundCommon {
  readonly skiFriction: number
  /** rise over run. */
  readonly grade: number
  readonly sinSlope: number
  readonly cosSlope: number
  /** °C. */
  readonly airTemperature: number
  readonly altitude: number
  /** kg/m³. */
  readonly airDensity: number
  readonly turnFriction: number | null
}

export interface CoefficientGround extends GroundCommon {
  readonly model: 'coefficient'
  readonly rollingCoefficient: number
  readonly gripCoefficient: number
  readonly slip: number
}

export interface SoilGround extends GroundCommon {
  readonly model: 'soil'
  readonly exponent: number
  /** N/m^(n+1). */
  readonly cohesiveModulus: number
  /** N/m^(n+2). */
  readonly frictionalModulus: number
  readonly cohesion: number
  readonly tanFriction: number
  readonly shearModulus: number
}

export type GroundPart = CoefficientGround | SoilGround

export interface CoolingPart {
  /** m³/s. */
  readonly flow: number
  readonly density: number
  readonly specificHeat: number
  /** W/K. */
  readonly radiator: number
}

export interface AccessoriesPart {
  /** W at the pack, converter losses included. */
  readonly power: number
  readonly converters: readonly ConverterPart[]
}

interface ConverterPart {
  readonly name: string
  /** A out of the converter; null without its volts. */
  readonly amps: number | null
  readonly allowedAmps: number | null
}

export interface ServicePart {
  readonly factor: number
  readonly windingTemperature: number
  readonly loadShare: number
  readonly packTemperature: number
}
