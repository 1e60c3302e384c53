import { caseNumber } from '../../cases/case.ts'
import { dutyCase, lastingCases } from '../../cases/stage-duty.ts'
import { addMaximum } from '../../limits/ledger.ts'
import { addWorstRatio } from '../../limits/worst-case.ts'
import { allMeasured } from '../../limits/part.ts'
import {
  limitIn,
  limitsOfStage,
  type StageKindLimits,
  type StageLimitFacts,
} from '../../limits/stage-kind.ts'
import type { BeltStage } from './machine.ts'
import { beltOrder, beltFitFacts } from './order.ts'
import { beltProfileOf, beltWidthExponent } from '../../reference/belts.ts'
import type { Draft } from '../../workings/draft.ts'
import type { Compared, ComparedRow } from '../../workings/limit.ts'
import { stageOf, stageTorque, storedStageOf } from '../../workings/stage-duty.ts'
import { peakFacts, pitchLine, pullFacts, pullWorking } from '../loop/limits.ts'
import { allowedBeltPull, beltPeakFactor, peakBeltPull } from './physics.ts'

const rated = 'typical, and for other widths in proportion'

/** `K_z`: what is left of the pull with few teeth in mesh. */
function mesh(d: Draft, number: number): void {
  const path = `stages.${number - 1}`
  const [driver, driven] = [`z_a${number}`, `z_b${number}`]
  d.entry(driver, `${path}.driverTeeth`)
  d.entry(driven, `${path}.drivenTeeth`)
  d.entry('C', `${path}.centreMm`)
  const lean = 'asin(p_k * (max(z_1, z_2) - min(z_1, z_2)) / (2 * pi * C))'
  const named = lean.replaceAll('z_1', driver).replaceAll('z_2', driven)
  d.step('theta_b', ['angle', 'lean of the straight runs'], named)
  const teeth = `floor(min(${driver}, ${driven}) * (1 / 2 - theta_b / pi) + 1e-9)`
  d.step('z_m', ['count', 'teeth in mesh on the smaller pulley'], teeth)
  const told = ['none', 'what few teeth in mesh leave of the pull'] as const
  d.step('K_z', told, '1 - 0.2 * max(0, 6 - z_m)')
}

/** `w` and `w_0`: width of this belt, and that which its profile is rated for. */
function ratedWidth(d: Draft, number: number): void {
  const path = `stages.${number - 1}`
  const profile = beltProfileOf(storedStageOf(d, number, 'belt').profile)
  d.entry('w', `${path}.widthMm`)
  const width = ['length', 'width that the profile is rated for'] as const
  d.row('w_0', `${path}.profile`, width, profile.referenceWidth)
}

/** `T_w`: pull of this width, with six or more teeth in mesh. */
function widthPull(d: Draft, number: number): void {
  const path = `stages.${number - 1}`
  const stored = storedStageOf(d, number, 'belt')
  const profile = beltProfileOf(stored.profile)
  if (stored.allowableTensionN !== undefined) {
    d.entry('T_w', `${path}.allowableTensionN`)
    return
  }
  ratedWidth(d, number)
  const tension = ['force', 'allowable tension at that width (ISO 5295, first edition)'] as const
  d.row('T_a', `${path}.profile`, tension, profile.allowableTension ?? NaN)
  d.step('T_w', ['force', 'the same for this width'], `T_a * (w / w_0)^${beltWidthExponent}`)
}

/** `m_k`: mass of this belt. */
function beltMass(d: Draft, number: number): void {
  const path = `stages.${number - 1}`
  const profile = beltProfileOf(storedStageOf(d, number, 'belt').profile)
  ratedWidth(d, number)
  d.row(
    'm_r',
    `${path}.profile`,
    ['linearDensity', `mass of the profile at that width (${rated})`],
    profile.massPerMetre,
  )
  d.step('m_k', ['linearDensity', 'mass of this belt'], 'm_r * w / w_0')
}

function beltPull(d: Draft, number: number, row: ComparedRow): Compared {
  const stage = stageOf(d, number, 'belt')
  d.source('ISO 5295, first edition; ISO 5294 for the pitch radius')
  stageTorque(d, number, row.case, 'in')
  const pitch = ['length', 'pitch of the profile (ISO 5296, DIN 7721, ISO 13050)'] as const
  d.row('p_k', `stages.${number - 1}.profile`, pitch, stage.pitch)
  mesh(d, number)
  pitchLine(d, number, row, `p_k * z_a${number} / (2 * pi)`)
  d.step('F_k', ['force', 'pull of the belt'], 'T_k / r_a')
  widthPull(d, number)
  beltMass(d, number)
  const told = ['force', 'pull that is left for the drive'] as const
  d.step('F_a', told, 'K_z * T_w - m_k * v_k^2')
  return { actual: 'F_k', allowed: 'F_a' }
}

/** A pull that comes once against twice what lasts. */
function beltPeak(d: Draft, number: number): Compared {
  const stage = stageOf(d, number, 'belt')
  d.source('ISO 5295, first edition; ISO 5294 for the pitch radius')
  stageTorque(d, number, 'launch', 'in')
  const pitch = ['length', 'pitch of the profile (ISO 5296, DIN 7721, ISO 13050)'] as const
  d.row('p_k', `stages.${number - 1}.profile`, pitch, stage.pitch)
  mesh(d, number)
  d.step('r_a', ['length', 'pitch radius of the driver'], `p_k * z_a${number} / (2 * pi)`)
  d.step('F_k', ['force', 'pull of the belt'], 'T_k / r_a')
  widthPull(d, number)
  d.assume('A pull that comes once may be twice the one that lasts.')
  d.step('F_a', ['force', 'pull allowed once'], `${beltPeakFactor} * K_z * T_w`)
  return { actual: 'F_k', allowed: 'F_a' }
}

const facts = {
  peak: {
    ...peakFacts,
    working: (number) => pullWorking(number, (d) => beltPeak(d, number)),
  },
  tension: {
    group: 'lasts',
    ...pullFacts,
    working: (number) => pullWorking(number, (d, row) => beltPull(d, number, row)),
  },
} as const satisfies Readonly<Record<string, StageLimitFacts>>

const byName = limitsOfStage(facts)
const { peak, tension, ...unmeasured } = byName
allMeasured(unmeasured)

const pulls = new Float64Array(5)
const allowed = new Float64Array(5)

/** Limits of a toothed belt. */
export const beltLimits: StageKindLimits<keyof typeof facts, BeltStage> = {
  byName,
  fit: beltFitFacts,
  order: beltOrder,
  measure: (ledger, place, stage, e) => {
    const duty = e.stageDuties[place]
    if (duty === undefined) return
    for (let at: number = dutyCase.launch; at <= dutyCase.top; at += 1) {
      pulls[at] = (duty.into[at] ?? NaN) / stage.driverRadius
      allowed[at] = allowedBeltPull(stage, at === dutyCase.top ? duty.topSpeed * stage.driverRadius : 0)
    }
    const once = pulls[dutyCase.launch] ?? NaN
    addMaximum(ledger, limitIn(peak, place), once, peakBeltPull(stage), caseNumber.launch)
    addWorstRatio(ledger, limitIn(tension, place), pulls, allowed, lastingCases)
  },
}
