import { allMeasured } from '../../limits/part.ts'
import {
  addWorse,
  limitIn,
  limitsOfStage,
  type StageKindLimits,
  type StageLimitFacts,
} from '../../limits/stage-kind.ts'
import type { StagePart } from '../../machine/parts.ts'
import type { LimitWorking } from '../../workings/limit.ts'
import { materialRow } from '../../workings/material.ts'
import { stageTorque } from '../../workings/stage-duty.ts'
import { shaftStress } from './physics.ts'

const working = (number: number): LimitWorking => ({
  title: `The torsion of the driven shaft of stage ${number} against the shear that its material bears.`,
  source: 'Shigley’s Mechanical Engineering Design, eqs. 3-37 and 5-21 (distortion energy)',
  write: (d, row) => {
    const path = `stages.${number - 1}`
    stageTorque(d, number, row.case, 'out')
    d.entry('d_s', `${path}.shaftDiameterMm`)
    d.step('tau', ['stress', 'torsion of the shaft'], '16 * T_k / (pi * d_s^3)')
    const material = d.checked.build.stages[number - 1]?.shaftMaterial
    if (material !== undefined) materialRow(d, 'S_y', `${path}.shaftMaterial`, material, 'yield')
    d.constant('f_y', 'shearOfYield')
    d.step('S_f', ['stress', 'shear that it bears'], 'f_y * S_y')
    return { actual: 'tau', allowed: 'S_f' }
  },
})

const facts = {
  shaft: {
    group: 'holds',
    label: 'Shaft torsion',
    sense: 'maximum',
    unit: 'Pa',
    kind: 'stress',
    needs: ['shaftDiameterMm', 'shaftMaterial'],
    working,
  },
} as const satisfies Readonly<Record<string, StageLimitFacts>>

const byName = limitsOfStage(facts)
const { shaft, ...unmeasured } = byName
allMeasured(unmeasured)

/** Limits of a driven shaft, which a reduction of any kind has. */
export const shaftLimits: StageKindLimits<keyof typeof facts, StagePart> = {
  byName,
  measure: (ledger, place, stage, duty) => {
    if (stage.shaft === null) return
    const { diameter, allowedShear } = stage.shaft
    const launch = shaftStress(duty.launchDrivenTorque, diameter)
    const top = shaftStress(duty.topDrivenTorque, diameter)
    addWorse(ledger, limitIn(shaft, place), launch, top, allowedShear)
  },
}
