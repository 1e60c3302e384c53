import type { CaseName } from '../cases/case.ts'
import { beltShaftPull } from '../stages/belt/machine.ts'
import type { Evaluated } from '../figures/evaluated.ts'
import type { JointPart } from '../machine/joint.ts'
import type { ShaftPart } from '../machine/shaft.ts'
import type { Draft } from './draft.ts'
import { sprocketRadius } from './circuit.ts'
import { centrifugal, pressing, tightShare } from './hold.ts'
import { loopForce } from './loads.ts'
import { loopPull, trackCaseOf } from './loop-pull.ts'
import { stageOf, stageTorque, torqueAfter } from './stage-duty.ts'
import { stageRatio } from './train.ts'

// Where a wheel sits on a shaft: the driven shaft of a reduction, the sprocket's, the motor's.

/** What a joint sits on. */
export interface JointSeat {
  /** "the driven shaft of stage 2". */
  readonly words: string
  readonly paths: {
    readonly diameter: string
    readonly material: string
    readonly joint: string
  }
  /** Path of the wheel's material, where the hub is a gear's; null where it is not judged. */
  readonly hub: (checked: Evaluated) => string | null
  readonly part: (checked: Evaluated) => SeatPart | null
  /** Writes `T_s`, the torque of the shaft. */
  readonly torque: (d: Draft, name: CaseName) => void
}

/** A seat in SI. */
type SeatPart = Pick<ShaftPart, 'diameter' | 'material' | 'hubBearing'> & {
  readonly joint: JointPart | null
}

/** A whole shaft. */
export interface ShaftSeat extends JointSeat {
  readonly part: (checked: Evaluated) => ShaftPart | null
  readonly bend: { readonly span: string; readonly overhang: string }
  readonly bearing: string
  /** Writes `Q`, the pull across it. */
  readonly pull: (d: Draft, name: CaseName) => void
  /** Writes `Q_b`, the pull at top speed without the service factor. */
  readonly topPull: (d: Draft) => void
  /** Writes `n_s`, its rpm at top speed. */
  readonly topSpeed: (d: Draft) => void
}

/** Pull across both shafts of a reduction, of the torque into it. @returns its symbol */
function meshPull(d: Draft, number: number, torque: string): string {
  const { kind } = d.checked.machine.stages[number - 1] ?? { kind: 'fixed' }
  const path = `stages.${number - 1}`
  const symbol = `Q_${number}`
  const told = ['force', `pull of stage ${number} across its shafts`] as const
  if (kind === 'fixed') {
    d.step(symbol, told, `0 * ${torque}`, 'of a gearbox of a known ratio nothing is known')
    return symbol
  }
  d.entry(`z_a${number}`, `${path}.driverTeeth`)
  // not s_1, which a soil’s full slip has
  const size = `p_w${number}`
  if (kind === 'gear') {
    d.entry(size, `${path}.moduleMm`)
    d.entry(`phi_${number}`, `${path}.pressureAngleDegrees`)
    d.step(symbol, told, `2 * ${torque} / (${size} * z_a${number} * cos(phi_${number}))`)
  } else if (kind === 'belt') {
    const pitch = ['length', 'pitch of the profile (ISO 5296, DIN 7721, ISO 13050)'] as const
    d.row(size, `${path}.profile`, pitch, stageOf(d, number, 'belt').pitch)
    const words = `${beltShaftPull} times the useful pull is common practice, no source`
    d.step(symbol, told, `${beltShaftPull} * ${torque} * 2 * pi / (${size} * z_a${number})`, words)
  } else {
    d.row(size, `${path}.size`, ['length', 'pitch of the chain (ISO 606)'], stageOf(d, number, 'chain').pitch)
    d.step(symbol, told, `${torque} * 2 * sin(pi / z_a${number}) / ${size}`)
  }
  return symbol
}

const rightAngles = 'The pulls on a shaft are taken to be at right angles.'

