import type { Machine, StagePart } from '../build/machine-parts.ts'
import type { CaseName } from '../cases/case.ts'
import type { Evaluation } from '../cases/evaluation.ts'
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
import { setMaximum, setMinimum, worsenMaximum, type Limit, type LimitMeasure } from './limit.ts'

/** Most reductions of the build's schema. */
const most = 6

/** Torque into a stage and speed of its driver in one case. */
export interface StageDuty {
  /** K_A T, N·m, service factor included. */
  torque: number
  /** K_A T of the driven shaft, N·m. */
  drivenTorque: number
  /** rad/s. */
  speed: number
}

const launch: StageDuty = { torque: 0, drivenTorque: 0, speed: 0 }
const top: StageDuty = { torque: 0, drivenTorque: 0, speed: 0 }

/**
 * Fills what a stage bears at launch (standstill, every efficiency 1) and at top speed.
 *
 * T_k = T_motor Π ratio (Π efficiency at top) of the stages before; a driven shaft carries the torque into the next.
 *
 * *Source:* engine contract §4.
 */
export function setStageDuty(
  duty: StageDuty,
  machine: Machine,
  index: number,
  torque: number,
  speed: number,
  withLosses: boolean,
): void {
  let into = machine.service.factor * torque
  let turning = speed
  for (let before = 0; before < index; before += 1) {
    const stage = machine.stages[before]
    if (stage === undefined) break
    into *= stage.ratio * (withLosses ? stage.efficiency : 1)
    turning /= stage.ratio
  }
  const own = machine.stages[index]
  duty.torque = into
  duty.speed = turning
  duty.drivenTorque = own === undefined ? NaN : into * own.ratio * (withLosses ? own.efficiency : 1)
}

type Check = (out: LimitMeasure, stage: StagePart, duty: StageDuty, name: CaseName) => void

const checkBending: Check = (out, stage, duty, name) => {
  if (stage.kind !== 'gear') return
  const force = tangentialForce(stage, duty.torque)
  const dynamic = stageDynamicFactor(stage, duty.speed)
  const { faceWidth, module, driverForm, drivenForm } = stage
  worsenMaximum(out, lewisStress(force, faceWidth, module, driverForm, dynamic), stage.driverYield, name)
  worsenMaximum(out, lewisStress(force, faceWidth, module, drivenForm, dynamic), stage.drivenYield, name)
}

const checkTension: Check = (out, stage, duty, name) => {
  if (stage.kind === 'chain') {
    worsenMaximum(out, chainTension(stage, duty.torque, duty.speed), allowedChainTension(stage), name)
  } else if (stage.kind === 'belt') {
    const radius = pulleyRadius(stage.pitch, stage.driverTeeth)
    worsenMaximum(out, duty.torque / radius, allowedBeltPull(stage, duty.speed * radius), name)
  }
}

const checkShaft: Check = (out, stage, duty, name) => {
  if (stage.shaft === null) return
  worsenMaximum(out, shaftStress(duty.drivenTorque, stage.shaft.diameter), stage.shaft.allowedShear, name)
}

/** Measures a check in both cases and keeps the worse. */
function measureBoth(
  out: LimitMeasure,
  e: Evaluation,
  machine: Machine,
  index: number,
  stage: StagePart,
  check: Check,
): true {
  out.margin = Infinity
  setStageDuty(launch, machine, index, e.launchTorque, 0, false)
  check(out, stage, launch, 'launch')
  if (e.top.exists) {
    setStageDuty(top, machine, index, e.top.torque, e.top.motorSpeed, true)
    check(out, stage, top, 'top')
  }
  return true
}

/** Limits of the n-th reduction, counted from 1. */
function limitsOfStage(number: number): readonly Limit[] {
  const index = number - 1
  const base = { part: `stage.${number}`, question: 'hold', sense: 'maximum' } as const
  return [
    {
      id: `stage.${number}.bending`,
      label: `Gear tooth bending, stage ${number}`,
      ...base,
      unit: 'Pa',
      kind: 'stress',
      needs: [],
      measure: (out, e, machine) => {
        const stage = machine.stages[index]
        return stage?.kind === 'gear' && measureBoth(out, e, machine, index, stage, checkBending)
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
        if (stage?.kind !== 'belt' && stage?.kind !== 'chain') return false
        return measureBoth(out, e, machine, index, stage, checkTension)
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
        if (stage?.kind !== 'chain' || !e.top.exists) return false
        setStageDuty(top, machine, index, e.top.torque, e.top.motorSpeed, true)
        return setMaximum(out, top.torque * top.speed, chainPowerRating(stage, top.speed), 'top')
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
        const stage = machine.stages[index]
        if (stage === undefined || stage.shaft === null) return false
        return measureBoth(out, e, machine, index, stage, checkShaft)
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
  ]
}

/** Limits of the reductions: one list for every stage that a build may hold. */
export const stageLimits: readonly (readonly Limit[])[] = Array.from({ length: most }, (_, index) =>
  limitsOfStage(index + 1),
)
