import { horsepower } from '../../constants.ts'
import { caseNumber, type CaseName } from '../../cases/case.ts'
import { dutyCase, lastingCases, mishapCases } from '../../cases/stage-duty.ts'
import { addMaximum } from '../../limits/ledger.ts'
import { lackingForStop } from '../../limits/stop-needs.ts'
import { addWorstOf } from '../../limits/worst-case.ts'
import { allMeasured } from '../../limits/part.ts'
import {
  limitIn,
  limitsOfStage,
  type StageKindLimits,
  type StageLimitFacts,
} from '../../limits/stage-kind.ts'
import type { ChainStage } from './machine.ts'
import { chainOrder, chainFitFacts } from './order.ts'
import type { Draft } from '../../workings/draft.ts'
import type { Compared, ComparedRow, LimitWorking } from '../../workings/limit.ts'
import { driverSpeed, stageOf, stageTorque } from '../../workings/stage-duty.ts'
import { peakFacts, pitchLine, pullFacts, pullWorking } from '../loop/limits.ts'
import {
  allowedChainTension,
  breakingChainTension,
  chainPeakSafety,
  chainPowerRating,
  chainSafety,
  chainTension,
  peakChainTension,
} from './physics.ts'

function chainPull(d: Draft, number: number, row: ComparedRow): Compared {
  const stage = stageOf(d, number, 'chain')
  const path = `stages.${number - 1}`
  d.source(
    'statics and the chain’s own centrifugal pull; ISO 606 for pitch and strength; an eighth of it: common practice, no source',
  )
  stageTorque(d, number, row.case, 'in')
  chainPitch(d, number, stage)
  d.entry(`z_a${number}`, `${path}.driverTeeth`)
  pitchLine(d, number, row, `p_k / (2 * sin(pi / z_a${number}))`)
  d.entry('n_s', `${path}.strands`)
  const strand = ['linearDensity', 'mass of one strand (typical)'] as const
  d.row('m_r', `${path}.size`, strand, stage.massPerMetre / stage.strands)
  d.step('F_k', ['force', 'tension of the pulling run'], 'T_k / r_a + n_s * m_r * v_k^2')
  const tensile = ['force', 'minimum tensile strength of one strand (ISO 606)'] as const
  d.row('F_u', `${path}.size`, tensile, stage.minTensile)
  const words = `${chainSafety} is common practice, no source`
  d.step('F_a', ['force', 'tension allowed'], `n_s * F_u / ${chainSafety}`, words)
  return { actual: 'F_k', allowed: 'F_a' }
}

function chainPitch(d: Draft, number: number, stage: ChainStage): void {
  d.row('p_k', `stages.${number - 1}.size`, ['length', 'pitch of the chain (ISO 606)'], stage.pitch)
}

/** A pull that comes once, in a standing chain: against a third of what breaks it, in a jam against all of it. */
function chainOnce(d: Draft, number: number, name: CaseName): Compared {
  const stage = stageOf(d, number, 'chain')
  const path = `stages.${number - 1}`
  d.source('statics; ISO 606 for pitch and strength')
  stageTorque(d, number, name, 'in')
  chainPitch(d, number, stage)
  d.entry(`z_a${number}`, `${path}.driverTeeth`)
  d.step('r_a', ['length', 'pitch radius of the driver'], `p_k / (2 * sin(pi / z_a${number}))`)
  d.entry('n_s', `${path}.strands`)
  d.step('F_k', ['force', 'tension of the pulling run'], 'T_k / r_a')
  const tensile = ['force', 'minimum tensile strength of one strand (ISO 606)'] as const
  d.row('F_u', `${path}.size`, tensile, stage.minTensile)
  if (name === 'launch') {
    d.assume('A pull that comes once may be a third of what breaks the chain.')
    d.step('F_a', ['force', 'tension allowed once'], `n_s * F_u / ${chainPeakSafety}`)
  } else d.step('F_a', ['force', 'tension that breaks it'], 'n_s * F_u')
  return { actual: 'F_k', allowed: 'F_a' }
}

