import type { Evaluation } from '../cases/evaluation.ts'
import { trackCases, type TrackCase } from '../cases/case.ts'
import type { TrackLoad } from '../cases/track-loads.ts'
import { setMaximum, type Limit } from './limit.ts'

/** The case in which a quantity of the track is largest; the first of equal ones. */
export function worstTrackCase(e: Evaluation, quantity: (load: TrackLoad) => number): TrackCase {
  let worst: TrackCase = 'launch'
  let most = -Infinity
  for (let index = 0; index < trackCases.length; index += 1) {
    const load = e.trackLoads[index]
    const name = trackCases[index]
    if (load === undefined || name === undefined) continue
    const value = quantity(load)
    if (value > most) {
      most = value
      worst = name
    }
  }
  return worst
}

const byTooth = (load: TrackLoad): number => load.toothForce
const byTension = (load: TrackLoad): number => load.tension
const byClimb = (load: TrackLoad): number => load.climb

/** Largest climbing ratio of the cases; NaN where it is not computed. */
export function worstClimb(e: Evaluation): number {
  let most = NaN
  for (const load of e.trackLoads) if (!(load.climb <= most) && !Number.isNaN(load.climb)) most = load.climb
  return most
}

const stress = { part: 'track', question: 'hold', sense: 'maximum', unit: 'Pa', kind: 'stress' } as const

/** Limits of the track. Each `measure` is the row of the same id in engine contract §8. */
export const trackLimits: readonly Limit[] = [
  {
    id: 'track.tooth-shear',
    label: 'Tooth shear',
    ...stress,
    needs: ['track.tooth'],
    measure: (out, e, machine) =>
      machine.track.tooth !== null &&
      setMaximum(out, e.toothShear, machine.track.tooth.allowedShear, worstTrackCase(e, byTooth)),
  },
  {
    id: 'track.tooth-bending',
    label: 'Tooth bending',
    ...stress,
    needs: ['track.tooth'],
    measure: (out, e, machine) =>
      machine.track.tooth !== null &&
      setMaximum(out, e.toothBending, machine.track.tooth.allowedTensile, worstTrackCase(e, byTooth)),
  },
  {
    id: 'track.tooth-bearing',
    label: 'Tooth flank pressure',
    ...stress,
    needs: ['track.tooth'],
    measure: (out, e, machine) =>
      machine.track.tooth !== null &&
      setMaximum(out, e.toothBearing, machine.track.tooth.allowedBearing, worstTrackCase(e, byTooth)),
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
    measure: (out, e) => {
      const climb = worstClimb(e)
      return !Number.isNaN(climb) && setMaximum(out, climb, 1, worstTrackCase(e, byClimb))
    },
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
      setMaximum(out, e.loopTension, machine.track.breakingTension, worstTrackCase(e, byTension)),
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
]
