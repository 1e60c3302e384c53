import type { Evaluation } from '../cases/evaluation.ts'
import type { Machine } from '../machine/parts.ts'
import { caseNumber } from '../cases/case.ts'
import type { FigureName } from '../figures/table.ts'
import type { LimitWorking } from '../workings/limit.ts'
import { freeBeltSpeed } from '../workings/loads.ts'
import { allowedStress, climbing, type Strength } from '../workings/strength.ts'
import { allMeasured, limitsOfPart, type PartLimitFacts } from './part.ts'
import { addMaximum, type Ledger } from './ledger.ts'

const base = { question: 'hold', sense: 'maximum' } as const
const stress = { ...base, unit: 'Pa', kind: 'stress', needs: ['track.tooth'] } as const
const needsBreaking = ['track.breakingTensionN'] as const

const stressWorking = (
  title: string,
  figure: FigureName,
  actual: string,
  strength: Strength,
): LimitWorking => ({
  title,
  source: 'statics of the tooth; strengths are typical handbook values, or the builder’s own test',
  write: (d) => {
    d.figure(actual, figure)
    allowedStress(d, strength)
    return { actual, allowed: 'S_f' }
  },
})

const facts = {
  'track.tooth-shear': {
    group: 'holds',
    label: 'Tooth shear',
    ...stress,
    working: stressWorking(
      'The shear at the root of the most loaded tooth against what its material bears.',
      'toothShearPa',
      'tau',
      'shear',
    ),
  },
  'track.tooth-bending': {
    group: 'holds',
    label: 'Tooth bending',
    ...stress,
    working: stressWorking(
      'The bending of the most loaded tooth against what its material bears.',
      'toothBendingPa',
      'sigma_b',
      'tensile',
    ),
  },
  'track.tooth-bearing': {
    group: 'holds',
    label: 'Tooth flank pressure',
    ...stress,
    working: stressWorking(
      'The pressure on the most loaded flank against what its material bears.',
      'toothBearingPa',
      'sigma_c',
      'bearing',
    ),
  },
  'track.tooth-climb': {
    group: 'holds',
    label: 'Climbing out of mesh',
    ...base,
    unit: '1',
    kind: 'none',
    needs: ['track.tooth', 'track.loopStiffnessN', 'track.tooth.flankDegrees'],
    working: {
      title: 'How close the worst row of teeth is to being pushed out of the sprocket.',
      source: 'wedge with friction against the tension that wraps the sprocket',
      assumptions: ['Flanks are rigid, and these cases alone are looked at: a smaller load can be worse.'],
      missing: ({ machine }) =>
        machine.track.tooth !== null && machine.track.tooth.modulus === null
          ? { why: 'it needs the stiffness of the tooth’s own material (track.tooth.modulusMpa).' }
          : null,
      unformed: 'nothing holds the pushed row in: it counts as over.',
      write: (d, row) => {
        climbing(d, row)
        d.given('C_1', ['none', 'where a row lifts out'], 1)
        return { actual: 'C', allowed: 'C_1' }
      },
    },
  },
  'track.tension': {
    group: 'holds',
    label: 'Loop tension',
    ...base,
    unit: 'N',
    kind: 'force',
    needs: needsBreaking,
    working: {
      title: 'The loop’s greatest tension against what breaks it.',
      source: 'statics; the limit is the builder’s own pull test or the maker’s',
      write: (d) => {
        d.figure('N', 'loopTensionN')
        d.entry('N_B', 'track.breakingTensionN')
        return { actual: 'N', allowed: 'N_B' }
      },
    },
  },
  'track.burst-speed': {
    group: 'mishap',
    label: 'Burst speed of the loop',
    ...base,
    unit: 'm/s',
    kind: 'speed',
    needs: needsBreaking,
    working: {
      title: 'The belt speed of the free-running motor against that at which the loop’s own mass tears it.',
      source: 'centrifugal tension of a running belt, any machine-elements text',
      unformed: 'pretension alone breaks the loop: it counts as over.',
      write: (d) => {
        freeBeltSpeed(d)
        d.figure('v_B', 'burstBeltSpeedMps')
        return { actual: 'v_b', allowed: 'v_B' }
      },
    },
  },
} as const satisfies Readonly<Record<string, PartLimitFacts>>

export type TrackLimitId = keyof typeof facts

/** Limits of the track, in the ledger’s order. */
export const trackLimits = limitsOfPart('track', facts)

const {
  'track.tooth-shear': shear,
  'track.tooth-bending': bending,
  'track.tooth-bearing': bearing,
  'track.tooth-climb': climb,
  'track.tension': tension,
  'track.burst-speed': burstSpeed,
  ...unmeasured
} = trackLimits
allMeasured(unmeasured)

/** Adds those that the machine has. *Source:* `docs/model.md` §8, rows of the same ids. */
export function measureTrack(ledger: Ledger, e: Evaluation, machine: Machine): void {
  const { tooth, breakingTension } = machine.track
  if (tooth !== null) {
    addMaximum(ledger, shear, e.toothShear, tooth.allowedShear, e.worstToothCase)
    addMaximum(ledger, bending, e.toothBending, tooth.allowedTensile, e.worstToothCase)
    addMaximum(ledger, bearing, e.toothBearing, tooth.allowedBearing, e.worstToothCase)
  }
  if (!Number.isNaN(e.toothClimb)) addMaximum(ledger, climb, e.toothClimb, 1, e.worstClimbCase)
  if (breakingTension === null) return
  addMaximum(ledger, tension, e.loopTension, breakingTension, e.worstTensionCase)
  addMaximum(ledger, burstSpeed, e.worstFreeSpeed / e.line.motorPerBelt, e.burstSpeed, caseNumber.free)
}
