import type { Evaluation } from '../cases/evaluation.ts'
import type { TrackLoad } from '../cases/track-loads.ts'
import type { Machine } from '../machine/parts.ts'
import { apart, caseNumber } from '../cases/case.ts'
import { toothBearing, toothBending, toothShear } from '../track/teeth.ts'
import type { LimitWorking } from '../workings/limit.ts'
import { toothStress, trackTension } from '../workings/loop.ts'
import { missingStop, stopAssumptions } from '../workings/stop.ts'
import { allowedStress, type Strength } from '../workings/strength.ts'
import { absentOf } from './limit.ts'
import { addMaximum, type Ledger } from './ledger.ts'
import { allMeasured, limitsOfPart, type PartLimitFacts } from './part.ts'
import { lackingForStop } from './stop-needs.ts'

const base = { group: 'mishap', question: 'hold', sense: 'maximum' } as const
const stress = {
  ...base,
  unit: 'Pa',
  kind: 'stress',
  needs: ['track.tooth', 'track.loopStiffnessN'],
  lacking: lackingForStop,
} as const

const stopStress = (title: string, strength: Strength): LimitWorking => ({
  title,
  source: 'energy of what turns against the stretch of the held loop; statics of the tooth',
  assumptions: stopAssumptions,
  missing: missingStop,
  write: (d, row) => {
    const actual = toothStress(d, row.case, strength)
    allowedStress(d, strength)
    return { actual, allowed: 'S_f' }
  },
})

const facts = {
  'track.stop-shear': {
    ...stress,
    label: 'Drive tooth shear in a jam',
    working: stopStress('The shear of the most loaded tooth while the loop is held.', 'shear'),
  },
  'track.stop-bending': {
    ...stress,
    label: 'Drive tooth bending in a jam',
    working: stopStress('The bending of the most loaded tooth while the loop is held.', 'tensile'),
  },
  'track.stop-bearing': {
    ...stress,
    label: 'Drive tooth pressing in a jam',
    working: stopStress('The pressure on the most loaded flank while the loop is held.', 'bearing'),
  },
  'track.stop-tension': {
    ...base,
    unit: 'N',
    kind: 'force',
    needs: ['track.breakingTensionN', 'track.tooth', 'track.loopStiffnessN'],
    lacking: (build) => [...lackingForStop(build), ...absentOf(build, ['track.breakingTensionN'])],
    label: 'Loop tension in a jam',
    working: {
      title: 'The tension of the loop while it is held against what breaks it.',
      source: 'energy of what turns against the stretch of the held loop',
      assumptions: stopAssumptions,
      missing: missingStop,
      write: (d, row) => {
        trackTension(d, row.case)
        d.entry('N_B', 'track.breakingTensionN')
        return { actual: 'N', allowed: 'N_B' }
      },
    },
  },
} as const satisfies Readonly<Record<string, PartLimitFacts>>

export type TrackStopLimitId = keyof typeof facts

/** Limits of the loop and its teeth when it is held. */
export const trackStopLimits = limitsOfPart('track', facts)

const {
  'track.stop-shear': shear,
  'track.stop-bending': bending,
  'track.stop-bearing': bearing,
  'track.stop-tension': tension,
  ...unmeasured
} = trackStopLimits
allMeasured(unmeasured)

function caseOf(e: Evaluation, load: TrackLoad): number {
  return load === e.stopLoad ? caseNumber.stop : caseNumber['stop-free']
}

/** Adds them where a stop is judged. *Source:* `docs/model.md` §8, rows of the same ids. */
export function measureTrackStop(ledger: Ledger, e: Evaluation, machine: Machine): void {
  const { tooth, breakingTension } = machine.track
  if (!e.jam.isJudged || tooth === null) return
  const { stopLoad, stopFreeLoad } = e
  // without a top speed the free stop alone arises
  const held = stopLoad.toothForce * apart >= stopFreeLoad.toothForce ? stopLoad : stopFreeLoad
  const force = held.toothForce
  const reached = caseOf(e, held)
  addMaximum(ledger, shear, toothShear(tooth, force), tooth.allowedShear, reached)
  addMaximum(ledger, bending, toothBending(tooth, force), tooth.allowedTensile, reached)
  addMaximum(ledger, bearing, toothBearing(tooth, force), tooth.allowedBearing, reached)
  if (breakingTension === null) return
  const pulled = stopLoad.tension * apart >= stopFreeLoad.tension ? stopLoad : stopFreeLoad
  addMaximum(ledger, tension, pulled.tension, breakingTension, caseOf(e, pulled))
}
