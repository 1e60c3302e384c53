import type { Draft } from './draft.ts'
import { mass } from './footing.ts'
import type { Subject } from './subject.ts'

const asBuilt = 'as built, at any load'

/** `u_k`: the ratio of the k-th reduction, counted from 1. */
export function stageRatio(d: Draft, number: number): string {
  const stage = d.checked.machine.stages[number - 1]
  if (stage === undefined) throw new Error(`no stage ${number}`)
  const path = `stages.${number - 1}`
  const symbol = `u_${number}`
  // Where no teeth are known, the ratio itself is entered.
  if (stage.driverTeeth === 0) d.entry(symbol, `${path}.ratio`)
  else {
    d.entry(`z_a${number}`, `${path}.driverTeeth`)
    d.entry(`z_b${number}`, `${path}.drivenTeeth`)
    d.step(symbol, ['none', `ratio of stage ${number}`], `z_b${number} / z_a${number}`)
  }
  return symbol
}

/** `eta_k`: the efficiency of the k-th reduction, counted from 1. */
export function stageEfficiency(d: Draft, number: number): string {
  d.entry(`eta_${number}`, `stages.${number - 1}.efficiencyPercent`)
  return `eta_${number}`
}

const stageNumbers = (d: Draft) => d.checked.machine.stages.map((_, index) => index + 1)

/** A product written out; 1 where there is nothing to multiply. */
export const productOf = (symbols: readonly string[]): string =>
  symbols.length === 0 ? '1' : symbols.join(' * ')

const ratio: Subject = {
  title: 'Motor turns for one turn of the drive sprocket.',
  state: asBuilt,
  source: 'definition of a gear train’s ratio: driven over driving teeth, stage by stage',
  write: (d) => {
    const product = productOf(stageNumbers(d).map((number) => stageRatio(d, number)))
    const words = product === '1' ? 'there is no reduction' : undefined
    d.step('G', ['none', 'overall ratio'], product, words)
  },
}

const efficiency: Subject = {
  title: 'What the reductions pass on of the motor’s power.',
  state: asBuilt,
  source: 'assumption',
  assumptions: ['Each reduction loses the same share of the power at any load and speed.'],
  write: (d) => {
    const product = productOf(stageNumbers(d).map((number) => stageEfficiency(d, number)))
    const words = product === '1' ? 'there is no reduction' : undefined
    const told = ['fraction', 'efficiency of the reductions'] as const
    d.step('eta', told, product, words)
  },
}

const advancePerMotorTurnM: Subject = {
  title: 'How far the belt goes for one turn of the motor, without slip.',
  state: asBuilt,
  source: 'geometry: the sprocket moves one drive pitch a tooth',
  write: (d) => {
    d.entry('z', 'track.sprocketTeeth')
    d.entry('p', 'track.pitchMm')
    d.figure('G', 'ratio')
    d.step('a', ['length', 'advance of one sprocket turn'], 'z * p')
    d.step('a_m', ['length', 'advance of one motor turn'], 'a / G')
  },
}

const equivalentMassKg: Subject = {
  title:
    'The mass that the thrust has to accelerate: the machine, its loops, and all that turns with the motors.',
  state: asBuilt,
  source: 'kinetic energy of the parts, reflected to the motor: any machine-dynamics text',
  assumptions: [
    'A circulating loop counts once more than its translation, and all of it is held while the track spins too.',
  ],
  write: (d) => {
    mass(d)
    d.entry('m_b', 'track.massGPerM')
    d.entry('N_p', 'track.loopPitches')
    d.entry('p', 'track.pitchMm')
    d.step('m_l', ['mass', 'mass of one loop'], 'm_b * N_p * p')
    reflectedInertia(d)
    d.entry('z', 'track.sprocketTeeth')
    d.step('r', ['length', 'pitch radius of the drive sprocket'], 'z * p / (2 * pi)')
    d.entry('N_t', 'track.count')
    d.entry('M', 'motor.count')
    d.figure('G', 'ratio')
    const expression = 'm + N_t * m_l + M * J * (G / r)^2'
    d.step('m_e', ['mass', 'mass to accelerate'], expression)
  },
}

/** `J`: rotor and driven wheels at one motor's shaft. */
function reflectedInertia(d: Draft): void {
  const { stages } = d.checked.machine
  d.entry('J_0', 'motor.rotorInertiaGcm2')
  const terms = ['J_0']
  stages.forEach((_, index) => {
    const number = index + 1
    const ratios = Array.from({ length: number }, (_, before) => stageRatio(d, before + 1))
    d.entry(`J_${number}`, `stages.${index}.drivenInertiaGcm2`)
    terms.push(`J_${number} / (${ratios.join(' * ')})^2`)
  })
  d.step('J', ['inertia', 'inertia at one motor’s shaft'], terms.join(' + '))
}

export const trainWorkings = { ratio, efficiency, advancePerMotorTurnM, equivalentMassKg } satisfies Record<
  string,
  Subject
>
