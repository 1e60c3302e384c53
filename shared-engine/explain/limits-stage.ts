import type { BeltStage, ChainStage } from '../machine/parts.ts'
import { horsepower } from '../constants.ts'
import type { LimitRow } from '../limits/ledger.ts'
import { beltMeshFactor, beltProfileOf, beltWidthExponent } from '../reference/belts.ts'
import { beltLean, pulleyRadius, teethInMesh } from '../stages/belt/geometry.ts'
import { chainWheelRadius } from '../stages/chain/geometry.ts'
import { allowedBeltPull } from '../stages/belt/physics.ts'
import { allowedChainTension, chainSafety } from '../stages/chain/physics.ts'
import type { Draft } from './draft.ts'
import { materialRow } from './material.ts'
import type { Compared, LimitSubject } from './margin.ts'
import { driverSpeed, stageTorque } from './stage-duty.ts'

const rated = 'typical, and for other widths in proportion'

/** `r_a` and `v_k`: radius and speed of the driver’s pitch line. */
function pitchLine(d: Draft, number: number, row: LimitRow, radius: number, expression: string): number {
  const speed = driverSpeed(d, number, row.case)
  d.step('r_a', ['length', 'pitch radius of the driver'], expression, radius)
  return d.step('v_k', ['speed', 'speed of the pitch line'], 'omega_k * r_a', speed * radius)
}

/** `K_z`: what is left of the pull with few teeth in mesh. */
function mesh(d: Draft, number: number, stage: BeltStage): void {
  const path = `stages.${number - 1}`
  const [driver, driven] = [`z_a${number}`, `z_b${number}`]
  d.entry(driver, `${path}.driverTeeth`)
  d.entry(driven, `${path}.drivenTeeth`)
  d.entry('C', `${path}.centreMm`)
  const lean = 'asin(p_k * (max(z_1, z_2) - min(z_1, z_2)) / (2 * pi * C))'
  const named = lean.replaceAll('z_1', driver).replaceAll('z_2', driven)
  d.step('theta', ['angle', 'lean of the straight runs'], named, beltLean(stage))
  const teeth = `floor(min(${driver}, ${driven}) * (1 / 2 - theta / pi) + 1e-9)`
  d.step('z_m', ['count', 'teeth in mesh on the smaller pulley'], teeth, teethInMesh(stage))
  const told = ['none', 'what few teeth in mesh leave of the pull'] as const
  d.step('K_z', told, '1 - 0.2 * max(0, 6 - z_m)', beltMeshFactor(teethInMesh(stage)))
}

/** `T_w`: pull of this width, with six or more teeth in mesh. */
function widthPull(d: Draft, number: number, stage: BeltStage): void {
  const path = `stages.${number - 1}`
  const stored = d.checked.build.stages[number - 1]
  if (stored?.kind !== 'belt') return
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
  d.step('m_k', ['linearDensity', 'mass of this belt'], 'm_0 * w / w_0', stage.massPerMetre)
  if (stored.allowableTensionN !== undefined) {
    d.entry('T_w', `${path}.allowableTensionN`)
    return
  }
  const tension = ['force', 'allowable tension at that width (ISO 5295, first edition)'] as const
  d.row('T_a', `${path}.profile`, tension, profile.allowableTension ?? NaN)
  d.step('T_w', ['force', 'the same for this width'], `T_a * (w / w_0)^${beltWidthExponent}`, stage.ratedPull)
}

function beltPull(d: Draft, number: number, stage: BeltStage, row: LimitRow): Compared {
  d.source('ISO 5295, first edition; ISO 5294 for the pitch radius')
  stageTorque(d, number, row.case, 'in')
  const pitch = ['length', 'pitch of the profile (ISO 5296, DIN 7721, ISO 13050)'] as const
  d.row('p_k', `stages.${number - 1}.profile`, pitch, stage.pitch)
  mesh(d, number, stage)
  const radius = pulleyRadius(stage.pitch, stage.driverTeeth)
  const speed = pitchLine(d, number, row, radius, `p_k * z_a${number} / (2 * pi)`)
  d.step('F_k', ['force', 'pull of the belt'], 'T_k / r_a', row.actual ?? NaN)
  widthPull(d, number, stage)
  const told = ['force', 'pull that is left for the drive'] as const
  d.step('F_a', told, 'K_z * T_w - m_k * v_k^2', allowedBeltPull(stage, speed))
  return { actual: 'F_k', allowed: 'F_a' }
}

function chainPull(d: Draft, number: number, stage: ChainStage, row: LimitRow): Compared {
  const path = `stages.${number - 1}`
  d.source(
    'statics and the chain’s own centrifugal pull; ISO 606 for pitch and strength; an eighth of it: common practice, no source',
  )
  stageTorque(d, number, row.case, 'in')
  chainPitch(d, number, stage)
  d.entry(`z_a${number}`, `${path}.driverTeeth`)
  const radius = chainWheelRadius(stage.pitch, stage.driverTeeth)
  pitchLine(d, number, row, radius, `p_k / (2 * sin(pi / z_a${number}))`)
  d.entry('n_s', `${path}.strands`)
  const strand = ['linearDensity', 'mass of one strand (typical)'] as const
  d.row('m_0', `${path}.size`, strand, stage.massPerMetre / stage.strands)
  d.step('F_k', ['force', 'tension of the pulling run'], 'T_k / r_a + n_s * m_0 * v_k^2', row.actual ?? NaN)
  const tensile = ['force', 'minimum tensile strength of one strand (ISO 606)'] as const
  d.row('F_u', `${path}.size`, tensile, stage.minTensile)
  const words = `${chainSafety} is common practice, no source`
  d.step('F_a', ['force', 'tension allowed'], `n_s * F_u / ${chainSafety}`, allowedChainTension(stage), words)
  return { actual: 'F_k', allowed: 'F_a' }
}

