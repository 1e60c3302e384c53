import { defineLimits, setMaximum, type Limit } from './limit.ts'

const stress = { part: 'track', question: 'hold', sense: 'maximum', unit: 'Pa', kind: 'stress' } as const

/** Limits of the track. Each `measure` is the row of the same id in engine contract §8. */
export const trackLimits: readonly Limit[] = defineLimits([
  {
    id: 'track.tooth-shear',
    label: 'Tooth shear',
    ...stress,
    needs: ['track.tooth'],
    measure: (out, e, machine) =>
      machine.track.tooth !== null &&
      setMaximum(out, e.toothShear, machine.track.tooth.allowedShear, e.worstToothCase),
  },
  {
    id: 'track.tooth-bending',
    label: 'Tooth bending',
    ...stress,
    needs: ['track.tooth'],
    measure: (out, e, machine) =>
      machine.track.tooth !== null &&
      setMaximum(out, e.toothBending, machine.track.tooth.allowedTensile, e.worstToothCase),
  },
  {
    id: 'track.tooth-bearing',
    label: 'Tooth flank pressure',
    ...stress,
    needs: ['track.tooth'],
    measure: (out, e, machine) =>
      machine.track.tooth !== null &&
      setMaximum(out, e.toothBearing, machine.track.tooth.allowedBearing, e.worstToothCase),
  },
  {
    id: 'track.tooth-climb',
    label: 'Climbing out of mesh',
    part: 'track',
    question: 'hold',
    sense: 'maximum',
    unit: '1',
    kind: 'none',
    needs: ['track.tooth', 'track.loopStiffnessN', 'track.tooth.flankDegrees'],
    measure: (out, e) => !Number.isNaN(e.toothClimb) && setMaximum(out, e.toothClimb, 1, e.worstClimbCase),
  },
  {
    id: 'track.tension',
    label: 'Loop tension',
    part: 'track',
    question: 'hold',
    sense: 'maximum',
    unit: 'N',
    kind: 'force',
    needs: ['track.breakingTensionN'],
    measure: (out, e, machine) =>
      machine.track.breakingTension !== null &&
      setMaximum(out, e.loopTension, machine.track.breakingTension, e.worstTensionCase),
  },
  {
    id: 'track.burst-speed',
    label: 'Burst speed of the loop',
    part: 'track',
    question: 'hold',
    sense: 'maximum',
    unit: 'm/s',
    kind: 'speed',
    needs: ['track.breakingTensionN'],
    measure: (out, e, machine) =>
      machine.track.breakingTension !== null &&
      setMaximum(out, e.worstFreeSpeed / e.line.motorPerBelt, e.burstSpeed, 'free'),
  },
])
