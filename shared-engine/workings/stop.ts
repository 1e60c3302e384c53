import type { Evaluated } from '../figures/evaluated.ts'
import { heldEnergy, stopForce } from '../track/stop.ts'
import type { StopSpring } from '../geometry/stop-spring.ts'
import type { Draft } from './draft.ts'
import { freeBeltSpeed } from './loads.ts'
import { tightShare, tightSpan } from './hold.ts'
import { loopScale, motorPull, slipPull } from './pulls.ts'
import { rowStiffness } from './stiffness.ts'
import type { Missing } from './subject.ts'
import { stageRatio } from './train.ts'

// A loop that is held at once: what turns runs on against the stretch of loop and teeth.

export const stopAssumptions = [
  'The train is rigid, nothing damps, and all engaged rows take the pull at once: the most that this span of the loop can give.',
  'An obstacle nearer to the sprocket is worse: half the span gives nearly one and a half times the force.',
  'The machine’s and the loop’s own energy goes elsewhere.',
] as const

/** Why no stop is judged. */
export function missingStop({ machine }: Evaluated): Missing | null {
  if (!(machine.motor.rotorInertia > 0))
    return { why: 'no stop is judged without the rotor’s inertia (motor.rotorInertiaGcm2).' }
  return machine.track.stopSpring === null
    ? {
        why: 'no stop is judged without the stiffness of loop and tooth (track.loopStiffnessN, track.tooth.modulusMpa).',
      }
    : null
}

/** `kappa_s`: stiffness of the held loop and its teeth. */
export function jamStiffness(d: Draft): void {
  rowStiffness(d)
  d.figure('z_e', 'teethEngaged')
  const { stopSpring } = d.checked.machine.track
  const ladder = 1 / (1 / (stopSpring?.stiffness ?? NaN) - (stopSpring?.spanGive ?? NaN))
  const words = 'from k_r, then z_e − 1 times K = k_r + 1/(p/S_l + 1/K): springs in series and parallel'
  d.found('K', ['stiffness', 'stiffness of the engaged rows and the loop between them'], words, ladder)
  tightSpan(d)
  d.step('kappa_s', ['stiffness', 'stiffness of the held loop with its teeth'], '1 / (1 / K + l_t / S_l)')
}

/** `delta_s`, `F_s`, `kappa_1`: how a fixed loop is stiffer until its slack side has relaxed. */
export function slackening(d: Draft): void {
  const { hold } = d.checked.machine.track
  jamStiffness(d)
  const given = ['none', 'stretch that the slack side takes back, m/N'] as const
  const at = ['force', 'pull at which the slack side has relaxed'] as const
  if (hold.tensioner === 'sprung') {
    d.step('delta_s', given, '0', 'a sprung tensioner keeps the slack side as it is')
    d.step('F_s', at, '0')
  } else {
    d.figure('N_0', 'loopPretensionN')
    tightShare(d)
    d.step('delta_s', given, 'lambda * l_t / S_l')
    d.step('F_s', at, 'N_0 / lambda')
  }
  d.step('kappa_1', ['stiffness', 'stiffness until then'], '1 / (1 / kappa_s - delta_s)')
}

/** `mu` and `mu_k`: what turns before the input of each reduction, as mass at one loop. */
export function jamMass(d: Draft, symbol: string, passed: number): void {
  loopScale(d)
  d.entry('J_0', 'motor.rotorInertiaGcm2')
  const terms = ['J_0 * G^2']
  for (let number = 1; number <= passed; number += 1) {
    const ratios = Array.from({ length: number }, (_, at) => stageRatio(d, at + 1))
    d.entry(`J_${number}`, `stages.${number - 1}.drivenInertiaGcm2`)
    terms.push(`J_${number} * (G / (${ratios.join(' * ')}))^2`)
  }
  const told = ['mass', passedWords(d, passed)] as const
  d.step(symbol, told, `M * (${terms.join(' + ')}) / (r^2 * N_t)`)
}

function passedWords(d: Draft, passed: number): string {
  return passed === d.checked.machine.stages.length
    ? 'all that turns, as mass at one loop'
    : `what turns before stage ${passed + 1}, as mass at one loop`
}

type StopCase = 'stop' | 'stop-free'

/** `v_b`: belt speed at which the loop is held. */
function stopSpeed(d: Draft, name: StopCase): number {
  if (name === 'stop-free') {
    freeBeltSpeed(d)
    return d.checked.evaluation.freeLoad.beltSpeed
  }
  d.figure('v_b', 'topBeltSpeedMps')
  return d.checked.evaluation.top.beltSpeed
}

/** Twice the energy that a load holds the spring with, written out. */
export const heldTerm = (load: string) => `${load}^2 / kappa_1 + delta_s * max(0, ${load} - F_s)^2`

