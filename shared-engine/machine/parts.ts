import type { ChemistryId } from '../reference/chemistry.ts'
import type { CoolantId } from '../reference/coolants.ts'
import type { LoopHold } from '../geometry/held-loop.ts'
import type { RowSprings } from '../geometry/row-springs.ts'
import type { StopSpring } from '../geometry/stop-spring.ts'
import type { MotorJointPart } from './joint.ts'
import type { PatternPart } from './pattern.ts'
import type { ShaftPart } from './shaft.ts'
import type { StagePart } from './stage.ts'
import type { StepDownPart, WirePart } from './wires.ts'

export type { ShaftPart } from './shaft.ts'
export type { StagePart } from './stage.ts'
export type { JointPart, MotorJointPart } from './joint.ts'
export type { BearingPart } from './bearing.ts'
export type { PatternPart, PatternRowPart } from './pattern.ts'
export type { StepDownPart, WirePart } from './wires.ts'

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
  readonly stepDowns: readonly StepDownPart[]
  readonly wires: readonly WirePart[]
  readonly service: ServicePart
}

/** The pack at its service temperature; accessories are in {@link AccessoriesPart}. */
export interface PackPart {
  readonly chemistry: ChemistryId
  readonly series: number
  readonly parallel: number
  /** V, resting, at the given charge. */
  readonly openVolts: number
  /** V, resting, full. */
  readonly fullVolts: number
  /** Ω, cells and wiring. */
  readonly resistance: number
  /** Ω, cells alone. */
  readonly cellResistance: number
  /** Ω, wiring alone. */
  readonly wiringResistance: number
  /** A·s, whole pack, as labelled. */
  readonly capacity: number
  readonly stateOfCharge: number
  readonly reserve: number
  /** A·s from the given charge to the reserve, at the pack's temperature. */
  readonly usable: number
  /** V, resting, half way between them, and at the reserve. */
  readonly middleVolts: number
  readonly reserveVolts: number
  /** V, whole pack, that charging must not pass. */
  readonly ceilingVolts: number
  readonly continuousAmps: number | null
  readonly burstAmps: number | null
  /** V, whole pack: what the trade treats as the loaded floor. */
  readonly floorVolts: number
  /** J/K of the cells. */
  readonly heatCapacity: number
  /** K/W to the air; null: no heat leaves. */
  readonly thermalResistance: number | null
  readonly maxTemperature: number
  /** A that the label lets it take. */
  readonly chargeAmps: number | null
  readonly fuseAmps: number | null
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
  /** Rise and fall time of the switches, s. */
  readonly switchingTime: number | null
  /** s. */
  readonly deadTime: number
  readonly diodeVolts: number
  readonly commutation: 'block' | 'sine'
  /** Ω, of the capacitors. */
  readonly busEsr: number
  readonly busRippleAmps: number | null
  readonly busRatedVolts: number | null
  readonly maxVolts: number | null
  /** Most motor current while braking, A; 0: it coasts. */
  readonly brakeAmps: number
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
  /** Winding and case apart, K/W and J/K. */
  readonly windingToCase: number | null
  readonly caseToSink: number | null
  readonly windingHeatCapacity: number | null
  readonly caseHeatCapacity: number | null
  /** H, terminal to terminal. */
  readonly inductance: number | null
  readonly joint: MotorJointPart | null
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
  /** L, m. */
  readonly length: number
  /** ℓ, m, from the sprocket to where the loop is pulled or held. */
  readonly tightSpan: number
  /** Its tension at rest and how it is kept tight, at the temperature of the air. */
  readonly hold: LoopHold
  readonly pretensionGiven: boolean
  /** m², inside one loop; null: that of a flat loop. */
  readonly enclosedArea: number | null
  /** N of one loop for good; null where the build gives neither it nor a breaking tension. */
  readonly workingTension: number | null
  readonly breakingTension: number | null
  /** rad. */
  readonly wrap: number
  readonly engagedTeeth: number
  readonly teethAcross: number
  readonly share: number
  /** Part of a loop's pull on the most loaded tooth, by that share. */
  readonly toothShare: number
  readonly loopStiffness: number | null
  /** e, m: the loop's pitch less the sprocket's, at the temperature of the air. */
  readonly pitchError: number
  /** How the rows share by stiffness; null where loop or tooth have none. */
  readonly springs: RowSprings | null
  /** What a held loop and its teeth are as a spring; null as above. */
  readonly stopSpring: StopSpring | null
  readonly tooth: ToothPart | null
  /** The shaft of the drive sprocket. */
  readonly shaft: ShaftPart | null
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
  /** Pa for good, knock-down taken off; null where an own material does not say. */
  readonly workShear: number | null
  readonly workTensile: number | null
  readonly workBearing: number | null
}

export interface VehiclePart {
  /** kg, ready to run and loaded. */
  readonly mass: number
  /** kg, without load. */
  readonly dryMass: number
  readonly load: number
  readonly towForce: number
  /** m above ground. */
  readonly towHeight: number
  readonly onTrackShare: number
  readonly contactLength: number | null
  readonly contactWidth: number | null
  readonly gauge: number | null
  /** m, of machine and load together, above ground and ahead of the patch's rear edge. */
  readonly centreHeight: number | null
  readonly centreAhead: number | null
  /** m, from the middle of the patch to the skis' contact. */
  readonly skiDistance: number | null
  readonly clearance: number | null
  /** N at the ground. */
  readonly brakeForce: number
  /** m², frontal area times drag coefficient. */
  readonly dragArea: number
}

interface GroundCommon {
  readonly skiFriction: number
  /** rise over run. */
  readonly grade: number
  readonly sinSlope: number
  readonly cosSlope: number
  /** rise over run, across. */
  readonly sideSlope: number
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
  readonly snow: boolean
}

export type GroundPart = CoefficientGround | SoilGround

export interface CoolingPart {
  /** m³/s. */
  readonly flow: number
  readonly density: number
  readonly specificHeat: number
  /** W/K. */
  readonly radiator: number
  readonly coolant: CoolantId
  /** °C; and K by which it boils above water. */
  readonly freezes: number
  readonly boilingRise: number
  /** m³ in the circuit. */
  readonly volume: number
  /** W/K, of the radiator's air; null: unlimited. */
  readonly airCapacity: number | null
  /** m³/s at which the motor's path to the coolant was measured; null: laminar. */
  readonly testFlow: number | null
  /** °C of the coolant when the flow was measured. */
  readonly flowTestTemperature: number
  /** W at the pack. */
  readonly pumpPower: number
  /** Pa above the air's. */
  readonly capPressure: number
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
  /** V that it stands on the bare pack; null behind a converter or supply. */
  readonly maxVolts: number | null
}

export interface ServicePart {
  readonly factor: number
  readonly windingTemperature: number
  readonly packTemperature: number
  /** s. */
  readonly burstSeconds: number
  /** h, wanted of bearings. */
  readonly lifeHours: number
  readonly pattern: PatternPart
}
