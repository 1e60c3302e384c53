import { apart, caseNumber } from '../../cases/case.ts'
import { addMaximum, marginBelow } from '../../limits/ledger.ts'
import { allMeasured } from '../../limits/part.ts'
import {
  limitIn,
  limitsOfStage,
  type StageKindLimits,
  type StageLimitFacts,
} from '../../limits/stage-kind.ts'
import type { BeltStage } from './machine.ts'
import { beltProfileOf, beltWidthExponent } from '../../reference/belts.ts'
import type { Draft } from '../../workings/draft.ts'
import type { Compared, ComparedRow } from '../../workings/limit.ts'
import { stageOf, stageTorque, storedStageOf } from '../../workings/stage-duty.ts'
import { pitchLine, pullFacts, pullWorking } from '../loop/limits.ts'
import { allowedBeltPull } from './physics.ts'

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
  d.step('theta', ['angle', 'lean of the straight runs'], named)
  const teeth = `floor(min(${driver}, ${driven}) * (1 / 2 - theta / pi) + 1e-9)`
  d.step('z_m', ['count', 'teeth in mesh on the smaller pulley'], teeth)
  const told = ['none', 'what few teeth in mesh leave of the pull'] as const
  d.step('K_z', told, '1 - 0.2 * max(0, 6 - z_m)')
}

/** `T_w`: pull of this width, with six or more teeth in mesh. */
function widthPull(d: Draft, number: number): void {
  const path = `stages.${number - 1}`
  const stored = storedStageOf(d, number, 'belt')
  const profile = beltProfileOf(stored.profile)
  d.entry('w', `${path}.widthMm`)
  const width = ['length', 'width that the profile is rated for'] as const
  d.row('w_0', `${path}.profile`, width, profile.referenceWidth)
  d.row(
    'm_0',
    `${path}.profile`,
    ['linearDensity', `mass of the profile at that width (${rated})`],
    profile.massPerMetre,
  )
  d.step('m_k', ['linearDensity', 'mass of this belt'], 'm_0 * w / w_0')
  if (stored.allowableTensionN !== undefined) {
    d.entry('T_w', `${path}.allowableTensionN`)
    return
  }
  const tension = ['force', 'allowable tension at that width (ISO 5295, first edition)'] as const
  d.row('T_a', `${path}.profile`, tension, profile.allowableTension ?? NaN)
  d.step('T_w', ['force', 'the same for this width'], `T_a * (w / w_0)^${beltWidthExponent}`)
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
  const told = ['force', 'pull that is left for the drive'] as const
  d.step('F_a', told, 'K_z * T_w - m_k * v_k^2')
  return { actual: 'F_k', allowed: 'F_a' }
}

const facts = {
  tension: {
    group: 'lasts',
    ...pullFacts,
    working: (number) => pullWorking(number, (d, row) => beltPull(d, number, row)),
  },
} as const satisfies Readonly<Record<string, StageLimitFacts>>

const byName = limitsOfStage(facts)
const { tension, ...unmeasured } = byName
allMeasured(unmeasured)

/** Limits of a toothed belt. */
export const beltLimits: StageKindLimits<keyof typeof facts, BeltStage> = {
  byName,
  measure: (ledger, place, stage, duty, moving) => {
    const limit = limitIn(tension, place)
    const launch = duty.launchTorque / stage.driverRadius
    const top = duty.topTorque / stage.driverRadius
    const standing = allowedBeltPull(stage, 0)
    const running = allowedBeltPull(stage, duty.topSpeed * stage.driverRadius)
    const worseAtTop = 1 - marginBelow(top, running) > (1 - marginBelow(launch, standing)) * apart
    if (moving && worseAtTop) addMaximum(ledger, limit, top, running, caseNumber.top)
    else addMaximum(ledger, limit, launch, standing, caseNumber.launch)
  },
}