const powerWorking = (number: number): LimitWorking => ({
  title: `The power into the chain of stage ${number} against the rating of its plates and rollers.`,
  source: 'Shigley’s Mechanical Engineering Design, eqs. 17-32 and 17-33, table 17-23 for strands',
  assumptions: [
    'European sizes are rated like the others of the same pitch: a sixth too strict, and above 1,200 rpm by a quarter and more, the safe side.',
  ],
  afterTop: true,
  unformed: 'a standing chain has no rating: it counts as over.',
  write: (d) => {
    stageTorque(d, number, 'top', 'in')
    driverSpeed(d, number, 'top')
    d.step('P_k', ['watts', 'power into the stage, with the service factor'], 'T_k * omega_k')
    chainRating(d, number)
    return { actual: 'P_k', allowed: 'P_a' }
  },
})

/** `P_a`: the lesser of the plates’ and the rollers’ rating. */
function chainRating(d: Draft, number: number): void {
  const stage = stageOf(d, number, 'chain')
  const path = `stages.${number - 1}`
  const [driver, driven] = [`z_a${number}`, `z_b${number}`]
  d.entry(driver, `${path}.driverTeeth`)
  d.entry(driven, `${path}.drivenTeeth`)
  d.step('z_s', ['count', 'teeth of the smaller wheel'], `min(${driver}, ${driven})`)
  d.step('n_k', ['rpm', 'its speed'], `omega_k * ${driver} / z_s * 60 / (2 * pi)`)
  chainPitch(d, number, stage)
  d.step('P_i', ['none', 'pitch in inches'], 'p_k / 0.0254')
  d.row('c', `${path}.size`, ['none', 'constant of the link plates'], stage.platesFactor)
  d.row('K_r', `${path}.size`, ['none', 'constant of the rollers'], stage.rollerFactor)
  const first = 'c * z_s^1.08 * n_k^0.9 * P_i^(3 - 0.07 * P_i)'
  d.step('H_1', ['none', 'link plates, horsepower'], first)
  d.step('H_2', ['none', 'rollers, horsepower'], '1000 * K_r * z_s^1.5 * P_i^0.8 / n_k^1.5')
  const strands = ['none', 'how many times one strand (Shigley, table 17-23)'] as const
  d.row('f_s', `${path}.strands`, strands, stage.strandFactor)
  d.given('H_p', ['watts', 'one horsepower (NIST SP 811)'], horsepower)
  d.step('P_a', ['watts', 'power rating'], 'min(H_1, H_2) * f_s * H_p')
}

const facts = {
  peak: {
    ...peakFacts,
    working: (number) => pullWorking(number, (d) => chainOnce(d, number, 'launch')),
  },
  tension: {
    group: 'lasts',
    ...pullFacts,
    working: (number) => pullWorking(number, (d, row) => chainPull(d, number, row)),
  },
  power: {
    group: 'lasts',
    label: 'Chain power',
    sense: 'maximum',
    unit: 'W',
    kind: 'watts',
    needs: [],
    working: powerWorking,
  },
  'stop-tension': {
    group: 'mishap',
    label: 'Chain pull in a jam',
    sense: 'maximum',
    unit: 'N',
    kind: 'force',
    needs: [],
    lacking: lackingForStop,
    working: (number) => pullWorking(number, (d, row) => chainOnce(d, number, row.case)),
  },
} as const satisfies Readonly<Record<string, StageLimitFacts>>

const byName = limitsOfStage(facts)
const { peak, tension, power, 'stop-tension': stopTension, ...unmeasured } = byName
allMeasured(unmeasured)

const tensions = new Float64Array(5)

/** Limits of a roller chain. */
export const chainLimits: StageKindLimits<keyof typeof facts, ChainStage> = {
  byName,
  fit: chainFitFacts,
  order: chainOrder,
  measure: (ledger, place, stage, e) => {
    const duty = e.stageDuties[place]
    if (duty === undefined) return
    for (let at = 0; at < tensions.length; at += 1) {
      tensions[at] = chainTension(stage, duty.into[at] ?? NaN, at === dutyCase.top ? duty.topSpeed : 0)
    }
    const once = tensions[dutyCase.launch] ?? NaN
    addMaximum(ledger, limitIn(peak, place), once, peakChainTension(stage), caseNumber.launch)
    addWorstOf(ledger, limitIn(tension, place), tensions, lastingCases, allowedChainTension(stage))
    if (e.jam.isJudged)
      addWorstOf(ledger, limitIn(stopTension, place), tensions, mishapCases, breakingChainTension(stage))
    if (!e.top.exists) return
    const watts = (duty.into[dutyCase.top] ?? NaN) * duty.topSpeed
    addMaximum(ledger, limitIn(power, place), watts, chainPowerRating(stage, duty.topSpeed), caseNumber.top)
  },
}
