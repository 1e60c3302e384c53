import { mostGrip } from './footing.ts'
import { noLoadAtRest, sprocketRadius, torqueConstant } from './circuit.ts'
import type { Draft } from './draft.ts'
import { stageEfficiency, stageRatio } from './train.ts'

// What a jam and the ground put through the train, as the pull that it is on one loop.

/** `M`, `G`, `r`, `N_t`: from torques to the pull of one loop. */
export function loopScale(d: Draft): void {
  d.entry('M', 'motor.count')
  d.figure('G', 'ratio')
  sprocketRadius(d)
  d.entry('N_t', 'track.count')
}

/** `P_m`: pull of one loop that the motors’ torque makes in a jam. */
export function motorPull(d: Draft): void {
  d.figure('I_L', 'launchMotorAmps')
  torqueConstant(d, 'cold')
  noLoadAtRest(d)
  d.step('T_m', ['torque', 'torque of one motor in a jam'], 'max(0, K_t * (I_L - I_0))')
  loopScale(d)
  d.assume('A standing train loses nothing in the launch case: every efficiency is 1, the safe side.')
  d.step('P_m', ['force', 'pull of one loop that this torque makes'], 'M * T_m * G / (r * N_t)')
}

/** `L_j`: pull of one loop at which the limiter of the j-th reduction slips. */
export function slipPull(d: Draft, number: number): string {
  loopScale(d)
  const symbol = `L_${number}`
  d.entry(`T_L${number}`, `stages.${number - 1}.slipTorqueNm`)
  const ratios = Array.from({ length: number }, (_, at) => stageRatio(d, at + 1))
  const told = ['force', `pull of one loop at which the limiter of stage ${number} slips`] as const
  d.step(symbol, told, `M * T_L${number} * G / (${ratios.join(' * ')} * r * N_t)`)
  return symbol
}

/** Numbers of the reductions with a limiter among the first so many. */
function limiters(d: Draft, first: number): readonly number[] {
  return d.checked.machine.stages.flatMap(({ slipTorque }, at) =>
    at < first && slipTorque !== null ? [at + 1] : [],
  )
}

/** What the jam can put through after so many reductions: the motor’s pull and those of the limiters before. */
export function jamParts(d: Draft, passed: number): readonly string[] {
  motorPull(d)
  return ['P_m', ...limiters(d, passed).map((number) => slipPull(d, number))]
}

/** The least of some symbols, written out. */
export const leastOf = (symbols: readonly string[]): string =>
  symbols.length === 1 ? (symbols[0] ?? '0') : `min(${symbols.join(', ')})`

/** What the ground holds one loop with. */
function heldPull(d: Draft): string {
  mostGrip(d)
  d.entry('D_0', 'track.internalDragN')
  d.entry('N_t', 'track.count')
  return '(F_let + D_0) / N_t'
}

/** Efficiencies of the reductions from a place on, as a divisor. */
function losses(d: Draft, passed: number): string {
  const numbers = d.checked.machine.stages.map((_, at) => at + 1).slice(passed)
  const product = numbers.map((number) => stageEfficiency(d, number)).join(' * ')
  return numbers.length === 1 ? product : `(${product})`
}

/**
 * Pull that goes through after so many reductions in a jam or as far as the ground lets it.
 *
 * @param slipping whether limiters slip
 * @returns its symbol
 */
export function trainPull(d: Draft, name: 'launch' | 'grip', passed: number, slipping = true): string {
  const { stages } = d.checked.machine
  const symbol = `A_${passed + 1}`
  const jam = slipping ? jamParts(d, passed) : jamParts(d, 0)
  const told = ['force', `what goes through after ${passed} reductions, as pull of one loop`] as const
  if (name === 'launch') {
    d.step(symbol, told, leastOf(jam))
    return symbol
  }
  const whole = slipping ? jamParts(d, stages.length) : jam
  const force = ['force', 'pull of the sprocket on each loop, case grip'] as const
  const passedOn = leastOf([...whole, heldPull(d)])
  d.step('F_e', force, passedOn)
  if (passed === stages.length) return 'F_e'
  d.step(symbol, told, leastOf([...jam, `F_e / ${losses(d, passed)}`]), 'losses on the way down count')
  return symbol
}