/** The driven shaft of a reduction. */
export function stageSeat(number: number): ShaftSeat {
  const path = `stages.${number - 1}`
  const pull = (d: Draft, name: CaseName) => {
    stageTorque(d, number, name, 'in')
    const own = meshPull(d, number, 'T_k')
    const told = ['force', 'pull across the shaft'] as const
    if (d.checked.machine.stages[number] === undefined) {
      d.step('Q', told, own)
      return
    }
    stageTorque(d, number, name, 'out')
    const next = meshPull(d, number + 1, 'T_s')
    d.assume(rightAngles)
    d.step('Q', told, `sqrt(${own}^2 + ${next}^2)`)
  }
  return {
    words: `the driven shaft of stage ${number}`,
    paths: { diameter: `${path}.shaftDiameterMm`, material: `${path}.shaftMaterial`, joint: `${path}.joint` },
    hub: ({ machine }) => (machine.stages[number - 1]?.kind === 'gear' ? `${path}.drivenMaterial` : null),
    part: ({ machine }) => machine.stages[number - 1]?.shaft ?? null,
    bend: { span: `${path}.shaftSpanMm`, overhang: `${path}.shaftOverhangMm` },
    bearing: `${path}.bearing`,
    torque: (d, name) => {
      stageTorque(d, number, name, 'out')
    },
    pull,
    topPull: (d) => {
      pull(d, 'top')
      d.step('Q_b', ['force', 'the same without the service factor'], 'Q / K_A')
    },
    topSpeed: (d) => {
      d.figure('n', 'topMotorRpm')
      const ratios = Array.from({ length: number }, (_, at) => stageRatio(d, at + 1))
      d.step('n_s', ['rpm', 'speed of the shaft'], `n / (${ratios.join(' * ')})`)
    },
  }
}

/** Pull of the last reduction on the sprocket's shaft. @returns its symbol; null without reductions */
function lastPull(d: Draft, name: CaseName): string | null {
  const last = d.checked.machine.stages.length
  if (last === 0) return null
  stageTorque(d, last, name, 'in')
  return meshPull(d, last, 'T_k')
}

/** The shaft of the drive sprocket. */
export const sprocketSeat: ShaftSeat = {
  words: 'the shaft of the drive sprocket',
  paths: {
    diameter: 'track.shaft.diameterMm',
    material: 'track.shaft.material',
    joint: 'track.shaft.joint',
  },
  hub: () => null,
  part: ({ machine }) => machine.track.shaft,
  bend: { span: 'track.shaft.spanMm', overhang: 'track.shaft.overhangMm' },
  bearing: 'track.shaft.bearing',
  torque: (d, name) => {
    loopPull(d, trackCaseOf(name))
    sprocketRadius(d)
    d.entry('M', 'motor.count')
    d.entry('N_t', 'track.count')
    d.step('T_s', ['torque', 'torque of the sprocket’s shaft'], 'F_K * r * N_t / M')
  },
  pull: (d, name) => {
    loopPull(d, trackCaseOf(name))
    pressing(d, trackCaseOf(name))
    d.step('Q_t', ['force', 'pull of both sides of the loop'], 'F_K + 2 * P_s')
    const last = lastPull(d, name)
    if (last !== null) d.assume(rightAngles)
    d.step('Q', ['force', 'pull across the shaft'], last === null ? 'Q_t' : `sqrt(Q_t^2 + ${last}^2)`)
  },
  topPull: (d) => {
    loopForce(d, 'top')
    topPressing(d)
    d.step('Q_t', ['force', 'pull of both sides of the loop, without the service factor'], 'F_e + 2 * P_e')
    const last = lastPull(d, 'top')
    const told = ['force', 'pull across the shaft, without the service factor'] as const
    d.step('Q_b', told, last === null ? 'Q_t' : `sqrt(Q_t^2 + (${last} / K_A)^2)`)
  },
  topSpeed: (d) => {
    d.figure('v_b', 'topBeltSpeedMps')
    sprocketRadius(d)
    d.step('n_s', ['rpm', 'speed of the shaft'], 'v_b / r * 60 / (2 * pi)')
  },
}

/** `P_e`: what presses the loop onto its wheels at top speed, without the service factor. */
function topPressing(d: Draft): void {
  d.figure('N_0', 'loopPretensionN')
  const told = ['force', 'pressing part of the slack side, without the service factor'] as const
  if (d.checked.machine.track.hold.tensioner === 'sprung') {
    d.step('P_e', told, 'N_0')
    return
  }
  centrifugal(d, 'top')
  tightShare(d)
  d.step('P_e', told, 'max(0, N_0 - lambda * F_e - q_b)')
}

/** The pinion on the motor's shaft. */
export const motorSeat: JointSeat = {
  words: 'the motor’s shaft',
  paths: {
    diameter: 'motor.joint.shaftDiameterMm',
    material: 'motor.joint.shaftMaterial',
    joint: 'motor.joint',
  },
  hub: ({ machine }) => (machine.stages[0]?.kind === 'gear' ? 'stages.0.driverMaterial' : null),
  part: ({ machine }) => machine.motor.joint,
  torque: (d, name) => {
    torqueAfter(d, 0, name, 'T_s', 'torque of the motor’s shaft')
  },
}
