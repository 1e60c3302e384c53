import { reliabilityFactor, sizeFactor } from '../stages/shaft-strength.ts'
import { greasedSpeed } from '../stages/bearing.ts'
import type { Evaluated } from '../figures/evaluated.ts'
import {
  keyHeight,
  keyWidth,
  jointLabel,
  jointSource,
  lastingShare,
  notchOf,
  screwHolding,
} from '../reference/joints.ts'
import { materialOf, type MaterialId } from '../reference/materials.ts'
import { keyMaterial } from '../stages/joint.ts'
import { keysOf, valueAt } from '../entries/path.ts'
import type { CaseName } from '../cases/case.ts'
import type { Draft } from './draft.ts'
import type { LimitWorking } from './limit.ts'
import { materialRow } from './material.ts'
import type { JointSeat, ShaftSeat } from './seat.ts'
import { missingStop, stopAssumptions } from './stop.ts'
import { firstOf, type Missing } from './subject.ts'

// Limits of a shaft, of the joint on it and of the bearing beside it.

const shigley = 'Shigley’s Mechanical Engineering Design'

function materialId(d: Draft, path: string): MaterialId {
  return valueAt(d.checked.build, keysOf(path)) as MaterialId
}

/** Why a shaft has no joint. */
const missingJoint =
  (seat: JointSeat) =>
  (checked: Evaluated): Missing | null =>
    (seat.part(checked)?.joint ?? null) === null
      ? { why: `it needs what is not entered: ${seat.paths.joint}.` }
      : null

/** Bending arm and moment `M_b`; 0 where neither span nor overhang is known. */
function bending(d: Draft, seat: ShaftSeat, name: CaseName): void {
  const told = ['torque', 'bending of the shaft'] as const
  const place = seat.part(d.checked)?.seat ?? 'unknown'
  if (place === 'unknown') {
    d.assume('Without the shaft’s span or overhang its bending is left out.')
    d.step('M_b', told, '0')
    return
  }
  seat.pull(d, name)
  if (place === 'between') {
    d.entry('l_s', seat.bend.span)
    d.step('M_b', told, 'Q * l_s / 4', 'the wheel sits midway')
    return
  }
  d.entry('l_s', seat.bend.overhang)
  d.step('M_b', told, 'Q * l_s', 'the wheel sits beyond the last bearing')
}

/** Bending and torsion of a shaft against what its material bears once. */
export const shaftWorking = (seat: ShaftSeat, strength: 'yield' | 'tensile'): LimitWorking => ({
  title: `Bending and torsion of ${seat.words} against the ${strength === 'yield' ? 'yield' : 'tensile'} strength of its material.`,
  source: `von Mises; ${shigley}, eqs. 5-15 and 7-15`,
  ...(strength === 'tensile' ? { assumptions: stopAssumptions, missing: missingStop } : {}),
  write: (d, row) => {
    seat.torque(d, row.case)
    bending(d, seat, row.case)
    d.entry('d_s', seat.paths.diameter)
    const expression = 'sqrt((32 * M_b)^2 + 3 * (16 * T_s)^2) / (pi * d_s^3)'
    d.step('sigma_v', ['stress', 'comparative stress of the shaft'], expression)
    materialRow(d, 'S_s', seat.paths.material, materialId(d, seat.paths.material), strength)
    return { actual: 'sigma_v', allowed: 'S_s' }
  },
})

/** `S_e`: what is left of the rotating-beam strength. */
function endurance(d: Draft, seat: ShaftSeat): void {
  const id = materialId(d, seat.paths.material)
  materialRow(d, 'S_r', seat.paths.material, id, 'endurance')
  const told = ['stress', 'strength of this shaft under full reversal'] as const
  const part = seat.part(d.checked)
  if (materialOf(id).family !== 'metal' || part === null) {
    d.step('S_e', told, 'S_r', 'not a metal: what the table gives')
    return
  }
  d.step('k_a', ['none', 'surface factor, machined'], 'min(1, 4.51 * (S_u / 1e6)^(-0.265))')
  const large = part.diameter > 0.051
  const size = large ? '1.51 * (d_s * 1000)^(-0.157)' : 'min(1, 1.24 * (d_s * 1000)^(-0.107))'
  d.found(
    'k_b',
    ['none', 'size factor'],
    `${size.replaceAll('*', '·')}, the diameter in millimetres`,
    sizeFactor(part.diameter),
  )
  d.given('k_e', ['none', 'factor of 99 % reliability (Shigley, table 6-5)'], reliabilityFactor)
  d.step('S_e', told, 'k_a * k_b * k_e * S_r')
}

