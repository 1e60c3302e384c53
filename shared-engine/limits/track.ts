import type { Machine } from '../machine/parts.ts'
import { caseNumber } from '../cases/case.ts'
import type { Evaluation } from '../cases/evaluation.ts'
import { addMaximum, type Ledger } from './ledger.ts'
import { listedLimit, type Limit } from './limit.ts'

const base = { part: 'track', question: 'hold', sense: 'maximum' } as const
const stress = { ...base, unit: 'Pa', kind: 'stress', needs: ['track.tooth'] } as const
const breaking = ['track.breakingTensionN']

const shear = listedLimit({ id: 'track.tooth-shear', label: 'Tooth shear', ...stress })
const bending = listedLimit({ id: 'track.tooth-bending', label: 'Tooth bending', ...stress })
const bearing = listedLimit({ id: 'track.tooth-bearing', label: 'Tooth flank pressure', ...stress })
const climb = listedLimit({
  id: 'track.tooth-climb',
  label: 'Climbing out of mesh',
  ...base,
  unit: '1',
  kind: 'none',
  needs: ['track.tooth', 'track.loopStiffnessN', 'track.tooth.flankDegrees'],
})
const tension = listedLimit({
  id: 'track.tension',
  label: 'Loop tension',
  ...base,
  unit: 'N',
  kind: 'force',
  needs: breaking,
})
const burstSpeed = listedLimit({
  id: 'track.burst-speed',
  label: 'Burst speed of the loop',
  ...base,
  unit: 'm/s',
  kind: 'speed',
  needs: breaking,
})

/** Limits of the track, in the ledger's order. */
export const trackLimits: readonly Limit[] = [shear, bending, bearing, climb, tension, burstSpeed]

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
