import type { Stage } from '../entries/schema.ts'
import type { StageKindId } from '../entries/parts/stages/kinds.ts'
import type { StagePart } from '../machine/parts.ts'
import { caseNumber, type CaseName } from '../cases/case.ts'
import { dutyCaseNumbers } from '../cases/stage-duty.ts'
import type { Draft } from './draft.ts'
import { topMotorSpeed, topTorque } from './motion.ts'
import { loopScale, trainPull } from './pulls.ts'
import { stopPull } from './stop.ts'
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
interface CaseDuty {
  /** K_A T into the stage and of its driven shaft, N·m. */
  readonly torque: number
  readonly drivenTorque: number
  /** rad/s of the driver. */
  readonly speed: number
}

/** The place in a duty of the case that a limit names. */
function dutyPlace(name: CaseName): number {
  const place = (dutyCaseNumbers as readonly number[]).indexOf(caseNumber[name])
  if (place < 0) throw new Error(`no reduction is judged in the case ${name}`)
  return place
}

/** What a stage bears in a case, as the ledger read it. */
export function dutyOf(d: Draft, number: number, name: CaseName): CaseDuty {
  const duty = d.checked.evaluation.stageDuties[number - 1]
  if (duty === undefined) throw new Error(`no reduction ${number}`)
  const place = dutyPlace(name)
  return {
    torque: duty.into[place] ?? NaN,
    drivenTorque: duty.out[place] ?? NaN,
    speed: name === 'top' ? duty.topSpeed : 0,
  }
}

/** Pull of one loop that goes through after so many reductions, in any case but `top`. @returns its symbol */
function pullAfter(d: Draft, passed: number, name: CaseName): string {
  switch (name) {
    case 'launch':
    case 'grip':
      return trainPull(d, name, passed)
    case 'stop':
    case 'stop-free':
      return stopPull(d, name, passed)
    default:
      throw new Error(`no reduction is judged in the case ${name}`)
  }
}

/** The service factor where the case has one. */
function factors(d: Draft, name: CaseName): readonly string[] {
  if (name === 'stop' || name === 'stop-free') return []
  d.entry('K_A', 'service.factor')
  d.assume('The service factor K_A allows for shock.')
  return ['K_A']
}

/**
 * Torque after so many reductions, with the service factor but in a stop.
 *
 * @param symbol under which it is written
 */
export function torqueAfter(d: Draft, passed: number, name: CaseName, symbol: string, words: string): number {
  const numbers = Array.from({ length: passed }, (_, index) => index + 1)
  const ratios = numbers.map((number) => stageRatio(d, number))
  const told = ['torque', words] as const
  if (name === 'top') {
    topTorque(d)
    const efficiencies = numbers.map((number) => stageEfficiency(d, number))
    return d.step(symbol, told, productOf([...factors(d, name), 'T', ...ratios, ...efficiencies]))
  }
  const pull = pullAfter(d, passed, name)
  loopScale(d)
  return d.step(symbol, told, `${productOf([...factors(d, name), pull, 'r', 'N_t', ...ratios])} / (M * G)`)
}

/** `T_k`: torque into the stage; `T_s`: of its driven shaft. */
export function stageTorque(d: Draft, number: number, name: CaseName, side: 'in' | 'out'): number {
  return side === 'in'
    ? torqueAfter(d, number - 1, name, 'T_k', 'torque into the stage')
    : torqueAfter(d, number, name, 'T_s', 'torque of the driven shaft')
}

/** `omega_k`: speed of the stage’s driver; nothing at launch. */
export function driverSpeed(d: Draft, number: number, name: CaseName): number {
  const told = ['angularSpeed', 'speed of the driver'] as const
  if (name !== 'top') return d.step('omega_k', told, '0', 'it stands')
  topMotorSpeed(d)
  const ratios = Array.from({ length: number - 1 }, (_, index) => stageRatio(d, index + 1))
  return d.step('omega_k', told, ['omega', ...ratios].join(' / '))
}