/** Writes the force at which a mass stops while a pull goes on. */
function peak(
  d: Draft,
  symbol: string,
  name: string,
  spring: StopSpring,
  pull: string,
  energySymbol: string,
): void {
  const [steady, energy] = [d.of(pull), d.of(energySymbol)]
  const late = stopForce(spring, steady, energy) >= spring.slackAt
  const expression = late
    ? `${pull} + sqrt(kappa_s * (${energySymbol} + delta_s * max(0, F_s - ${pull})^2))`
    : `${pull} + sqrt(kappa_1 * ${energySymbol})`
  d.step(symbol, ['force', name], expression, late ? undefined : 'the slack side has not relaxed yet')
}

/** `P_m`, the spring, `v_b` and `mu`: what a stop starts with. */
function beforeStop(d: Draft, name: StopCase): void {
  motorPull(d)
  slackening(d)
  stopSpeed(d, name)
  jamMass(d, 'mu', d.checked.machine.stages.length)
}

/** `F_0`: pull of the loop at the peak, no limiter slipping. */
function wholePeak(d: Draft, spring: StopSpring): void {
  const words = 'twice the energy of motion and of what holds already'
  d.step('w_0', ['energy', words], `mu * v_b^2 + ${heldTerm('P_m')}`)
  peak(d, 'F_0', 'pull of the loop at the peak', spring, 'P_m', 'w_0')
}

/** What a limiter leaves of the peak. */
function limiterPeak(d: Draft, number: number, spring: StopSpring): void {
  slipPull(d, number)
  jamMass(d, 'mu_b', number)
  d.step('m_b', ['mass', 'what runs on behind the limiter'], 'mu - mu_b')
  d.step('L_m', ['force', 'pull that goes on'], `min(L_${number}, P_m)`)
  d.step(
    'w_j',
    ['energy', 'twice the energy of that and of what holds already'],
    `m_b * v_b^2 + ${heldTerm('L_m')}`,
  )
  peak(d, 'F_j', 'pull of the loop at the peak, the limiter slipping', spring, `L_${number}`, 'w_j')
}

/** Number of the reduction whose limiter decides what goes through; 0 where none does. */
function decidingLimiter(d: Draft, name: StopCase, passed: number): number {
  const { evaluation, machine } = d.checked
  const { jam, motorPull: pull, pulls } = evaluation
  const through = (name === 'stop' ? pulls.stop : pulls.stopFree)[passed] ?? NaN
  const spring = machine.track.stopSpring
  if (spring === null) return 0
  const speed = name === 'stop' ? evaluation.top.beltSpeed : evaluation.freeLoad.beltSpeed
  const whole = stopForce(spring, pull, jam.mass * speed * speed + heldEnergy(spring, pull))
  const plain = pull + ((whole - pull) * (jam.masses[passed] ?? NaN)) / jam.mass
  if (through >= plain) return 0
  let best = 0
  let least = Infinity
  let ratio = 1
  machine.stages.forEach((stage, at) => {
    ratio *= stage.ratio
    if (stage.slipTorque === null) return
    const { motor, train, track } = machine
    const slip = (motor.count * stage.slipTorque * train.ratio) / (ratio * track.radius * track.count)
    const before = jam.masses[at + 1] ?? NaN
    const beyond = jam.mass - before
    const force = stopForce(spring, slip, beyond * speed * speed + heldEnergy(spring, Math.min(slip, pull)))
    const share = beyond === 0 ? 1 : ((jam.masses[passed] ?? NaN) - before) / beyond
    const option = passed <= at ? Math.max(pull, slip) : slip + (force - slip) * share
    if (option < least) [best, least] = [at + 1, option]
  })
  return best
}

/**
 * What goes through after so many reductions at the peak of a stop.
 *
 * @returns its symbol
 */
export function stopPull(d: Draft, name: StopCase, passed: number): string {
  const { stages, track } = d.checked.machine
  const spring = track.stopSpring
  if (spring === null) throw new Error('no stop is judged')
  const symbol = `A_${passed + 1}`
  const told = ['force', 'what goes through at the peak, as pull of one loop'] as const
  const number = decidingLimiter(d, name, passed)
  if (passed < number) {
    motorPull(d)
    slipPull(d, number)
    d.step(symbol, told, `max(P_m, L_${number})`, 'before the limiter that slips')
    return symbol
  }
  beforeStop(d, name)
  if (number === 0) {
    wholePeak(d, spring)
    if (passed === stages.length) return 'F_0'
    jamMass(d, `mu_${passed + 1}`, passed)
    d.step(symbol, told, `P_m + (F_0 - P_m) * mu_${passed + 1} / mu`)
    return symbol
  }
  limiterPeak(d, number, spring)
  if (passed === stages.length) return 'F_j'
  jamMass(d, `mu_${passed + 1}`, passed)
  d.step(symbol, told, `L_${number} + (F_j - L_${number}) * (mu_${passed + 1} - mu_b) / m_b`)
  return symbol
}
