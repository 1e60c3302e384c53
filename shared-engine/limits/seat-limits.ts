import type { Evaluation } from '../cases/evaluation.ts'
import type { Build } from '../entries/schema.ts'
import type { Machine } from '../machine/parts.ts'
import { motorSeat, sprocketSeat } from '../workings/seat.ts'
import {
  bearingLifeWorking,
  bearingSpeedWorking,
  jointWorking,
  stopJointWorking,
  shaftLastsWorking,
  shaftWorking,
} from '../workings/shaft.ts'
import { absentOf } from './limit.ts'
import type { Ledger } from './ledger.ts'
import { allMeasured, limitsOfPart, type PartLimitFacts } from './part.ts'
import { shaftFacts } from './shaft-facts.ts'
import { measureBearing, measureJoint, measureShaft } from './shaft-measure.ts'
import { lackingForStop } from './stop-needs.ts'

const hold = { question: 'hold' } as const
const never = () => null
const shaftNeeds = ['track.shaft'] as const
const jointNeeds = ['track.shaft', 'track.shaft.joint'] as const

const lackingShaft = (build: Build) => absentOf(build, shaftNeeds)
const lackingBending = (build: Build) =>
  build.track.shaft === undefined
    ? ['track.shaft']
    : absentOf(build, ['track.shaft.spanMm', 'track.shaft.overhangMm'])
const lackingStop = (build: Build) =>
  build.track.shaft === undefined ? ['track.shaft'] : lackingForStop(build)

const trackFacts = {
  'track.joint': {
    ...hold,
    ...shaftFacts.joint,
    label: 'Sprocket on its shaft, once',
    needs: jointNeeds,
    working: jointWorking(sprocketSeat, 'once'),
  },
  'track.shaft': {
    ...hold,
    ...shaftFacts.shaft,
    label: 'Sprocket shaft, once',
    needs: shaftNeeds,
    lacking: lackingShaft,
    working: shaftWorking(sprocketSeat, 'yield'),
  },
  'track.joint-lasts': {
    ...hold,
    ...shaftFacts.jointLasts,
    label: 'Sprocket on its shaft, for long',
    needs: jointNeeds,
    lacking: never,
    working: jointWorking(sprocketSeat, 'lasts'),
  },
  'track.bearing-life': {
    ...hold,
    ...shaftFacts.bearingLife,
    label: 'Sprocket bearing life',
    needs: ['track.shaft', 'track.shaft.bearing'],
    lacking: never,
    working: bearingLifeWorking(sprocketSeat),
  },
  'track.bearing-speed': {
    ...hold,
    ...shaftFacts.bearingSpeed,
    label: 'Sprocket bearing speed',
    needs: [
      'track.shaft',
      'track.shaft.bearing',
      'track.shaft.bearing.boreMm',
      'track.shaft.bearing.outerMm',
    ],
    lacking: never,
    working: bearingSpeedWorking(sprocketSeat),
  },
  'track.shaft-lasts': {
    ...hold,
    ...shaftFacts.shaftLasts,
    label: 'Sprocket shaft, for long',
    needs: shaftNeeds,
    lacking: lackingBending,
    working: shaftLastsWorking(sprocketSeat),
  },
  'track.stop-shaft': {
    ...hold,
    ...shaftFacts.stopShaft,
    label: 'Sprocket shaft in a jam',
    needs: shaftNeeds,
    lacking: lackingStop,
    working: shaftWorking(sprocketSeat, 'tensile'),
  },
  'track.stop-joint': {
    ...hold,
    ...shaftFacts.stopJoint,
    label: 'Sprocket on its shaft in a jam',
    needs: jointNeeds,
    lacking: (build) => (build.track.shaft?.joint === undefined ? null : lackingForStop(build)),
    working: stopJointWorking(sprocketSeat),
  },
} as const satisfies Readonly<Record<string, PartLimitFacts>>

const motorFacts = {
  'motor.joint': {
    ...hold,
    ...shaftFacts.joint,
    label: 'Pinion on the motor shaft, once',
    needs: ['motor.joint'],
    working: jointWorking(motorSeat, 'once'),
  },
  'motor.joint-lasts': {
    ...hold,
    ...shaftFacts.jointLasts,
    label: 'Pinion on the motor shaft, for long',
    needs: ['motor.joint'],
    lacking: never,
    working: jointWorking(motorSeat, 'lasts'),
  },
  'motor.stop-joint': {
    ...hold,
    ...shaftFacts.stopJoint,
    label: 'Pinion on the motor shaft in a jam',
    needs: ['motor.joint'],
    lacking: (build) => (build.motor.joint === undefined ? null : lackingForStop(build)),
    working: stopJointWorking(motorSeat),
  },
} as const satisfies Readonly<Record<string, PartLimitFacts>>

export type SeatLimitId = keyof typeof trackFacts | keyof typeof motorFacts

const ofTrack = limitsOfPart('track', trackFacts)
const ofMotor = limitsOfPart('motor', motorFacts)

/** Limits of the sprocket's shaft and of the pinion on the motor's. */
export const seatLimits = { ...ofTrack, ...ofMotor }

const {
  'track.joint': joint,
  'track.shaft': shaft,
  'track.joint-lasts': jointLasts,
  'track.bearing-life': bearingLife,
  'track.bearing-speed': bearingSpeed,
  'track.shaft-lasts': shaftLasts,
  'track.stop-shaft': stopShaft,
  'track.stop-joint': stopJoint,
  ...ofTrackLeft
} = ofTrack
allMeasured(ofTrackLeft)
const {
  'motor.joint': motorJoint,
  'motor.joint-lasts': motorJointLasts,
  'motor.stop-joint': motorStopJoint,
  ...ofMotorLeft
} = ofMotor
allMeasured(ofMotorLeft)

const sprocketLimits = {
  shaft,
  shaftLasts,
  stopShaft,
  joint,
  jointLasts,
  stopJoint,
  bearingLife,
  bearingSpeed,
}
const pinionLimits = { joint: motorJoint, jointLasts: motorJointLasts, stopJoint: motorStopJoint }

/** Adds those that the machine has. *Source:* `docs/model.md` §§4 and 8. */
export function measureSeats(ledger: Ledger, e: Evaluation, machine: Machine): void {
  const { track, motor, service } = machine
  if (track.shaft !== null) {
    measureShaft(ledger, sprocketLimits, track.shaft, e.sprocketShaft, e.jam.isJudged)
    measureBearing(ledger, sprocketLimits, track.shaft, e.sprocketShaft, service.lifeHours)
  }
  if (motor.joint === null) return
  measureJoint(ledger, pinionLimits, motor.joint.joint, motor.joint, e.motorShaft.torque, e.jam.isJudged)
}
