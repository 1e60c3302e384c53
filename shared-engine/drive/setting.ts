import type { Machine } from '../machine/parts.ts'
import { machineOf } from '../machine/machine.ts'
import type { Build } from '../entries/schema.ts'
import { Footing, setFooting } from '../ground/footing.ts'
import { airDragFactorOf } from '../ground/resistance.ts'
import type { ChemistryId } from '../reference/chemistry.ts'
import { equivalentMassOf } from '../vehicle/inertia.ts'
import { coolantTurnover, type Pattern, type PatternRow } from './drive.ts'

/** One row with its ground worked out. */
export interface SettledRow {
  readonly row: PatternRow
  readonly footing: Footing
  /** m g sin θ, N. */
  readonly slopeForce: number
}

/** What stays the same through a drive. */
export interface DriveSetting {
  readonly machine: Machine
  readonly chemistry: ChemistryId
  readonly airDragFactor: number
  /** kg that the thrust accelerates. */
  readonly mass: number
  /** Whether that is more than the machine's own, see {@link leastMassOf}. */
  readonly massRaised: boolean
  readonly rows: readonly SettledRow[]
  /** Whether winding and controller are followed, and not held at a given temperature. */
  readonly followsWinding: boolean
  readonly followsController: boolean
  /** J/K of the coolant; 0 without a circuit. */
  readonly coolantCapacity: number
}

/** Works out what stays the same. */
export function driveSettingOf(build: Build, pattern: Pattern): DriveSetting {
  const machine = machineOf(build)
  const { motor, controller, cooling } = machine
  const ownMass = equivalentMassOf(machine)
  const leastMass = leastMassOf(machine)
  return {
    machine,
    chemistry: build.pack.chemistry,
    airDragFactor: airDragFactorOf(machine),
    mass: Math.max(ownMass, leastMass),
    massRaised: leastMass > ownMass,
    rows: pattern.rows.map((row) => settled(machine, row)),
    followsWinding: motor.heatCapacity !== null && motor.thermalResistance !== null,
    followsController: controller.heatCapacity !== null && controller.thermalResistance !== null,
    coolantCapacity:
      cooling === null ? 0 : cooling.density * cooling.specificHeat * cooling.flow * coolantTurnover,
  }
}

/** s within which speed settles at the soonest. *Source:* assumption, for the sake of the steps: nobody feels less. */
const settlingTime = 0.02

/**
 * Mass below which speed would settle faster than can be followed step by step: a light machine with a short gear.
 *
 * m = τ · dF_m/dv_b, with dF_m/dv_b = M η (K_t G/r)²/R_s at its steepest.
 */
function leastMassOf({ motor, controller, train, track }: Machine): number {
  const perBelt = (motor.torqueConstant * train.ratio) / track.radius
  return (
    (settlingTime * motor.count * train.efficiency * perBelt ** 2) /
    (motor.resistance + controller.resistance)
  )
}

function settled(machine: Machine, row: PatternRow): SettledRow {
  const grade = row.grade ?? machine.ground.grade
  const cosine = 1 / Math.hypot(1, grade)
  const footing = new Footing()
  setFooting(footing, machine, grade * cosine, cosine)
  return { row, footing, slopeForce: (footing.weight / cosine) * grade * cosine }
}
