import type { BeltStage, ChainStage, GearStage, ShaftPart, StagePart } from '../build/machine-parts.ts'
import type { CaseName } from '../cases/case.ts'
import { mostStages, type StageDuty } from '../cases/stage-duty.ts'
import { allowedBeltPull, pulleyRadius } from '../stages/belt.ts'
import { allowedChainTension, chainPowerRating, chainTension } from '../stages/chain.ts'
import {
  contactRatioOf,
  fewestTeethOf,
  leastContactRatio,
  lewisStress,
  stageDynamicFactor,
  tangentialForce,
} from '../stages/gear.ts'
import { shaftStress } from '../stages/shaft.ts'
import {
  defineLimits,
  setMaximum,
  setMinimum,
  worsenMaximum,
  type Limit,
  type LimitMeasure,
} from './limit.ts'

/** Starts a measure of which the worst case is wanted. */
function startWorst(out: LimitMeasure): void {
  out.margin = Infinity
}

/** Bending of both wheels in one case. */
function worsenBending(
  out: LimitMeasure,
  stage: GearStage,
  torque: number,
  speed: number,
  name: CaseName,
): void {
  const force = tangentialForce(stage, torque)
  const dynamic = stageDynamicFactor(stage, speed)
  const { faceWidth, module, driverForm, drivenForm } = stage
  worsenMaximum(out, lewisStress(force, faceWidth, module, driverForm, dynamic), stage.driverYield, name)
  worsenMaximum(out, lewisStress(force, faceWidth, module, drivenForm, dynamic), stage.drivenYield, name)
}

/** Bending of both wheels: the wheel and the case with the worse margin. */
function measureBending(out: LimitMeasure, stage: GearStage, duty: StageDuty, moving: boolean): true {
  startWorst(out)
  worsenBending(out, stage, duty.launchTorque, 0, 'launch')
  if (moving) worsenBending(out, stage, duty.topTorque, duty.topSpeed, 'top')
  return true
}

function measureChainTension(out: LimitMeasure, stage: ChainStage, duty: StageDuty, moving: boolean): true {
  const allowed = allowedChainTension(stage)
  startWorst(out)
  worsenMaximum(out, chainTension(stage, duty.launchTorque, 0), allowed, 'launch')
  if (moving) worsenMaximum(out, chainTension(stage, duty.topTorque, duty.topSpeed), allowed, 'top')
  return true
}

function measureBeltPull(out: LimitMeasure, stage: BeltStage, duty: StageDuty, moving: boolean): true {
  const radius = pulleyRadius(stage.pitch, stage.driverTeeth)
  startWorst(out)
  worsenMaximum(out, duty.launchTorque / radius, allowedBeltPull(stage, 0), 'launch')
  if (moving) {
    worsenMaximum(out, duty.topTorque / radius, allowedBeltPull(stage, duty.topSpeed * radius), 'top')
  }
  return true
}

function measureShaft(out: LimitMeasure, shaft: ShaftPart, duty: StageDuty, moving: boolean): true {
  startWorst(out)
  worsenMaximum(out, shaftStress(duty.launchDrivenTorque, shaft.diameter), shaft.allowedShear, 'launch')
  if (moving) {
    worsenMaximum(out, shaftStress(duty.topDrivenTorque, shaft.diameter), shaft.allowedShear, 'top')
  }
  return true
}