function chainPitch(d: Draft, number: number, stage: ChainStage): void {
  d.row('p_k', `stages.${number - 1}.size`, ['length', 'pitch of the chain (ISO 606)'], stage.pitch)
}

const tension = (number: number): LimitSubject => ({
  title: `The pull of the belt or chain of stage ${number} against what it may carry.`,
  source: 'torque over the driver’s pitch radius',
  unformed:
    'the belt’s own mass takes all that it may carry, or too few teeth are in mesh: it counts as over.',
  write: (d, row) => {
    const stage = d.checked.machine.stages[number - 1]
    if (stage?.kind === 'belt') return beltPull(d, number, stage, row)
    if (stage?.kind === 'chain') return chainPull(d, number, stage, row)
    throw new Error(`stage ${number} is neither belt nor chain`)
  },
})

const power = (number: number): LimitSubject => ({
  title: `The power into the chain of stage ${number} against the rating of its plates and rollers.`,
  source: 'Shigley’s Mechanical Engineering Design, eqs. 17-32 and 17-33, table 17-23 for strands',
  assumptions: ['European sizes are rated like the others of the same pitch.'],
  afterTop: true,
  unformed: 'a standing chain has no rating: it counts as over.',
  write: (d, row) => {
    const stage = d.checked.machine.stages[number - 1]
    if (stage?.kind !== 'chain') throw new Error(`stage ${number} is no chain`)
    const torque = stageTorque(d, number, 'top', 'in')
    const speed = driverSpeed(d, number, 'top')
    d.step('P_k', ['watts', 'power into the stage, with the service factor'], 'T_k * omega_k', torque * speed)
    chainRating(d, number, stage, speed, row)
    return { actual: 'P_k', allowed: 'P_a' }
  },
})

/** `P_a`: the lesser of the plates’ and the rollers’ rating. */
function chainRating(d: Draft, number: number, stage: ChainStage, speed: number, row: LimitRow): void {
  const path = `stages.${number - 1}`
  const [driver, driven] = [`z_a${number}`, `z_b${number}`]
  const smaller = Math.min(stage.driverTeeth, stage.drivenTeeth)
  const turns = ((speed * stage.driverTeeth) / smaller) * (60 / (2 * Math.PI))
  d.entry(driver, `${path}.driverTeeth`)
  d.entry(driven, `${path}.drivenTeeth`)
  d.step('z_s', ['count', 'teeth of the smaller wheel'], `min(${driver}, ${driven})`, smaller)
  d.step('n_k', ['rpm', 'its speed'], `omega_k * ${driver} / z_s * 60 / (2 * pi)`, turns)
  chainPitch(d, number, stage)
  d.step('P_i', ['none', 'pitch in inches'], 'p_k / 0.0254', stage.pitchInches)
  d.row('c', `${path}.size`, ['none', 'constant of the link plates'], stage.platesFactor)
  d.row('K_r', `${path}.size`, ['none', 'constant of the rollers'], stage.rollerFactor)
  const plates = stage.platesTerm * turns ** 0.9
  const rollers = stage.rollerTerm / turns ** 1.5
  const first = 'c * z_s^1.08 * n_k^0.9 * P_i^(3 - 0.07 * P_i)'
  d.step('H_1', ['none', 'link plates, horsepower'], first, plates)
  d.step('H_2', ['none', 'rollers, horsepower'], '1000 * K_r * z_s^1.5 * P_i^0.8 / n_k^1.5', rollers)
  const strands = ['none', 'how many times one strand (Shigley, table 17-23)'] as const
  d.row('f_s', `${path}.strands`, strands, stage.strandFactor)
  d.given('H_p', ['watts', 'one horsepower (NIST SP 811)'], horsepower)
  d.step('P_a', ['watts', 'power rating'], 'min(H_1, H_2) * f_s * H_p', row.allowed ?? NaN)
}

const shaft = (number: number): LimitSubject => ({
  title: `The torsion of the driven shaft of stage ${number} against the shear that its material bears.`,
  source: 'Shigley’s Mechanical Engineering Design, eqs. 3-37 and 5-21 (distortion energy)',
  write: (d, row) => {
    const path = `stages.${number - 1}`
    stageTorque(d, number, row.case, 'out')
    d.entry('d_s', `${path}.shaftDiameterMm`)
    d.step('tau', ['stress', 'torsion of the shaft'], '16 * T_k / (pi * d_s^3)', row.actual ?? NaN)
    const material = d.checked.build.stages[number - 1]?.shaftMaterial
    if (material !== undefined) materialRow(d, 'S_y', `${path}.shaftMaterial`, material, 'yield')
    d.constant('f_y', 'shearOfYield')
    d.step('S_f', ['stress', 'shear that it bears'], 'f_y * S_y', row.allowed ?? NaN)
    return { actual: 'tau', allowed: 'S_f' }
  },
})

export const plainStageLimitWorkings = { tension, power, shaft }
