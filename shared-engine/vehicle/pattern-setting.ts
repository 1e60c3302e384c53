import type { Machine } from '../build/machine-parts.ts'
import { machineOf } from '../build/machine.ts'
import type { Build } from '../build/schema.ts'
import { Footing, setFooting } from '../ground/footing.ts'
import { airDragFactorOf } from '../ground/resistance.ts'
import type { ChemistryId } from '../reference/chemistry.ts'
import { equivalentMassOf } from './inertia.ts'
import { coolantTurnover, type Pattern, type PatternRow } from './pattern.ts'

/** One row with its ground worked out. */
export interface SettledRow {
  readonly row: PatternRow
  readonly footing: Footing
  /** m g sin θ, N. */
  readonly slopeForce: number
}

/** What stays the same through a drive. */
export interface PatternSetting {
  readonly machine: Machine
  readonly chemistry: ChemistryId
  readonly airDragFactor: number
  readonly mass: number
  readonly rows: readonly SettledRow[]
  /** Whether winding and controller are followed, and not held at a given temperature. */
  readonly followsWinding: boolean
  readonly followsController: boolean
  /** J/K of the coolant; 0 without a circuit. */
  readonly coolantCapacity: number
}

/** Works out what stays the same. */
export function patternSettingOf(build: Build, pattern: Pattern): PatternSetting {
  const machine = machineOf(build)
  const { motor, controller, cooling } = machine
  return {
    machine,
    chemistry: build.pack.chemistry,
    airDragFactor: airDragFactorOf(machine),
    mass: equivalentMassOf(machine),
    rows: pattern.rows.map((row) => settled(machine, row)),
    followsWinding: motor.heatCapacity !== null && motor.thermalResistance !== null,
    followsController: controller.heatCapacity !== null && controller.thermalResistance !== null,
    coolantCapacity:
      cooling === null ? 0 : cooling.density * cooling.specificHeat * cooling.flow * coolantTurnover,
  }
}

function settled(machine: Machine, row: PatternRow): SettledRow {
  const grade = row.grade ?? machine.ground.grade
  const cosine = 1 / Math.hypot(1, grade)
  const footing = new Footing()
  setFooting(footing, machine, grade * cosine, cosine)
  return { row, footing, slopeForce: (footing.weight / cosine) * grade * cosine }
}
