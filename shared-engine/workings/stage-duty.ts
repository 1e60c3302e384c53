import type { Stage } from '../entries/schema.ts'
import type { StageKindId } from '../entries/parts/stages/kinds.ts'
import type { StagePart } from '../machine/parts.ts'
import type { CaseName } from '../cases/case.ts'
import type { Draft } from './draft.ts'
import { topMotorSpeed, topTorque } from './motion.ts'
import { productOf, stageEfficiency, stageRatio } from './train.ts'

// Torque into a reduction and speed of its driver, in the case that a limit names.

type Of<Kinds extends { kind: StageKindId }, Kind extends StageKindId> = Extract<Kinds, { kind: Kind }>

/** The n-th reduction, which the caller knows to be of a kind. */
export function stageOf<Kind extends StageKindId>(d: Draft, number: number, kind: Kind): Of<StagePart, Kind> {
  const stage = d.checked.machine.stages[number - 1]
  if (stage?.kind !== kind) throw new Error(`stage ${number} is no ${kind}`)
  return stage as Of<StagePart, Kind>
}

/** The same as it is stored. */
export function storedStageOf<Kind extends StageKindId>(
  d: Draft,
  number: number,
  kind: Kind,
): Of<Stage, Kind> {
  const stage = d.checked.build.stages[number - 1]
  if (stage?.kind !== kind) throw new Error(`stage ${number} is no ${kind}`)
  return stage as Of<Stage, Kind>
}

/** What a stage bears in the case that a limit names. */
export interface CaseDuty {
  /** K_A T into the stage and of its driven shaft, N·m. */
  readonly torque: number
  readonly drivenTorque: number
  /** rad/s of the driver. */
  readonly speed: number
}

/** What a stage bears in a case, as the ledger read it. */
export function dutyOf(d: Draft, number: number, name: CaseName): CaseDuty {
  const duty = d.checked.evaluation.stageDuties[number - 1]
  if (duty === undefined) throw new Error(`no reduction ${number}`)
  if (name === 'top')
    return { torque: duty.topTorque, drivenTorque: duty.topDrivenTorque, speed: duty.topSpeed }
  return { torque: duty.launchTorque, drivenTorque: duty.launchDrivenTorque, speed: 0 }
}

/** Writes the torque of one motor in the case. @returns its symbol */
function motorTorque(d: Draft, name: CaseName): string {
  if (name === 'top') {
    topTorque(d)
    return 'T'
  }
  d.figure('T_L', 'launchSprocketTorqueNm')
  d.entry('M', 'motor.count')
  d.figure('G', 'ratio')
  d.assume('A standing train loses nothing in the launch case: every efficiency is 1, the safe side.')
  const told = ['torque', 'torque of one motor, case launch'] as const
  d.step('T_m', told, 'T_L / (M * G)')
  return 'T_m'
}

/** Ratios, and at top speed efficiencies, of the first stages. */
function gains(d: Draft, stages: number, name: CaseName): readonly string[] {
  const numbers = Array.from({ length: stages }, (_, index) => index + 1)
  const ratios = numbers.map((number) => stageRatio(d, number))
  return name === 'top' ? [...ratios, ...numbers.map((number) => stageEfficiency(d, number))] : ratios
}

/** `T_k`: torque into the stage, or out of it on its driven shaft, with the service factor. */
export function stageTorque(d: Draft, number: number, name: CaseName, side: 'in' | 'out'): number {
  const motor = motorTorque(d, name)
  d.entry('K_A', 'service.factor')
  d.assume('The service factor K_A allows for shock.')
  const product = productOf(['K_A', motor, ...gains(d, side === 'in' ? number - 1 : number, name)])
  const words =
    side === 'in'
      ? 'torque into the stage, with the service factor'
      : 'torque of the driven shaft, with the service factor'
  return d.step('T_k', ['torque', words], product)
}

/** `omega_k`: speed of the stage’s driver; nothing at launch. */
export function driverSpeed(d: Draft, number: number, name: CaseName): number {
  const told = ['angularSpeed', 'speed of the driver'] as const
  if (name !== 'top') return d.step('omega_k', told, '0', 'it stands')
  topMotorSpeed(d)
  const ratios = Array.from({ length: number - 1 }, (_, index) => stageRatio(d, index + 1))
  return d.step('omega_k', told, ['omega', ...ratios].join(' / '))
}