/** Limits of the n-th reduction, counted from 1. */
function limitsOfStage(number: number): readonly Limit[] {
  const index = number - 1
  const base = { part: `stage.${number}`, question: 'hold', sense: 'maximum' } as const
  return defineLimits([
    {
      id: `stage.${number}.bending`,
      label: `Gear tooth bending, stage ${number}`,
      ...base,
      unit: 'Pa',
      kind: 'stress',
      needs: [],
      measure: (out, e, machine) => {
        const stage = machine.stages[index]
        const duty = e.stageDuties[index]
        return stage?.kind === 'gear' && duty !== undefined && measureBending(out, stage, duty, e.top.exists)
      },
    },
    {
      id: `stage.${number}.tension`,
      label: `Belt or chain pull, stage ${number}`,
      ...base,
      unit: 'N',
      kind: 'force',
      needs: [],
      measure: (out, e, machine) => {
        const stage = machine.stages[index]
        const duty = e.stageDuties[index]
        if (duty === undefined) return false
        if (stage?.kind === 'belt') return measureBeltPull(out, stage, duty, e.top.exists)
        return stage?.kind === 'chain' && measureChainTension(out, stage, duty, e.top.exists)
      },
    },
    {
      id: `stage.${number}.power`,
      label: `Chain power, stage ${number}`,
      ...base,
      unit: 'W',
      kind: 'watts',
      needs: [],
      measure: (out, e, machine) => {
        const stage = machine.stages[index]
        const duty = e.stageDuties[index]
        if (stage?.kind !== 'chain' || !e.top.exists || duty === undefined) return false
        const power = duty.topTorque * duty.topSpeed
        return setMaximum(out, power, chainPowerRating(stage, duty.topSpeed), 'top')
      },
    },
    {
      id: `stage.${number}.shaft`,
      label: `Shaft torsion, stage ${number}`,
      ...base,
      unit: 'Pa',
      kind: 'stress',
      needs: [`stages.${index}.shaftDiameterMm`, `stages.${index}.shaftMaterial`],
      measure: (out, e, machine) => {
        const shaft = machine.stages[index]?.shaft
        const duty = e.stageDuties[index]
        if (shaft === undefined || shaft === null || duty === undefined) return false
        return measureShaft(out, shaft, duty, e.top.exists)
      },
    },
    {
      id: `stage.${number}.interference`,
      label: `Pinion undercut, stage ${number}`,
      ...base,
      sense: 'minimum',
      unit: '1',
      kind: 'count',
      needs: [],
      measure: (out, _e, machine) => {
        const stage = machine.stages[index]
        if (stage?.kind !== 'gear') return false
        const smaller = Math.min(stage.driverTeeth, stage.drivenTeeth)
        return setMinimum(out, smaller, fewestTeethOf(stage), 'build')
      },
    },
    {
      id: `stage.${number}.contact-ratio`,
      label: `Contact ratio, stage ${number}`,
      ...base,
      sense: 'minimum',
      unit: '1',
      kind: 'none',
      needs: [],
      measure: (out, _e, machine) => {
        const stage = machine.stages[index]
        return stage?.kind === 'gear' && setMinimum(out, contactRatioOf(stage), leastContactRatio, 'build')
      },
    },
  ])
}

/** Every limit of the reductions by number, whatever their kind. */
export const stageLimits: readonly (readonly Limit[])[] = Array.from({ length: mostStages }, (_, index) =>
  limitsOfStage(index + 1),
)

/** What each kind of reduction is checked for, besides its shaft. *Source:* engine contract §4. */
const checksOf: Readonly<Record<StagePart['kind'], readonly string[]>> = {
  gear: ['bending', 'interference', 'contact-ratio'],
  belt: ['tension'],
  chain: ['tension', 'power'],
  fixed: [],
}

function pickedFor(kind: StagePart['kind']): readonly (readonly Limit[])[] {
  const wanted = [...checksOf[kind], 'shaft']
  return stageLimits.map((limits) => limits.filter(({ id }) => wanted.includes(id.split('.')[2] ?? '')))
}

const byKind: Readonly<Record<StagePart['kind'], readonly (readonly Limit[])[]>> = {
  gear: pickedFor('gear'),
  belt: pickedFor('belt'),
  chain: pickedFor('chain'),
  fixed: pickedFor('fixed'),
}

/** Limits that a reduction of a kind can have at a place, counted from 0. */
export function limitsOfKind(kind: StagePart['kind'], index: number): readonly Limit[] {
  return byKind[kind][index] ?? []
}
