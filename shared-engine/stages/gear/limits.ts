import { caseNumber } from '../../cases/case.ts'
import { addMinimum } from '../../limits/ledger.ts'
import { allMeasured } from '../../limits/part.ts'
import {
  addWorse,
  limitIn,
  limitsOfStage,
  type StageKindLimits,
  type StageLimitFacts,
} from '../../limits/stage-kind.ts'
import type { GearStage } from './machine.ts'
import { lewisPressureAngleDegrees } from '../../reference/gears.ts'
import { formatText } from '../../units/display.ts'
import { radiansPerDegree } from '../../units/factors.ts'
import type { Draft } from '../../workings/draft.ts'
import type { ComparedRow, LimitWorking } from '../../workings/limit.ts'
import { materialRow } from '../../workings/material.ts'
import { driverSpeed, dutyOf, stageOf, stageTorque, storedStageOf } from '../../workings/stage-duty.ts'
import {
  bendingStress,
  leastContactRatio,
  lewisStress,
  stageDynamicFactor,
  tangentialForce,
} from './physics.ts'

/** `z_a<n>` and `z_b<n>`: teeth of driver and driven wheel. */
function teeth(d: Draft, number: number): readonly [string, string] {
  d.entry(`z_a${number}`, `stages.${number - 1}.driverTeeth`)
  d.entry(`z_b${number}`, `stages.${number - 1}.drivenTeeth`)
  return [`z_a${number}`, `z_b${number}`]
}

/** Constant and form of the dynamic factor of each finish, v_p in m/s. */
const dynamics = {
  cast: [3.05, '(v_c + v_p) / v_c'],
  milled: [6.1, '(v_c + v_p) / v_c'],
  hobbed: [3.56, '(v_c + sqrt(v_p)) / v_c'],
  ground: [5.56, 'sqrt((v_c + sqrt(v_p)) / v_c)'],
} as const satisfies Record<GearStage['finish'], readonly [number, string]>

/** `K_v`: growth of the load with the speed of the pitch line. */
function dynamicFactor(d: Draft, number: number, stage: GearStage, row: ComparedRow, driver: string): number {
  driverSpeed(d, number, row.case)
  const pitchLine = ['speed', 'speed of the pitch line'] as const
  d.step('v_p', pitchLine, `omega_k * m * ${driver} / 2`)
  const [constant, expression] = dynamics[stage.finish]
  const told = [
    'none',
    `constant of ${stage.finish} teeth, speeds in m/s (Shigley, eqs. 14-6a to 14-6d)`,
  ] as const
  d.row('v_c', `stages.${number - 1}.finish`, told, constant)
  return d.step('K_v', ['none', 'dynamic factor'], expression)
}

interface Wheel {
  readonly name: 'driver' | 'driven'
  readonly stress: number
  readonly form: number
  readonly yield: number
}

/** Both wheels, the one with the worse margin first. */
function wheels(stage: GearStage, force: number, dynamic: number): readonly [Wheel, Wheel] {
  const wheel = (name: Wheel['name'], form: number, strength: number): Wheel => ({
    name,
    stress: lewisStress(force, stage.faceWidth, stage.module, form, dynamic),
    form,
    yield: strength,
  })
  const driver = wheel('driver', stage.driverForm, stage.driverYield)
  const driven = wheel('driven', stage.drivenForm, stage.drivenYield)
  return driven.stress / driven.yield > driver.stress / driver.yield ? [driven, driver] : [driver, driven]
}

const shigley = 'Shigley’s Mechanical Engineering Design'

const bendingWorking = (number: number): LimitWorking => ({
  title: `The bending of the teeth of stage ${number} against the yield strength of the wheel that bears less.`,
  source: `${shigley}, eqs. 14-6a to 14-6d and 14-8, form factors of its table 14-2`,
  write: (d, row) => {
    const stage = stageOf(d, number, 'gear')
    const path = `stages.${number - 1}`
    const { torque } = dutyOf(d, number, row.case)
    stageTorque(d, number, row.case, 'in')
    const driver = `z_a${number}`
    d.entry(driver, `${path}.driverTeeth`)
    d.entry('m', `${path}.moduleMm`)
    const force = tangentialForce(stage, torque)
    d.step('W_t', ['force', 'force on the pitch circle'], `2 * T_k / (m * ${driver})`)
    const dynamic = dynamicFactor(d, number, stage, row, driver)
    const [worse, other] = wheels(stage, force, dynamic)
    d.entry('b', `${path}.faceWidthMm`)
    const form = ['none', `form factor Y of the ${worse.name} wheel’s teeth (Shigley, table 14-2)`] as const
    d.row('Y', `${path}.${worse.name}Teeth`, form, worse.form)
    if (stage.driverTeeth < 10 || stage.drivenTeeth < 10)
      d.assume('Below 10 teeth the form factor lies on the line through those of 10 and 11.')
    angleNote(d, number)
    const rest = formatText(1 - other.stress / other.yield, 'fraction', 'metric').replace('\u202F', ' ')
    const words = `the ${worse.name} wheel bears less; the ${other.name} one has a margin of ${rest} in this case`
    d.step('sigma', ['stress', 'bending of the tooth'], 'K_v * W_t / (b * m * Y)', words)
    const stored = storedStageOf(d, number, 'gear')
    const material = worse.name === 'driver' ? stored.driverMaterial : stored.drivenMaterial
    materialRow(d, 'S_y', `${path}.${worse.name}Material`, material, 'yield')
    return { actual: 'sigma', allowed: 'S_y' }
  },
})

