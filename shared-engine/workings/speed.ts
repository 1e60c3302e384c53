import { isFlat } from '../vehicle/flat-limit.ts'
import { sprocketRadius } from './circuit.ts'
import type { Draft } from './draft.ts'
import { shearStrength, soilBooks, soilThrustAt } from './footing.ts'
import { air, pieceAt, startThrust, thrustSlope } from './motion.ts'
import { inCase, needingTop, type Subject } from './subject.ts'

const statics =
  'equilibrium of thrust and resistance; thrust as the motors give it, straight on either side of the corner'

/** Whether the soil’s top speed lies on a limited piece so flat that belt speed can’t be told from thrust. */
function onFlatPiece(d: Draft): boolean {
  const { line, top } = d.checked.evaluation
  return isFlat(line) && top.beltSpeed < line.cornerSpeed
}

/** `F_st` and `s_b` of the piece on which the top speed lies. */
function piece(d: Draft): void {
  const at = pieceAt(d, d.checked.evaluation.top.beltSpeed)
  startThrust(d, at)
  thrustSlope(d, at)
}

const topSpeedMps: Subject = {
  title: 'The ground speed at which thrust equals all that holds the machine back.',
  state: inCase('top'),
  source: statics,
  missing: needingTop,
  write: (d) => {
    const { machine, evaluation } = d.checked
    if (evaluation.top.spinning) spinningSpeed(d)
    else if (machine.ground.model === 'coefficient') grippingSpeed(d)
    else if (onFlatPiece(d)) flatSpeed(d)
    else soilSpeed(d)
  },
}

const told = ['speed', 'ground speed'] as const

/** Grip holds the speed: what is left of it beside the resistance at rest goes into air drag. */
function spinningSpeed(d: Draft): void {
  d.figure('F_max', 'gripThrustN')
  d.figure('R_0', 'groundResistanceN')
  air(d)
  const words = 'the motors could do more: the tracks spin, and grip sets the speed'
  d.step('v', told, 'sqrt(2 * (F_max - R_0) / (rho * C_d * A))', words)
}

/** On ground by two coefficients: a straight line of thrust meets a parabola of resistance. */
function grippingSpeed(d: Draft): void {
  const { machine } = d.checked
  if (machine.ground.model !== 'coefficient') return
  piece(d)
  d.entry('i', 'ground.slipPercent')
  d.step('s_v', ['dragPerSpeed', 'thrust lost with ground speed'], 's_b / (1 - i)')
  d.figure('R_0', 'groundResistanceN')
  d.step('F_a', ['force', 'what is left to accelerate at rest, on this piece'], 'F_st - R_0')
  air(d)
  const words = 'the positive root of rho * C_d * A * v^2 / 2 + s_v * v - F_a = 0'
  const root = '2 * F_a / (s_v + sqrt(s_v^2 + 2 * rho * C_d * A * F_a))'
  d.step('v', told, root, words)
}

/** The limit holds thrust the same up to the corner. */
function flatSpeed(d: Draft): void {
  piece(d)
  d.figure('v_b', 'topBeltSpeedMps')
  d.step('F', ['force', 'thrust, the same up to the corner'], 'F_st - s_b * v_b')
  d.figure('R_0', 'groundResistanceN')
  air(d)
  d.step('v', told, 'sqrt(2 * (F - R_0) / (rho * C_d * A))')
}

function soilSpeed(d: Draft): void {
  piece(d)
  d.figure('v_b', 'topBeltSpeedMps')
  const check = 'to be compared with the resistance below'
  const thrust = ['force', 'motors’ thrust at that belt speed'] as const
  d.step('F', thrust, 'F_st - s_b * v_b', check)
  d.figure('i', 'topSlip')
  d.figure('R_0', 'groundResistanceN')
  air(d)
  const resistance = 'R_0 + rho * C_d * A * (v_b * (1 - i))^2 / 2'
  const words = 'equal to the thrust: this is the speed at which they meet'
  d.step('R_v', ['force', 'resistance at that speed'], resistance, words)
  d.step('v', told, 'v_b * (1 - i)')
}

