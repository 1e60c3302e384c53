import type { BeltStage, ChainStage, GearStage, Machine, ShaftPart, StagePart } from '../machine/parts.ts'
import { apart, caseNumber } from '../cases/case.ts'
import type { Evaluation } from '../cases/evaluation.ts'
import { mostStages, type StageDuty } from '../cases/stage-duty.ts'
import { allowedBeltPull } from '../stages/belt/physics.ts'
import { allowedChainTension, chainPowerRating, chainTension } from '../stages/chain/physics.ts'
import {
  bendingStress,
  leastContactRatio,
  stageDynamicFactor,
  tangentialForce,
} from '../stages/gear/physics.ts'
import { shaftStress } from '../stages/shaft/physics.ts'
import { addMaximum, addMinimum, marginBelow, type Ledger } from './ledger.ts'
import { listedLimit, type Limit } from './limit.ts'

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
    bending: listedLimit({ ...limit('bending', 'Gear tooth bending'), ...stress }),
    tension: listedLimit({ ...limit('tension', 'Belt or chain pull'), ...base, unit: 'N', kind: 'force' }),
    power: listedLimit({ ...limit('power', 'Chain power'), ...base, unit: 'W', kind: 'watts' }),
    interference: listedLimit({ ...limit('interference', 'Pinion undercut'), ...geometry, kind: 'count' }),
    contactRatio: listedLimit({ ...limit('contact-ratio', 'Contact ratio'), ...geometry, kind: 'none' }),
    shaft: listedLimit({
      ...limit('shaft', 'Shaft torsion'),
      ...stress,
      needs: [`stages.${index}.shaftDiameterMm`, `stages.${index}.shaftMaterial`],
    }),
  }
}

const byPlace: readonly StageLimits[] = Array.from({ length: mostStages }, (_, index) => limitsAt(index))

/** Every limit of the reductions by place, whatever their kind. */
export const stageLimits: readonly (readonly Limit[])[] = byPlace.map((limits) => Object.values(limits))

/** Limits that a reduction of a kind can have at a place, counted from 0. *Source:* `docs/model.md` §4. */
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

/** Adds those that the machine's reductions have. *Source:* `docs/model.md` §§4 and 8, rows of the same ids. */
export function measureStages(ledger: Ledger, e: Evaluation, machine: Machine): void {
  const { stages } = machine
  const moving = e.top.exists
  for (let index = 0; index < stages.length; index += 1) {
    const stage = stages[index]
    const duty = e.stageDuties[index]
    const limits = byPlace[index]
    if (stage === undefined || duty === undefined || limits === undefined) return
    if (stage.kind === 'gear') measureGear(ledger, limits, stage, duty)
    else if (stage.kind === 'belt') measureBelt(ledger, limits, stage, duty, moving)
    else if (stage.kind === 'chain') measureChain(ledger, limits, stage, duty, moving)
    if (stage.shaft !== null) measureShaft(ledger, limits.shaft, stage.shaft, duty)
  }
}

function measureGear(ledger: Ledger, limits: StageLimits, stage: GearStage, duty: StageDuty): void {
  const launch = bendingStress(stage, tangentialForce(stage, duty.launchTorque), 1)
  const dynamic = stageDynamicFactor(stage, duty.topSpeed)
  const top = bendingStress(stage, tangentialForce(stage, duty.topTorque), dynamic)
  // without a torque both wheels bear the same, nothing: the first one is named
  addWorse(
    ledger,
    limits.bending,
    launch,
    top,
    launch > 0 || top > 0 ? stage.bendingYield : stage.driverYield,
  )
  const smaller = Math.min(stage.driverTeeth, stage.drivenTeeth)
  addMinimum(ledger, limits.interference, smaller, stage.fewestTeeth, caseNumber.build)
  addMinimum(ledger, limits.contactRatio, stage.contactRatio, leastContactRatio, caseNumber.build)
}

function measureBelt(
  ledger: Ledger,
  limits: StageLimits,
  stage: BeltStage,
  duty: StageDuty,
  moving: boolean,
): void {
  const launch = duty.launchTorque / stage.driverRadius
  const top = duty.topTorque / stage.driverRadius
  const standing = allowedBeltPull(stage, 0)
  const running = allowedBeltPull(stage, duty.topSpeed * stage.driverRadius)
  const worseAtTop = 1 - marginBelow(top, running) > (1 - marginBelow(launch, standing)) * apart
  if (moving && worseAtTop) {
    addMaximum(ledger, limits.tension, top, running, caseNumber.top)
  } else addMaximum(ledger, limits.tension, launch, standing, caseNumber.launch)
}

function measureChain(
  ledger: Ledger,
  limits: StageLimits,
  stage: ChainStage,
  duty: StageDuty,
  moving: boolean,
): void {
  const launch = chainTension(stage, duty.launchTorque, 0)
  const top = chainTension(stage, duty.topTorque, duty.topSpeed)
  addWorse(ledger, limits.tension, launch, top, allowedChainTension(stage))
  if (!moving) return
  const power = duty.topTorque * duty.topSpeed
  addMaximum(ledger, limits.power, power, chainPowerRating(stage, duty.topSpeed), caseNumber.top)
}

function measureShaft(ledger: Ledger, limit: Limit, shaft: ShaftPart, duty: StageDuty): void {
  const launch = shaftStress(duty.launchDrivenTorque, shaft.diameter)
  const top = shaftStress(duty.topDrivenTorque, shaft.diameter)
  addWorse(ledger, limit, launch, top, shaft.allowedShear)
}

/**
 * Adds the worse of a jam and of top speed, which one value allows; the jam where they are equal.
 *
 * @param top NaN where there is no top speed
 */
function addWorse(ledger: Ledger, limit: Limit, launch: number, top: number, allowed: number): void {
  const atTop = top > launch * apart
  addMaximum(ledger, limit, atTop ? top : launch, allowed, atTop ? caseNumber.top : caseNumber.launch)
}
