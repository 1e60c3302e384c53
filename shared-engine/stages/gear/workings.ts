import type { Material } from '../../reference/materials.ts'
import { formatText } from '../../units/display.ts'
import type { Draft } from '../../workings/draft.ts'
import type { ComparedRow, LimitWorking } from '../../workings/limit.ts'
import { materialRow } from '../../workings/material.ts'
import { driverSpeed, dutyOf, stageOf, stageTorque, storedStageOf } from '../../workings/stage-duty.ts'
import type { GearStage } from './machine.ts'
import { leastContactRatio, lewisStress, stageDynamicFactor, tangentialForce } from './physics.ts'

/** Constant and form of the dynamic factor of each finish, v_p in m/s. */
const dynamics = {
  cast: [3.05, '(v_c + v_p) / v_c'],
  milled: [6.1, '(v_c + v_p) / v_c'],
  hobbed: [3.56, '(v_c + sqrt(v_p)) / v_c'],
  ground: [5.56, 'sqrt((v_c + sqrt(v_p)) / v_c)'],
} as const satisfies Record<GearStage['finish'], readonly [number, string]>

/** `K_v`: growth of the load with the speed of the pitch line; 1 but at top speed. */
function dynamicFactor(d: Draft, number: number, stage: GearStage, row: ComparedRow): number {
  const told = ['none', 'dynamic factor'] as const
  if (row.case !== 'top') {
    d.step('K_v', told, '1', 'a jam is slow')
    return 1
  }
  driverSpeed(d, number, row.case)
  d.step('v_p', ['speed', 'speed of the pitch line'], `omega_k * m_n * z_a${number} / 2`)
  const [constant, expression] = dynamics[stage.finish]
  const words = `constant of ${stage.finish} teeth, speeds in m/s (Shigley, eqs. 14-6a to 14-6d)`
  d.row('v_c', `stages.${number - 1}.finish`, ['none', words], constant)
  d.step('K_v', told, expression)
  return stageDynamicFactor(stage, dutyOf(d, number, 'top').speed)
}

type Property = 'yield' | 'tensile' | 'root'

interface Wheel {
  readonly name: 'driver' | 'driven'
  readonly stress: number
  readonly form: number
  readonly strength: number
}

/** Both wheels, the one with the worse margin first. */
function wheels(
  stage: GearStage,
  force: number,
  dynamic: number,
  property: Property,
): readonly [Wheel, Wheel] {
  const wheel = (name: Wheel['name'], form: number, material: Material): Wheel => ({
    name,
    stress: lewisStress(force, stage.faceWidth, stage.module, form, dynamic),
    form,
    strength: (material[property] ?? NaN) * material.knockdown,
  })
  const driver = wheel('driver', stage.driverForm, stage.driverMaterial)
  const driven = wheel('driven', stage.drivenForm, stage.drivenMaterial)
  return driven.stress / driven.strength > driver.stress / driver.strength
    ? [driven, driver]
    : [driver, driven]
}

const shigley = 'Shigley’s Mechanical Engineering Design'

const against = {
  yield: 'the yield strength',
  root: 'what the root bears for good',
  tensile: 'the tensile strength',
} as const satisfies Record<Property, string>