const topBeltSpeedMps: Subject = {
  title: 'How fast the belt runs at top speed, slip included.',
  state: inCase('top'),
  source: statics,
  missing: needingTop,
  write: (d) => {
    const { machine, evaluation } = d.checked
    const { top } = evaluation
    const belt = ['speed', 'belt speed'] as const
    const inverse = '(F_st - F) / s_b'
    if (top.spinning) {
      piece(d)
      d.figure('F', 'gripThrustN')
      d.step('v_b', belt, inverse, 'the tracks spin: the motors push with all that grip takes')
    } else if (machine.ground.model === 'coefficient' || onFlatPiece(d)) {
      d.figure('v', 'topSpeedMps')
      d.figure('i', 'topSlip')
      d.step('v_b', belt, 'v / (1 - i)')
    } else {
      piece(d)
      d.figure('i', 'topSlip')
      soilThrust(d, 'i * L / K', top.slip * evaluation.footing.fullShear)
      d.step('v_b', belt, inverse, 'where the motors push with that thrust')
    }
  },
}

/** `x` and `F`: what the soil passes on at the top speed’s slip. */
function soilThrust(d: Draft, expression: string | null, value: number): void {
  shearStrength(d, 'slope')
  const x = ['none', 'slip over the length of the patch, in shear displacements'] as const
  const words = 'the x at which thrust, F below, equals resistance, R_v below'
  if (expression === null) d.found('x', x, words, value)
  else d.step('x', x, expression)
  soilThrustAt(d, 'F')
}

const topSlip: Subject = {
  title: 'How much slower the ground passes than the belt runs, at top speed.',
  state: inCase('top'),
  source: 'definition of slip: i = 1 − v/v_b',
  missing: needingTop,
  write: (d) => {
    const { machine, evaluation } = d.checked
    const { top } = evaluation
    if (top.spinning) {
      d.figure('v', 'topSpeedMps')
      d.figure('v_b', 'topBeltSpeedMps')
      const words = 'the tracks spin: slip is what the motors make of it'
      d.step('i', ['fraction', 'slip'], '1 - v / v_b', words)
    } else if (machine.ground.model === 'coefficient') {
      d.entry('i_0', 'ground.slipPercent')
      d.step('i', ['fraction', 'slip'], 'i_0', 'as entered: the tracks grip')
    } else soilSlip(d)
  },
}

function soilSlip(d: Draft): void {
  const { top, footing } = d.checked.evaluation
  d.source(soilBooks)
  soilThrust(d, null, top.slip * footing.fullShear)
  if (onFlatPiece(d)) d.figure('v_b', 'topBeltSpeedMps')
  else {
    piece(d)
    d.step('v_b', ['speed', 'belt speed at which the motors push so'], '(F_st - F) / s_b')
  }
  d.figure('R_0', 'groundResistanceN')
  air(d)
  d.entry('L', 'vehicle.contactLengthMm')
  const resistance = 'R_0 + rho * C_d * A * (v_b * (1 - x * K / L))^2 / 2'
  d.step('R_v', ['force', 'resistance at that speed'], resistance, 'equal to the thrust')
  d.step('i', ['fraction', 'slip'], 'x * K / L')
}

const topMotorRpm: Subject = {
  title: 'How fast the motors turn at top speed.',
  state: inCase('top'),
  source: 'geometry: belt speed over the sprocket’s radius, times the ratio',
  missing: needingTop,
  write: (d) => {
    d.figure('v_b', 'topBeltSpeedMps')
    d.figure('G', 'ratio')
    sprocketRadius(d)
    d.step('omega', ['angularSpeed', 'motor speed'], 'v_b * G / r')
    d.step('n', ['rpm', 'motor speed'], 'omega * 60 / (2 * pi)')
  },
}

export const speedWorkings = { topSpeedMps, topBeltSpeedMps, topMotorRpm, topSlip } satisfies Record<
  string,
  Subject
>
