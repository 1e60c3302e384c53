import { caseNumber } from '../../cases/case.ts'
import type { Build } from '../../entries/schema.ts'
import { addMaximum } from '../../limits/ledger.ts'
import { absentOf } from '../../limits/limit.ts'
import { allMeasured } from '../../limits/part.ts'
import { shaftFacts } from '../../limits/shaft-facts.ts'
import { measureBearing, measureShaft, type ShaftLimits } from '../../limits/shaft-measure.ts'
import {
  limitIn,
  limitsOfStage,
  type StageKindLimits,
  type StageLimitFacts,
} from '../../limits/stage-kind.ts'
import { mostStages } from '../../cases/stage-duty.ts'
import { lackingForStop } from '../../limits/stop-needs.ts'
import { apart } from '../../cases/case.ts'
import type { StagePart } from '../../machine/parts.ts'
import { limiterWorking } from '../../workings/limiter.ts'
import {
  bearingLifeWorking,
  bearingSpeedWorking,
  jointWorking,
  stopJointWorking,
  shaftLastsWorking,
  shaftWorking,
} from '../../workings/shaft.ts'
import { stageSeat } from '../../workings/seat.ts'

const entries = ['shaftDiameterMm', 'shaftMaterial']

const at = (place: number, names: readonly string[]) => names.map((name) => `stages.${place}.${name}`)

/** Entries of the shaft that a build lacks. */
const lackingShaft = (build: Build, place: number) => absentOf(build, at(place, entries))

/** The first list that is not empty. */
const first = (...lists: readonly (readonly string[])[]) => lists.find((list) => list.length > 0) ?? []

const never = () => null

const facts = {
  shaft: {
    ...shaftFacts.shaft,
    label: 'Shaft, once',
    needs: entries,
    lacking: lackingShaft,
    working: (number) => shaftWorking(stageSeat(number), 'yield'),
  },
  joint: {
    ...shaftFacts.joint,
    label: 'Wheel on its shaft, once',
    needs: [...entries, 'joint'],
    lacking: (build, place) =>
      build.stages[place]?.kind === 'fixed' ? null : absentOf(build, at(place, ['joint'])),
    working: (number) => jointWorking(stageSeat(number), 'once'),
  },
  limiter: {
    group: 'holds',
    label: 'Torque limiter slips in ordinary use',
    sense: 'maximum',
    unit: 'N m',
    kind: 'torque',
    needs: ['slipTorqueNm'],
    lacking: never,
    working: limiterWorking,
  },
  'shaft-lasts': {
    ...shaftFacts.shaftLasts,
    label: 'Shaft, for long',
    needs: entries,
    lacking: (build, place) => {
      const bent = at(place, ['shaftSpanMm', 'shaftOverhangMm'])
      return first(lackingShaft(build, place), absentOf(build, bent))
    },
    working: (number) => shaftLastsWorking(stageSeat(number)),
  },
  'joint-lasts': {
    ...shaftFacts.jointLasts,
    label: 'Wheel on its shaft, for long',
    needs: [...entries, 'joint'],
    lacking: never,
    working: (number) => jointWorking(stageSeat(number), 'lasts'),
  },
  'bearing-life': {
    ...shaftFacts.bearingLife,
    label: 'Bearing life',
    needs: [...entries, 'bearing'],
    lacking: never,
    working: (number) => bearingLifeWorking(stageSeat(number)),
  },
  'bearing-speed': {
    ...shaftFacts.bearingSpeed,
    label: 'Bearing speed',
    needs: [...entries, 'bearing', 'bearing.boreMm', 'bearing.outerMm'],
    lacking: never,
    working: (number) => bearingSpeedWorking(stageSeat(number)),
  },
  'stop-shaft': {
    ...shaftFacts.stopShaft,
    label: 'Shaft in a jam',
    needs: entries,
    lacking: (build, place) => first(lackingShaft(build, place), lackingForStop(build)),
    working: (number) => shaftWorking(stageSeat(number), 'tensile'),
  },
  'stop-joint': {
    ...shaftFacts.stopJoint,
    label: 'Wheel on its shaft in a jam',
    needs: [...entries, 'joint'],
    lacking: (build, place) => (build.stages[place]?.joint === undefined ? null : lackingForStop(build)),
    working: (number) => stopJointWorking(stageSeat(number)),
  },
} as const satisfies Readonly<Record<string, StageLimitFacts>>

const byName = limitsOfStage(facts)
const {
  shaft,
  joint,
  limiter,
  'shaft-lasts': shaftLasts,
  'joint-lasts': jointLasts,
  'bearing-life': bearingLife,
  'bearing-speed': bearingSpeed,
  'stop-shaft': stopShaft,
  'stop-joint': stopJoint,
  ...unmeasured
} = byName
allMeasured(unmeasured)

const placed: readonly ShaftLimits[] = Array.from({ length: mostStages }, (_, place) => ({
  shaft: limitIn(shaft, place),
  shaftLasts: limitIn(shaftLasts, place),
  stopShaft: limitIn(stopShaft, place),
  joint: limitIn(joint, place),
  jointLasts: limitIn(jointLasts, place),
  stopJoint: limitIn(stopJoint, place),
  bearingLife: limitIn(bearingLife, place),
  bearingSpeed: limitIn(bearingSpeed, place),
}))

/** Limits of a driven shaft, its wheel, bearing and limiter, which a reduction of any kind has. */
export const shaftLimits: StageKindLimits<keyof typeof facts, StagePart> = {
  byName,
  measure: (ledger, place, stage, e, machine) => {
    if (stage.slipTorque === null && stage.shaft === null) return
    const limits = placed[place]
    const duty = e.stageDuties[place]
    const shaftDuty = e.stageShafts[place]
    if (limits === undefined || duty === undefined || shaftDuty === undefined) return
    if (stage.slipTorque !== null) {
      const atTop = duty.topUnfactored > duty.gripUncapped * apart
      const torque = atTop ? duty.topUnfactored : duty.gripUncapped
      const reached = atTop ? caseNumber.top : caseNumber.grip
      addMaximum(ledger, limitIn(limiter, place), torque, stage.slipTorque, reached)
    }
    if (stage.shaft === null) return
    measureShaft(ledger, limits, stage.shaft, shaftDuty, e.jam.isJudged)
    measureBearing(ledger, limits, stage.shaft, shaftDuty, machine.service.lifeHours)
  },
}