/** Bending of a pair's teeth against one strength. */
export const bendingWorking = (number: number, property: Property): LimitWorking => ({
  title: `The bending of the teeth of stage ${number} against ${against[property]} of the wheel that bears less.`,
  source: `${shigley}, eqs. 14-6a to 14-6d and 14-8, form factors of its table 14-2`,
  ...(property === 'root' ? { assumptions: [rootAssumption] } : {}),
  missing: ({ machine }) => {
    const stage = machine.stages[number - 1]
    return property === 'root' && stage?.kind === 'gear' && stage.lasting === null
      ? { why: 'one wheel’s material is not judged for good: rubbers have no tabulated root strength.' }
      : null
  },
  write: (d, row) => {
    const stage = stageOf(d, number, 'gear')
    const path = `stages.${number - 1}`
    const { torque } = dutyOf(d, number, row.case)
    stageTorque(d, number, row.case, 'in')
    d.entry(`z_a${number}`, `${path}.driverTeeth`)
    d.entry('m_n', `${path}.moduleMm`)
    const force = tangentialForce(stage, torque)
    d.step('W_p', ['force', 'force on the pitch circle'], `2 * T_k / (m_n * z_a${number})`)
    const dynamic = dynamicFactor(d, number, stage, row)
    const [worse, other] = wheels(stage, force, dynamic, property)
    d.entry('b', `${path}.faceWidthMm`)
    const form = ['none', `form factor Y of the ${worse.name} wheel’s teeth (Shigley, table 14-2)`] as const
    d.row('Y', `${path}.${worse.name}Teeth`, form, worse.form)
    formNotes(d, number)
    const rest = formatText(1 - other.stress / other.strength, 'fraction', 'metric').replace('\u202F', ' ')
    const words = `the ${worse.name} wheel bears less; the ${other.name} one has a margin of ${rest} in this case`
    d.step('sigma', ['stress', 'bending of the tooth'], 'K_v * W_p / (b * m_n * Y)', words)
    wheelStrength(d, number, worse.name, property)
    return { actual: 'sigma', allowed: 'S_f' }
  },
})

const rootAssumption =
  'What a root bears for good is held against the nominal Lewis stress: the reference gear’s notch factor stands for this tooth’s.'

/** `S_f`: strength of one wheel, what printing or moulding leaves of it. */
function wheelStrength(d: Draft, number: number, wheel: 'driver' | 'driven', property: Property): void {
  const stored = storedStageOf(d, number, 'gear')
  const material = wheel === 'driver' ? stored.driverMaterial : stored.drivenMaterial
  const path = `stages.${number - 1}.${wheel}Material`
  materialRow(d, 'S_0', path, material, property)
  const part = stageOf(d, number, 'gear')
  const { knockdown } = wheel === 'driver' ? part.driverMaterial : part.drivenMaterial
  d.row('f_k', path, ['fraction', 'what printing or moulding leaves of it (table)'], knockdown)
  d.step('S_f', ['stress', 'strength of the wheel as made'], 'S_0 * f_k')
}

function formNotes(d: Draft, number: number): void {
  const { driverTeeth, drivenTeeth, driverShift, drivenShift } = stageOf(d, number, 'gear')
  if (driverTeeth < 10 || drivenTeeth < 10)
    d.assume('Below 10 teeth the form factor lies on the line through those of 10 and 11.')
  if (storedStageOf(d, number, 'gear').pressureAngleDegrees !== 20)
    d.assume('The form factors are for a pressure angle of 20°: at this angle they are a rougher estimate.')
  if (driverShift !== 0 || drivenShift !== 0)
    d.assume(
      'The form factors are those of teeth without shift: safe for a shift outwards, not for one inwards.',
    )
}

/** Symbols of a pair of shifted wheels: teeth, shifts, pressure angles of rack and mesh, base radii and centres. */
function meshSteps(d: Draft, number: number): void {
  const path = `stages.${number - 1}`
  const [z1, z2] = [`z_a${number}`, `z_b${number}`]
  d.entry(z1, `${path}.driverTeeth`)
  d.entry(z2, `${path}.drivenTeeth`)
  d.entry('x_1', `${path}.driverShift`)
  d.entry('x_2', `${path}.drivenShift`)
  d.entry('phi_n', `${path}.pressureAngleDegrees`)
  const { mesh } = stageOf(d, number, 'gear')
  d.step(
    'i_w',
    ['none', 'involute of the working pressure angle'],
    `tan(phi_n) - phi_n + 2 * tan(phi_n) * (x_1 + x_2) / (${z1} + ${z2})`,
  )
  d.found(
    'phi_w',
    ['angle', 'working pressure angle'],
    'the angle with tan(phi_w) - phi_w = i_w',
    mesh.workingAngle,
  )
  d.step('r_b1', ['none', 'base radius of the driver, in modules'], `${z1} / 2 * cos(phi_n)`)
  d.step('r_b2', ['none', 'base radius of the driven wheel, in modules'], `${z2} / 2 * cos(phi_n)`)
}