/** How much of its fatigue strength a turning shaft uses. */
export const shaftLastsWorking = (seat: ShaftSeat): LimitWorking => ({
  title: `How much of its fatigue strength ${seat.words} uses.`,
  source: `${shigley}, eqs. 6-18, 6-20 and 7-7, tables 6-2 and 6-5 (distortion energy, Goodman)`,
  assumptions: [
    'Torque counts as steady and bending as fully reversed: a machine that reverses often is worse off.',
  ],
  missing: (checked) =>
    seat.part(checked)?.seat === 'unknown'
      ? { why: `it needs what is not entered: ${seat.bend.span} or ${seat.bend.overhang}.` }
      : null,
  write: (d, row) => {
    seat.torque(d, row.case)
    bending(d, seat, row.case)
    d.entry('d_s', seat.paths.diameter)
    materialRow(d, 'S_u', seat.paths.material, materialId(d, seat.paths.material), 'tensile')
    endurance(d, seat)
    const kind = seat.part(d.checked)?.joint?.kind ?? 'none'
    const notch = notchOf(kind)
    const words = `${jointLabel(kind)} (${jointSource(kind)})`
    d.given('K_f', ['none', `notch factor of bending: ${words}`], notch.bending)
    d.given('K_fs', ['none', 'notch factor of torsion: of the same'], notch.torsion)
    const sum = '2 * K_f * M_b / S_e + sqrt(3) * K_fs * T_s / S_u'
    d.step('U', ['none', 'part of its fatigue strength'], `16 / (pi * d_s^3) * (${sum})`)
    d.given('U_1', ['none', 'all of it'], 1)
    return { actual: 'U', allowed: 'U_1' }
  },
})

/** `B_h` where the hub is judged; the symbols of what is pressed. */
function hub(d: Draft, seat: JointSeat): readonly string[] {
  const path = seat.hub(d.checked)
  if (path === null) {
    d.assume('The hub isn’t counted: only the shaft and the joint are.')
    return []
  }
  const id = materialId(d, path)
  materialRow(d, 'B_0', path, id, 'bearing')
  d.row('f_h', path, ['fraction', 'what printing or moulding leaves of it (table)'], materialOf(id).knockdown)
  d.step('B_h', ['stress', 'what the wheel’s bore bears'], 'B_0 * f_h')
  return ['B_h']
}

const least = (symbols: readonly string[]) =>
  symbols.length === 1 ? (symbols[0] ?? '0') : `min(${symbols.join(', ')})`

/** `T_h`: torque that the joint holds once. */
function holding(d: Draft, seat: JointSeat): void {
  const joint = seat.part(d.checked)?.joint ?? null
  const part = seat.part(d.checked)
  if (joint === null || part === null) return
  const path = seat.paths.joint
  const told = ['torque', 'torque that the joint holds once'] as const
  d.entry('d_s', seat.paths.diameter)
  switch (joint.kind) {
    case 'key':
      keyHolds(d, seat, part.diameter)
      d.entry('l_j', `${path}.lengthMm`)
      d.step('T_h', told, 'min(0.577 * S_k * b_k, p_k * h_k / 2) * l_j * d_s / 2')
      return
    case 'screw':
      d.entry('n_j', `${path}.count`)
      d.row(
        'F_g',
        `${path}.screwMm`,
        ['force', 'holding power of one cup-point screw (Shigley, table 7-4, from memory)'],
        screwHolding(joint.screw),
      )
      d.assume(
        'Set screws are taken at a textbook’s holding power; a workshop chart has less than half of it.',
      )
      d.step('T_h', told, 'n_j * F_g * d_s / 2')
      return
    case 'pin': {
      d.entry('d_p', `${path}.pinMm`)
      materialRow(d, 'S_p', `${path}.pinMaterial`, materialId(d, `${path}.pinMaterial`), 'yield')
      const pressed = hub(d, seat).map((symbol) => `${symbol} * d_p * d_s^2 / 2`)
      d.assume('The hub’s walls at a pin are half of the shaft’s diameter thick.')
      d.step('T_h', told, least(['0.577 * S_p * pi * d_p^2 / 4 * d_s', ...pressed]))
      return
    }
    case 'clamp':
      d.entry('F_c', `${path}.clampForceN`)
      d.entry('mu_c', `${path}.friction`)
      d.step('T_h', told, 'mu_c * F_c * d_s')
      return
    case 'flat':
      materialRow(d, 'S_s', seat.paths.material, materialId(d, seat.paths.material), 'yield')
      d.entry('l_j', `${path}.lengthMm`)
      d.entry('t_j', `${path}.flatDepthMm`)
      d.assume('The pressure on a flat rises evenly to its edge.')
      d.step('T_h', told, `${least(['0.9 * S_s', ...hub(d, seat)])} * l_j * t_j * (d_s - t_j) / 3`)
  }
}

