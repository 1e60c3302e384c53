import type { BeltStage, ChainStage, GearStage, Machine, StagePart } from '../build/machine-parts.ts'
import type { Evaluation } from '../cases/evaluation.ts'
import { mostStages, type StageDuty } from '../cases/stage-duty.ts'
import { allowedBeltPull } from '../stages/belt.ts'
import { allowedChainTension, chainPowerRating, chainTension } from '../stages/chain.ts'
import { bendingStress, leastContactRatio, stageDynamicFactor, tangentialForce } from '../stages/gear.ts'
import { shaftStress } from '../stages/shaft.ts'
import { addMaximum, addMinimum, worsenMaximum, type Ledger } from './ledger.ts'
import type { Limit } from './limit.ts'

/** Limits of one reduction, whatever its kind. */
interface StageLimits {
  readonly bending: Limit
  readonly tension: Limit
  readonly power: Limit
  readonly interference: Limit
  readonly contactRatio: Limit
  readonly shaft: Limit
}

/** Limits of the reduction at a place, counted from 0; in their names it counts from 1. */
function limitsAt(index: number): StageLimits {
  const number = index + 1
  const base = { part: `stage.${number}`, question: 'hold', sense: 'maximum', needs: [] } as const
  const stress = { ...base, unit: 'Pa', kind: 'stress' } as const
  const geometry = { ...base, sense: 'minimum', unit: '1' } as const
  const limit = (id: string, label: string) => ({
    id: `stage.${number}.${id}`,
    label: `${label}, stage ${number}`,
  })
  return {
    bending: { ...limit('bending', 'Gear tooth bending'), ...stress },
    tension: { ...limit('tension', 'Belt or chain pull'), ...base, unit: 'N', kind: 'force' },
    power: { ...limit('power', 'Chain power'), ...base, unit: 'W', kind: 'watts' },
    interference: { ...limit('interference', 'Pinion undercut'), ...geometry, kind: 'count' },
    contactRatio: { ...limit('contact-ratio', 'Contact ratio'), ...geometry, kind: 'none' },
    shaft: {
      ...limit('shaft', 'Shaft torsion'),
      ...stress,
      needs: [`stages.${index}.shaftDiameterMm`, `stages.${index}.shaftMaterial`],
    },
  }
}

const byPlace: readonly StageLimits[] = Array.from({ length: mostStages }, (_, index) => limitsAt(index))

/** Every limit of the reductions by place, whatever their kind. */
export const stageLimits: readonly (readonly Limit[])[] = byPlace.map((limits) => Object.values(limits))

/** Limits that a reduction of a kind can have at a place, counted from 0. *Source:* engine contract §4. */
export function limitsOfKind(kind: StagePart['kind'], index: number): readonly Limit[] {
  const limits = byPlace[index]
  if (limits === undefined) return []
  switch (kind) {
    case 'gear':
      return [limits.bending, limits.interference, limits.contactRatio, limits.shaft]
    case 'belt':
      return [limits.tension, limits.shaft]
    case 'chain':
      return [limits.tension, limits.power, limits.shaft]
    case 'fixed':
      return [limits.shaft]
  }
}

/** Adds those that the machine's reductions have. *Source:* engine contract §§4 and 8, the rows of the same ids. */
export function measureStages(ledger: Ledger, e: Evaluation, machine: Machine): void {
  const { stages } = machine
  for (let index = 0; index < stages.length; index += 1) {
    const stage = stages[index]
    const duty = e.stageDuties[index]
    const limits = byPlace[index]
    if (stage === undefined || duty === undefined || limits === undefined) return
    if (stage.kind === 'gear') measureGear(ledger, limits, stage, duty, e.top.exists)
    else if (stage.kind === 'belt') measureBelt(ledger, limits, stage, duty, e.top.exists)
    else if (stage.kind === 'chain') measureChain(ledger, limits, stage, duty, e.top.exists)
    measureShaft(ledger, limits, stage, duty, e.top.exists)
  }
}

function measureGear(
  ledger: Ledger,
  limits: StageLimits,
  stage: GearStage,
  duty: StageDuty,
  moving: boolean,
): void {
  const launch = bendingStress(stage, tangentialForce(stage, duty.launchTorque), 1)
  // without a torque both wheels bear the same, nothing: the first one is named
  const allowed = launch > 0 ? stage.bendingYield : stage.driverYield
  addMaximum(ledger, limits.bending, launch, allowed, 'launch')
  if (moving) {
    const dynamic = stageDynamicFactor(stage, duty.topSpeed)
    const top = bendingStress(stage, tangentialForce(stage, duty.topTorque), dynamic)
    worsenMaximum(ledger, top, stage.bendingYield, 'top')
  }
  const smaller = Math.min(stage.driverTeeth, stage.drivenTeeth)
  addMinimum(ledger, limits.interference, smaller, stage.fewestTeeth, 'build')
  addMinimum(ledger, limits.contactRatio, stage.contactRatio, leastContactRatio, 'build')
}

function measureBelt(
  ledger: Ledger,
  limits: StageLimits,
  stage: BeltStage,
  duty: StageDuty,
  moving: boolean,
): void {
  const radius = stage.driverRadius
  addMaximum(ledger, limits.tension, duty.launchTorque / radius, allowedBeltPull(stage, 0), 'launch')
  if (!moving) return
  worsenMaximum(ledger, duty.topTorque / radius, allowedBeltPull(stage, duty.topSpeed * radius), 'top')
}

function measureChain(
  ledger: Ledger,
  limits: StageLimits,
  stage: ChainStage,
  duty: StageDuty,
  moving: boolean,
): void {
  const allowed = allowedChainTension(stage)
  addMaximum(ledger, limits.tension, chainTension(stage, duty.launchTorque, 0), allowed, 'launch')
  if (!moving) return
  worsenMaximum(ledger, chainTension(stage, duty.topTorque, duty.topSpeed), allowed, 'top')
  const power = duty.topTorque * duty.topSpeed
  addMaximum(ledger, limits.power, power, chainPowerRating(stage, duty.topSpeed), 'top')
}

function measureShaft(
  ledger: Ledger,
  limits: StageLimits,
  stage: StagePart,
  duty: StageDuty,
  moving: boolean,
): void {
  const shaft = stage.shaft
  if (shaft === null) return
  const launch = shaftStress(duty.launchDrivenTorque, shaft.diameter)
  addMaximum(ledger, limits.shaft, launch, shaft.allowedShear, 'launch')
  if (!moving) return
  worsenMaximum(ledger, shaftStress(duty.topDrivenTorque, shaft.diameter), shaft.allowedShear, 'top')
}
