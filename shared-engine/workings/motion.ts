import type { Draft } from './draft.ts'
import {
  averagedDuty,
  driveTrain,
  driveVolts,
  loopResistance,
  motorModel,
  noLoadAt,
  referenceSpeed,
  seriesResistance,
  torqueConstant,
} from './circuit.ts'

// Groups of steps about thrust against speed, and the state at top speed. All in the running state.

/** One of the two straight pieces of thrust against belt speed. */
type Piece = 'open' | 'limited'

/** The piece at a belt speed. */
export function pieceAt(d: Draft, beltSpeed: number): Piece {
  return beltSpeed < d.checked.evaluation.line.cornerSpeed ? 'limited' : 'open'
}

/** `I_st`: current of one motor at rest, on the piece. */
function startAmps(d: Draft, piece: Piece): void {
  if (piece === 'limited') {
    d.entry('I_lim', 'controller.currentLimitAmps')
    const words = 'the controller’s limit acts here'
    d.step('I_st', ['amps', 'current of one motor'], 'I_lim', words)
    return
  }
  driveVolts(d)
  loopResistance(d, 'service')
  const told = ['amps', 'current of one motor at rest, by the circuit alone'] as const
  d.step('I_st', told, 'delta * V_0 / R')
}

/** `F_st`: thrust of a piece at rest. */
export function startThrust(d: Draft, piece: Piece): void {
  d.source(motorModel)
  torqueConstant(d, 'service')
  startAmps(d, piece)
  driveTrain(d)
  d.entry('I_nl', 'motor.noLoadAmps')
  d.entry('beta', 'motor.viscousPercent')
  d.entry('D_0', 'track.internalDragN')
  const expression = 'M * K_t * G * eta / r * (I_st - I_nl * (1 - beta)) - D_0'
  d.step('F_st', ['force', 'motors’ thrust at rest, on this piece'], expression)
}

/** `s_b`: how much thrust a piece loses for each m/s of belt speed. */
export function thrustSlope(d: Draft, piece: Piece): void {
  referenceSpeed(d)
  d.entry('D_1', 'track.internalDragNPerMps')
  const told = ['dragPerSpeed', 'thrust lost with belt speed'] as const
  const noLoad = 'I_nl * beta / omega_ref'
  if (piece === 'limited') {
    d.step('s_b', told, `M * K_t * eta * (G / r)^2 * ${noLoad} + D_1`)
    return
  }
  d.step('s_b', told, `M * K_t * eta * (G / r)^2 * (K_t / R + ${noLoad}) + D_1`)
}

/** `rho`, `C_d` and `A`: what air drag is made of. */
export function air(d: Draft): void {
  d.figure('rho', 'airDensity')
  d.entry('C_d', 'vehicle.dragCoefficient')
  d.entry('A', 'vehicle.frontalAreaM2')
}

/** `F`: thrust at top speed, equal to all that holds the machine back there. */
export function topThrust(d: Draft): void {
  air(d)
  d.figure('R_0', 'groundResistanceN')
  d.figure('v', 'topSpeedMps')
  const told = ['force', 'thrust, equal to resistance'] as const
  d.step('F', told, 'R_0 + rho * C_d * A * v^2 / 2')
}

/** `D`: drag of loops and wheels at a belt speed `v_b` that is known. */
export function internalDrag(d: Draft): void {
  d.entry('D_0', 'track.internalDragN')
  d.entry('D_1', 'track.internalDragNPerMps')
  d.step('D', ['force', 'drag of loops and wheels'], 'D_0 + D_1 * v_b')
}

/** `T`: torque of one motor at top speed. */
export function topTorque(d: Draft): void {
  topThrust(d)
  d.figure('v_b', 'topBeltSpeedMps')
  internalDrag(d)
  driveTrain(d)
  d.step('T', ['torque', 'torque of one motor'], '(F + D) * r / (M * G * eta)')
}

/** `omega`: motor speed at top speed. */
export function topMotorSpeed(d: Draft): void {
  d.figure('n', 'topMotorRpm')
  const told = ['angularSpeed', 'motor speed'] as const
  d.step('omega', told, 'n * 2 * pi / 60')
}

/** `I`: current of one motor at top speed, worked out from the torque or held by the limit. */
export function topAmps(d: Draft): void {
  const { top, drive } = d.checked.evaluation
  const told = ['amps', 'current of one motor'] as const
  if (top.motorSpeed < drive.cornerSpeed) {
    d.entry('I_lim', 'controller.currentLimitAmps')
    d.step('I', told, 'I_lim', 'the controller’s limit acts at this speed')
    return
  }
  d.source(motorModel)
  topTorque(d)
  torqueConstant(d, 'service')
  topMotorSpeed(d)
  noLoadAt(d)
  d.step('I', told, 'T / K_t + I_0')
}

/**
 * `delta_i`: the duty in force where a current `I` flows at a speed `omega`; both are known.
 *
 * @param needed ω K_t + I R_s, V
 */
export function dutyForCurrent(d: Draft, speed: 'omega' | null): void {
  d.source(averagedDuty)
  seriesResistance(d, 'service')
  driveVolts(d)
  d.entry('M', 'motor.count')
  const expression = speed === null ? 'I * R_s' : 'omega * K_t + I * R_s'
  d.step('c', ['volts', 'what the motor itself needs'], expression)
  const words = 'the smaller root of M * I * R_b * delta_i^2 - V_0 * delta_i + c = 0'
  const root = '2 * c / (V_0 + sqrt(V_0^2 - 4 * M * I * R_b * c))'
  d.step('delta_i', ['fraction', 'duty in force'], root, words)
}