/** `S_k`, `b_k`, `h_k`, `p_k`: the key and what it and its seats bear. */
function keyHolds(d: Draft, seat: JointSeat, diameter: number): void {
  const told = `of a key of this shaft (DIN 6885, from memory)`
  materialRow(d, 'S_s', seat.paths.material, materialId(d, seat.paths.material), 'yield')
  d.given('S_k', ['stress', 'yield strength of the key, carbon steel'], materialOf(keyMaterial).yield)
  d.row('b_k', seat.paths.diameter, ['length', `width ${told}`], keyWidth(diameter))
  d.row('h_k', seat.paths.diameter, ['length', `height ${told}`], keyHeight(diameter))
  d.step('p_k', ['stress', 'what the weakest seat bears'], least(['0.9 * S_s', '0.9 * S_k', ...hub(d, seat)]))
}

/** Torque against what a joint holds, once or for good. */
export const jointWorking = (seat: JointSeat, span: 'once' | 'lasts'): LimitWorking => ({
  title: `The torque of ${seat.words} against what the joint on it holds${span === 'once' ? ' once' : ' for good'}.`,
  source: `${shigley}, sec. 7-7 and table 7-4; DIN 6885 and 6892; from memory`,
  missing: missingJoint(seat),
  write: (d, row) => {
    seat.torque(d, row.case)
    holding(d, seat)
    if (span === 'once') return { actual: 'T_s', allowed: 'T_h' }
    const kind = seat.part(d.checked)?.joint?.kind ?? 'key'
    d.given('f_l', ['fraction', `part of it that lasts (${jointSource(kind)})`], lastingShare(kind))
    d.step('T_l', ['torque', 'torque that it holds for good'], 'T_h * f_l')
    return { actual: 'T_s', allowed: 'T_l' }
  },
})

/** The same while the loop is held. */
export const stopJointWorking = (seat: JointSeat): LimitWorking => ({
  ...jointWorking(seat, 'once'),
  assumptions: stopAssumptions,
  missing: firstOf(missingJoint(seat), missingStop),
})

const missingBearing =
  (seat: ShaftSeat) =>
  (checked: Evaluated): Missing | null =>
    (seat.part(checked)?.bearing ?? null) === null
      ? { why: `it needs what is not entered: ${seat.bearing}.` }
      : null

/** Hours that nine in ten bearings reach at top speed. */
export const bearingLifeWorking = (seat: ShaftSeat): LimitWorking => ({
  title: `Hours at top speed that nine in ten of the bearings of ${seat.words} reach against those wanted.`,
  source: 'ISO 281, basic rating life',
  assumptions: ['A bearing beside an overhung wheel bears twice its pull, one of two bears half of it.'],
  afterTop: true,
  missing: missingBearing(seat),
  write: (d) => {
    seat.topPull(d)
    seat.topSpeed(d)
    const part = seat.part(d.checked)
    const share = { between: 'Q_b / 2', beyond: '2 * Q_b', unknown: 'Q_b' } as const
    d.step('P_b', ['force', 'load of the bearing'], share[part?.seat ?? 'unknown'])
    d.entry('C_b', `${seat.bearing}.dynamicN`)
    const power = part?.bearing?.kind === 'roller' ? '10 / 3' : '3'
    d.step('L_h', ['hours', 'hours that nine in ten reach'], `1e6 / (60 * n_s) * (C_b / P_b)^(${power})`)
    d.entry('L_s', 'service.lifeHours')
    d.step('L_w', ['hours', 'hours wanted'], 'L_s / 3600')
    return { actual: 'L_h', allowed: 'L_w' }
  },
})

/** Speed factor of a greased bearing. */
export const bearingSpeedWorking = (seat: ShaftSeat): LimitWorking => ({
  title: `How fast the bearings of ${seat.words} turn for their size, in rpm times millimetres, against what grease bears.`,
  source: 'common practice, no source',
  afterTop: true,
  missing: missingBearing(seat),
  write: (d) => {
    seat.topSpeed(d)
    d.entry('d_i', `${seat.bearing}.boreMm`)
    d.entry('d_o', `${seat.bearing}.outerMm`)
    d.step(
      'n_d',
      ['bearingSpeed', 'speed times mean diameter'],
      'n_s * (d_i + d_o) * 1000 / 2',
      'in millimetres',
    )
    d.given('n_g', ['bearingSpeed', 'what grease bears (common practice, no source)'], greasedSpeed)
    return { actual: 'n_d', allowed: 'n_g' }
  },
})