function angleNote(d: Draft, number: number): void {
  if (storedStageOf(d, number, 'gear').pressureAngleDegrees !== 20)
    d.assume('The form factors are for a pressure angle of 20°: at this angle they are a rougher estimate.')
}

const interferenceWorking = (number: number): LimitWorking => ({
  title: `The teeth of the smaller wheel of stage ${number} against the fewest that clear the larger one’s tips.`,
  source: `${shigley}, eq. 13-11, full depth`,
  write: (d) => {
    const [driver, driven] = teeth(d, number)
    d.entry('phi', `stages.${number - 1}.pressureAngleDegrees`)
    d.step('z_s', ['count', 'teeth of the smaller wheel'], `min(${driver}, ${driven})`)
    d.step('u', ['none', 'ratio of the pair, at least 1'], `max(${driver}, ${driven}) / z_s`)
    const expression = '2 * (u + sqrt(u^2 + (1 + 2 * u) * sin(phi)^2)) / ((1 + 2 * u) * sin(phi)^2)'
    const words = 'not rounded'
    const told = ['none', 'fewest teeth without interference'] as const
    d.step('z_f', told, expression, words)
    return { actual: 'z_s', allowed: 'z_f' }
  },
})

const contactRatioWorking = (number: number): LimitWorking => ({
  title: `How many pairs of teeth of stage ${number} are in contact on the mean, against the least that runs well.`,
  source:
    'ISO 21771 and any gear text, addendum of one module (ISO 53); least value: common practice, no source',
  write: (d) => {
    const [driver, driven] = teeth(d, number)
    d.entry('phi', `stages.${number - 1}.pressureAngleDegrees`)
    const path = (wheel: string) => `sqrt((${wheel} / 2 + 1)^2 - (${wheel} / 2 * cos(phi))^2)`
    const expression = `(${path(driver)} + ${path(driven)} - (${driver} + ${driven}) / 2 * sin(phi)) / (pi * cos(phi))`
    const words = 'radii in modules: the module cancels'
    d.step('epsilon', ['none', 'contact ratio'], expression, words)
    d.given('epsilon_0', ['none', 'least contact ratio (common practice, no source)'], leastContactRatio)
    return { actual: 'epsilon', allowed: 'epsilon_0' }
  },
})

const stress = { sense: 'maximum', unit: 'Pa', kind: 'stress', needs: [] } as const
const geometry = { sense: 'minimum', unit: '1', needs: [] } as const

const facts = {
  bending: {
    group: 'holds',
    label: 'Gear tooth bending',
    ...stress,
    working: bendingWorking,
  },
  interference: {
    group: 'lasts',
    label: 'Pinion undercut',
    ...geometry,
    kind: 'count',
    working: interferenceWorking,
  },
  'contact-ratio': {
    group: 'lasts',
    label: 'Contact ratio',
    ...geometry,
    kind: 'none',
    working: contactRatioWorking,
  },
} as const satisfies Readonly<Record<string, StageLimitFacts>>

const byName = limitsOfStage(facts)
const { bending, interference, 'contact-ratio': contactRatio, ...unmeasured } = byName
allMeasured(unmeasured)

/** Limits of a pair of gears. */
export const gearLimits: StageKindLimits<keyof typeof facts, GearStage> = {
  byName,
  remark: (stage) =>
    stage.sinPressureAngle === Math.sin(lewisPressureAngleDegrees * radiansPerDegree)
      ? null
      : 'Lewis form factors are for a pressure angle of 20°; at other angles tooth bending is a rougher estimate.',
  measure: (ledger, place, stage, duty) => {
    const launch = bendingStress(stage, tangentialForce(stage, duty.launchTorque), 1)
    const dynamic = stageDynamicFactor(stage, duty.topSpeed)
    const top = bendingStress(stage, tangentialForce(stage, duty.topTorque), dynamic)
    // Without a torque both wheels bear the same, nothing: the first one is named.
    const strength = launch > 0 || top > 0 ? stage.bendingYield : stage.driverYield
    addWorse(ledger, limitIn(bending, place), launch, top, strength)
    const smaller = Math.min(stage.driverTeeth, stage.drivenTeeth)
    addMinimum(ledger, limitIn(interference, place), smaller, stage.fewestTeeth, caseNumber.build)
    addMinimum(ledger, limitIn(contactRatio, place), stage.contactRatio, leastContactRatio, caseNumber.build)
  },
}