/** Pairs of teeth in contact. */
export const contactRatioWorking = (number: number): LimitWorking => ({
  title: `How many pairs of teeth of stage ${number} are in contact on the mean, against the least that runs well.`,
  source:
    'ISO 21771 and any gear text, addendum of one module (ISO 53); least value: common practice, no source',
  write: (d) => {
    meshSteps(d, number)
    const told = ['none', 'length of the line between the base circles, in modules'] as const
    d.step('a_w', told, '(r_b1 + r_b2) * tan(phi_w)')
    const reach = (z: string, x: string, base: string) =>
      `min(sqrt(max(0, (${z} / 2 + 1 + ${x})^2 - ${base}^2)), a_w)`
    const first = reach(`z_a${number}`, 'x_1', 'r_b1')
    const second = reach(`z_b${number}`, 'x_2', 'r_b2')
    const words = 'no tip works beyond the other wheel’s base tangent; the module cancels'
    const expression = `(${first} + ${second} - a_w) / (pi * cos(phi_n))`
    d.step('epsilon', ['none', 'contact ratio'], expression, words)
    d.given('epsilon_0', ['none', 'least contact ratio (common practice, no source)'], leastContactRatio)
    return { actual: 'epsilon', allowed: 'epsilon_0' }
  },
})

/** Pressure of a pair's flanks. */
export const flankWorking = (number: number): LimitWorking => ({
  title: `The pressure between the flanks of stage ${number} at the pitch point against what the softer one bears for good.`,
  source: `${shigley}, eqs. 14-13 and 14-14; ISO 6336-5 and VDI 2736-2 for what flanks bear, from memory`,
  assumptions: [
    'What flanks of aluminium, titanium, stainless steel, brass and prints bear is an assumption.',
  ],
  missing: ({ machine }) => {
    const stage = machine.stages[number - 1]
    return stage?.kind === 'gear' && stage.allowedFlank === null
      ? { why: 'one wheel’s material is not judged for good: rubbers have no tabulated flank pressure.' }
      : null
  },
  write: (d, row) => {
    const stage = stageOf(d, number, 'gear')
    const path = `stages.${number - 1}`
    stageTorque(d, number, row.case, 'in')
    meshSteps(d, number)
    d.entry('m_n', `${path}.moduleMm`)
    dynamicFactor(d, number, stage, row)
    elasticSteps(d, number)
    d.step('W_n', ['force', 'force along the line of action'], 'K_v * T_k / (r_b1 * m_n)')
    d.entry('b', `${path}.faceWidthMm`)
    d.step(
      'c_r',
      ['none', 'curvature of both flanks, times the module'],
      '1 / (r_b1 * tan(phi_w)) + 1 / (r_b2 * tan(phi_w))',
    )
    d.step('sigma_H', ['stress', 'pressure between the flanks'], 'C_p * sqrt(W_n / b * c_r / m_n)')
    const stored = storedStageOf(d, number, 'gear')
    materialRow(d, 'S_1', `${path}.driverMaterial`, stored.driverMaterial, 'flank')
    materialRow(d, 'S_2', `${path}.drivenMaterial`, stored.drivenMaterial, 'flank')
    d.step('S_H', ['stress', 'what the softer flank bears for good'], 'min(S_1, S_2)')
    return { actual: 'sigma_H', allowed: 'S_H' }
  },
})

/** `C_p`: elastic coefficient of both wheels, √Pa. */
function elasticSteps(d: Draft, number: number): void {
  const path = `stages.${number - 1}`
  const stored = storedStageOf(d, number, 'gear')
  const part = stageOf(d, number, 'gear')
  const poisson = (material: Material) => (material.family === 'metal' ? 0.3 : 0.45)
  const told = ['none', 'Poisson’s ratio of the material’s family (handbook value)'] as const
  materialRow(d, 'E_1', `${path}.driverMaterial`, stored.driverMaterial, 'modulus')
  materialRow(d, 'E_2', `${path}.drivenMaterial`, stored.drivenMaterial, 'modulus')
  d.row('nu_1', `${path}.driverMaterial`, told, poisson(part.driverMaterial))
  d.row('nu_2', `${path}.drivenMaterial`, told, poisson(part.drivenMaterial))
  const expression = 'sqrt(1 / (pi * ((1 - nu_1^2) / E_1 + (1 - nu_2^2) / E_2)))'
  d.step('C_p', ['none', 'elastic coefficient, root of pascals'], expression)
}
