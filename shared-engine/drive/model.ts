import { airDragFactorOf } from '../ground/resistance.ts'
import type { Machine, PatternRowPart } from '../machine/parts.ts'
import { cellResistanceFactor, openCircuitVolts } from '../reference/chemistry.ts'
import { equivalentMassOf } from '../vehicle/inertia.ts'
import { rowGroundOf, type RowGround } from '../vehicle/row-ground.ts'
import { restSpeed } from './drive.ts'
import { heatModelOf, type HeatModel } from './heat-model.ts'

/** One row with its ground worked out. */
export interface SettledRow {
  readonly row: PatternRowPart
  readonly ground: RowGround
  /** What it asks for, in one of three manners; the share is of all brakes, 0 for a shut throttle. */
  readonly ask: { readonly throttle: number } | { readonly speed: number } | { readonly brake: number }
  /** Share of the time in turns on the spot; 0 where the machine cannot. */
  readonly turnShare: number
  /** kg that the motors' force accelerates while the track grips: m + m_r/(1 − i). */
  readonly drivenMass: number
}

/** What is held as it was at the start, for comparison with closed forms. */
export interface Held {
  readonly charge?: boolean
  readonly packTemperature?: boolean
  /** K_t and R_m at the service temperature. */
  readonly electrics?: boolean
  /** The coolant flows as it did at the temperature of its test. */
  readonly flow?: boolean
}

/** What stays the same through a drive. */
export interface DriveModel {
  readonly machine: Machine
  /** ½ ρ C_d A. */
  readonly airDragFactor: number
  /** m_r, kg at the belt: what turns and circulates. */
  readonly rotorMass: number
  /** kg of it that the machine does not have, see {@link leastRotorMassOf}; 0 for most. */
  readonly rotorMassAdded: number
  /** Slip of a gripping track; 0 on soil, where it follows from the thrust. */
  readonly slip: number
  /** S r/P of the cells at 25 °C, Ω. */
  readonly coolCells: number
  readonly rows: readonly SettledRow[]
  readonly heat: HeatModel
  readonly held: Held
}

/**
 * Works out what stays the same.
 *
 * @param topSpeed m/s of the running state; rows in percent of it ask for 0 without one
 */
export function driveModelOf(
  machine: Machine,
  rows: readonly PatternRowPart[],
  topSpeed: number,
  held: Held = {},
): DriveModel {
  const { pack, service } = machine
  const own = equivalentMassOf(machine) - machine.vehicle.mass
  const least = leastRotorMassOf(machine)
  const rotorMass = Math.max(own, least)
  const slip = machine.ground.model === 'coefficient' ? machine.ground.slip : 0
  return {
    machine,
    airDragFactor: airDragFactorOf(machine),
    rotorMass,
    rotorMassAdded: rotorMass - own,
    slip,
    coolCells: pack.cellResistance / cellResistanceFactor(service.packTemperature),
    rows: rows.map((row) => settledRow(machine, row, topSpeed, rotorMass / (1 - slip))),
    heat: heatModelOf(machine, held),
    held,
  }
}

/** Time within which a free belt finds its speed at the soonest, s. *Source:* assumption, for the sake of the steps. */
const beltTime = 1e-3

/**
 * Mass at the belt below which a free belt would find its speed faster than anything else happens.
 *
 * m = 1 ms · M η (K_t G/r)²/R_s at 20 °C: the slope of the motors' force over the belt's speed at its steepest.
 */
function leastRotorMassOf({ motor, controller, train, track }: Machine): number {
  const perBelt = (motor.torqueConstant * train.ratio) / track.radius
  const series = motor.resistance + controller.resistance
  return (beltTime * motor.count * train.efficiency * perBelt * perBelt) / series
}

function settledRow(
  machine: Machine,
  row: PatternRowPart,
  topSpeed: number,
  rotorsDriven: number,
): SettledRow {
  const ground = rowGroundOf(machine, row)
  return {
    row,
    ground,
    ask: askOf(machine, row, topSpeed),
    turnShare: Number.isNaN(ground.pivotThrust) ? 0 : row.turnShare,
    drivenMass: ground.mass + rotorsDriven,
  }
}

function askOf(machine: Machine, { kind, value }: PatternRowPart, topSpeed: number): SettledRow['ask'] {
  if (kind === 'speed') return { speed: value }
  if (kind === 'topShare') return { speed: Number.isNaN(topSpeed) ? 0 : value * topSpeed }
  if (kind === 'brake') return { brake: value }
  return value > 0 ? { throttle: Math.min(value, machine.controller.throttleCap) } : { brake: 0 }
}

/** m/s at and below which a row's machine stands: {@link restSpeed} where that is what it asks for. */
export function leastSpeedOf({ ask }: SettledRow): number {
  return 'speed' in ask && ask.speed === 0 ? restSpeed : 0
}

/** V_oc at a charge, V of the whole pack. */
export function openVoltsAt({ pack }: Machine, charge: number): number {
  return pack.series * openCircuitVolts(pack.chemistry, charge)
}
