import { caseNumber } from '../../cases/case.ts'
import { dutyCase, lastingCases, mishapCases } from '../../cases/stage-duty.ts'
import type { Build } from '../../entries/schema.ts'
import { addMinimum, type Ledger } from '../../limits/ledger.ts'
import type { Limit } from '../../limits/limit.ts'
import { allMeasured } from '../../limits/part.ts'
import {
  limitIn,
  limitsOfStage,
  type StageKindLimits,
  type StageLimitFacts,
} from '../../limits/stage-kind.ts'
import { lackingForStop } from '../../limits/stop-needs.ts'
import { addWorstOf } from '../../limits/worst-case.ts'
import { materialOf } from '../../reference/materials.ts'
import type { GearStage, RootStrength } from './machine.ts'
import { gearOrder } from './order.ts'
import {
  bendingStress,
  flankStress,
  leastContactRatio,
  stageDynamicFactor,
  tangentialForce,
} from './physics.ts'
import { gearRemarks } from './remark.ts'
import { gearShape } from './shape.ts'
import { bendingWorking, contactRatioWorking, flankWorking } from './workings.ts'

const stress = { sense: 'maximum', unit: 'Pa', kind: 'stress' } as const

/** Wheels whose material is not judged for good, of a reduction that lacks nothing else. */
function lackingRoots(build: Build, place: number): readonly string[] {
  const stage = build.stages[place]
  if (stage?.kind !== 'gear') return []
  const wheels = ['driverMaterial', 'drivenMaterial'] as const
  return wheels
    .filter((wheel) => materialOf(stage[wheel]).root === null)
    .map((wheel) => `stages.${place}.${wheel}`)
}

const facts = {
  bending: {
    group: 'holds',
    label: 'Gear tooth root, once',
    ...stress,
    needs: [],
    working: (number) => bendingWorking(number, 'yield'),
  },
  'bending-lasts': {
    group: 'lasts',
    label: 'Gear tooth root, for long',
    ...stress,
    needs: [],
    lacking: lackingRoots,
    working: (number) => bendingWorking(number, 'root'),
  },
  flank: {
    group: 'lasts',
    label: 'Gear tooth flank, for long',
    ...stress,
    needs: [],
    lacking: lackingRoots,
    working: flankWorking,
  },
  'contact-ratio': {
    group: 'lasts',
    label: 'Gear contact ratio',
    sense: 'minimum',
    unit: '1',
    needs: [],
    kind: 'none',
    working: contactRatioWorking,
  },
  'stop-bending': {
    group: 'mishap',
    label: 'Gear tooth root in a jam',
    ...stress,
    needs: [],
    lacking: lackingForStop,
    working: (number) => bendingWorking(number, 'tensile'),
  },
} as const satisfies Readonly<Record<string, StageLimitFacts>>

const byName = limitsOfStage(facts)
const {
  bending,
  'bending-lasts': bendingLasts,
  flank,
  'contact-ratio': contactRatio,
  'stop-bending': stopBending,
  ...unmeasured
} = byName
allMeasured(unmeasured)

const bent = new Float64Array(5)
const pressed = new Float64Array(5)

/** The strength that is named: without a torque both wheels bear the same, nothing, and the first one is. */
function namedStrength(root: RootStrength, torque: number): number {
  return torque > 0 ? root.strength : root.driverStrength
}

function addBending(
  ledger: Ledger,
  limit: Limit,
  root: RootStrength,
  cases: readonly number[],
  e: StageForces,
): void {
  let most = 0
  for (let at = 0; at < cases.length; at += 1) {
    const place = cases[at] ?? 0
    const force = e.forces[place] ?? NaN
    bent[place] = bendingStress(root, force, place === dutyCase.top ? e.dynamic : 1)
    most = Math.max(most, Number.isNaN(force) ? 0 : force)
  }
  addWorstOf(ledger, limit, bent, cases, namedStrength(root, most))
}

/** Force on the pitch circle by `dutyCase`, N, and the dynamic factor at top speed; filled again for every pair. */
class StageForces {
  readonly forces = new Float64Array(5)
  dynamic = 1
}

const stageForces = new StageForces()
const onceCases = [dutyCase.launch, dutyCase.top] as const

/** Limits of a pair of gears. */
export const gearLimits: StageKindLimits<keyof typeof facts, GearStage> = {
  byName,
  remarks: gearRemarks,
  shape: gearShape,
  order: gearOrder,
  measure: (ledger, place, stage, e) => {
    const duty = e.stageDuties[place]
    if (duty === undefined) return
    const dynamic = stageDynamicFactor(stage, duty.topSpeed)
    for (let at = 0; at < duty.into.length; at += 1) {
      stageForces.forces[at] = tangentialForce(stage, duty.into[at] ?? NaN)
    }
    stageForces.dynamic = dynamic
    addBending(ledger, limitIn(bending, place), stage.once, onceCases, stageForces)
    if (stage.lasting !== null)
      addBending(ledger, limitIn(bendingLasts, place), stage.lasting, lastingCases, stageForces)
    if (stage.allowedFlank !== null) {
      const { grip, top } = dutyCase
      pressed[grip] = flankStress(stage, duty.into[grip] ?? NaN, 1)
      pressed[top] = flankStress(stage, duty.into[top] ?? NaN, dynamic)
      addWorstOf(ledger, limitIn(flank, place), pressed, lastingCases, stage.allowedFlank)
    }
    const ratio = stage.mesh.contactRatio
    addMinimum(ledger, limitIn(contactRatio, place), ratio, leastContactRatio, caseNumber.build)
    if (e.jam.isJudged)
      addBending(ledger, limitIn(stopBending, place), stage.mishap, mishapCases, stageForces)
  },
}
