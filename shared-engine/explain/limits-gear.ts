import type { GearStage } from '../machine/parts.ts'
import type { LimitRow } from '../limits/ledger.ts'
import {
  leastContactRatio,
  lewisStress,
  stageDynamicFactor,
  tangentialForce,
} from '../stages/gear/physics.ts'
import { formatText } from '../units/display.ts'
import type { Draft } from './draft.ts'
import { materialRow } from './material.ts'
import type { LimitSubject } from './margin.ts'
import { driverSpeed, dutyOf, stageTorque } from './stage-duty.ts'

/** The n-th reduction, which the ledger knows to be a pair of gears. */
function gearOf(d: Draft, number: number): GearStage {
  const stage = d.checked.machine.stages[number - 1]
  if (stage?.kind !== 'gear') throw new Error(`stage ${number} is no pair of gears`)
  return stage
}

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
function dynamicFactor(d: Draft, number: number, stage: GearStage, row: LimitRow, driver: string): number {
  const speed = driverSpeed(d, number, row.case)
  const pitchLine = ['speed', 'speed of the pitch line'] as const
  d.step('v_p', pitchLine, `omega_k * m * ${driver} / 2`, (speed * stage.module * stage.driverTeeth) / 2)
  const [constant, expression] = dynamics[stage.finish]
  const told = [
    'none',
    `constant of ${stage.finish} teeth, speeds in m/s (Shigley, eqs. 14-6a to 14-6d)`,
  ] as const
  d.row('v_c', `stages.${number - 1}.finish`, told, constant)
  return d.step('K_v', ['none', 'dynamic factor'], expression, stageDynamicFactor(stage, speed))
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

const bending = (number: number): LimitSubject => ({
  title: `The bending of the teeth of stage ${number} against the yield strength of the wheel that bears less.`,
  source: `${shigley}, eqs. 14-6a to 14-6d and 14-8, form factors of its table 14-2`,
  write: (d, row) => {
    const stage = gearOf(d, number)
    const path = `stages.${number - 1}`
    const { torque } = dutyOf(d, number, row.case)
    stageTorque(d, number, row.case, 'in')
    const driver = `z_a${number}`
    d.entry(driver, `${path}.driverTeeth`)
    d.entry('m', `${path}.moduleMm`)
    const force = tangentialForce(stage, torque)
    d.step('W_t', ['force', 'force on the pitch circle'], `2 * T_k / (m * ${driver})`, force)
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
    d.step('sigma', ['stress', 'bending of the tooth'], 'K_v * W_t / (b * m * Y)', row.actual ?? NaN, words)
    const stored = d.checked.build.stages[number - 1]
    if (stored?.kind === 'gear') {
      const material = worse.name === 'driver' ? stored.driverMaterial : stored.drivenMaterial
      materialRow(d, 'S_y', `${path}.${worse.name}Material`, material, 'yield')
    }
    return { actual: 'sigma', allowed: 'S_y' }
  },
})

function angleNote(d: Draft, number: number): void {
  const stored = d.checked.build.stages[number - 1]
  if (stored?.kind === 'gear' && stored.pressureAngleDegrees !== 20)
    d.assume('The form factors are for a pressure angle of 20°: at this angle they are a rougher estimate.')
}

const interference = (number: number): LimitSubject => ({
  title: `The teeth of the smaller wheel of stage ${number} against the fewest that clear the larger one’s tips.`,
  source: `${shigley}, eq. 13-11, full depth`,
  write: (d, row) => {
    const stage = gearOf(d, number)
    const [driver, driven] = teeth(d, number)
    d.entry('phi', `stages.${number - 1}.pressureAngleDegrees`)
    const smaller = Math.min(stage.driverTeeth, stage.drivenTeeth)
    const ratio = Math.max(stage.driverTeeth, stage.drivenTeeth) / smaller
    d.step('z_s', ['count', 'teeth of the smaller wheel'], `min(${driver}, ${driven})`, smaller)
    d.step('u', ['none', 'ratio of the pair, at least 1'], `max(${driver}, ${driven}) / z_s`, ratio)
    const expression = '2 * (u + sqrt(u^2 + (1 + 2 * u) * sin(phi)^2)) / ((1 + 2 * u) * sin(phi)^2)'
    const words = 'not rounded'
    const told = ['none', 'fewest teeth without interference'] as const
    d.step('z_f', told, expression, row.allowed ?? stage.fewestTeeth, words)
    return { actual: 'z_s', allowed: 'z_f' }
  },
})

const contactRatio = (number: number): LimitSubject => ({
  title: `How many pairs of teeth of stage ${number} are in contact on the mean, against the least that runs well.`,
  source:
    'ISO 21771 and any gear text, addendum of one module (ISO 53); least value: common practice, no source',
  write: (d) => {
    const stage = gearOf(d, number)
    const [driver, driven] = teeth(d, number)
    d.entry('phi', `stages.${number - 1}.pressureAngleDegrees`)
    const path = (wheel: string) => `sqrt((${wheel} / 2 + 1)^2 - (${wheel} / 2 * cos(phi))^2)`
    const expression = `(${path(driver)} + ${path(driven)} - (${driver} + ${driven}) / 2 * sin(phi)) / (pi * cos(phi))`
    const words = 'radii in modules: the module cancels'
    d.step('epsilon', ['none', 'contact ratio'], expression, stage.contactRatio, words)
    d.given('epsilon_0', ['none', 'least contact ratio (common practice, no source)'], leastContactRatio)
    return { actual: 'epsilon', allowed: 'epsilon_0' }
  },
})

export const gearLimitWorkings = { bending, interference, 'contact-ratio': contactRatio }
