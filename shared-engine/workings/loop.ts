import type { CaseName } from '../cases/case.ts'
import type { Draft } from './draft.ts'
import { slackTension, tightShare } from './hold.ts'
import type { LimitWorking } from './limit.ts'
import { freeBeltSpeed } from './loads.ts'
import { loopPull, trackCaseOf } from './loop-pull.ts'
import { largestRow } from './sharing.ts'
import { loadHeight } from './stiffness.ts'
import type { Strength } from './strength.ts'

// Limits of the loop and of its teeth in any case.

/** `N`: tension of the tight side in a case. */
export function trackTension(d: Draft, name: CaseName): void {
  const at = trackCaseOf(name)
  loopPull(d, at)
  slackTension(d, at)
  d.step('N', ['force', 'loop tension'], 'F_K + N_s')
}

/** Stress of the most loaded tooth in a case. @returns its symbol */
export function toothStress(d: Draft, name: CaseName, strength: Strength): string {
  largestRow(d, trackCaseOf(name))
  d.entry('n_a', 'track.teethAcross')
  d.step('F_t', ['force', 'force on the most loaded tooth'], 'f / n_a')
  return stressOf[strength](d)
}

/** Stress of a tooth by the force on it, `F_t`. @returns its symbol */
export const stressOf: Readonly<Record<Strength, (d: Draft) => string>> = {
  shear: (d) => {
    d.entry('w', 'track.tooth.widthMm')
    d.entry('t', 'track.tooth.rootMm')
    d.step('tau', ['stress', 'shear stress'], 'F_t / (w * t)')
    return 'tau'
  },
  tensile: (d) => {
    loadHeight(d)
    d.entry('w', 'track.tooth.widthMm')
    d.entry('t', 'track.tooth.rootMm')
    d.step('sigma_b', ['stress', 'bending stress'], '6 * F_t * h / (w * t^2)')
    return 'sigma_b'
  },
  bearing: (d) => {
    d.entry('H', 'track.tooth.heightMm')
    loadHeight(d)
    d.entry('w', 'track.tooth.widthMm')
    d.assume('The pressed height is twice the distance from the load to the tip, at most the whole tooth.')
    d.step('h_c', ['length', 'pressed height of the flank'], 'min(H, 2 * (H - h))')
    d.step('sigma_c', ['stress', 'pressure on the flank'], 'F_t / (w * h_c)')
    return 'sigma_c'
  },
}

type Running = 'top' | 'free'

/** `v_b`: belt speed of a running case. */
function runningSpeed(d: Draft, name: Running): void {
  if (name === 'free') freeBeltSpeed(d)
  else d.figure('v_b', 'topBeltSpeedMps')
}

const running = { top: { afterTop: true }, free: {} } as const
const words = { top: 'at top speed', free: 'running free' } as const

const onlyFixed: NonNullable<LimitWorking['missing']> = ({ machine }) =>
  machine.track.hold.tensioner === 'sprung'
    ? { why: 'a sprung tensioner takes up what the loop grows: it stays on its wheels.' }
    : null

/** Where a fixed loop stops pressing on its wheels. */
export const liftOffWorking = (name: Running): LimitWorking => ({
  title: `The belt speed ${words[name]} against that at which the loop no longer presses on its wheels.`,
  source: 'centrifugal tension of a running belt, any machine-elements text',
  ...running[name],
  missing: onlyFixed,
  unformed: 'the slack side hangs loose at any speed: it counts as over.',
  write: (d) => {
    if (name === 'free') {
      runningSpeed(d, name)
      d.figure('v_L', 'liftOffBeltSpeedMps')
      return { actual: 'v_b', allowed: 'v_L' }
    }
    d.figure('N_0', 'loopPretensionN')
    loopPull(d, 'top')
    runningSpeed(d, name)
    tightShare(d)
    d.entry('m_b', 'track.massGPerM')
    const told = ['speed', 'belt speed at which the slack side stops pressing'] as const
    d.step('v_L', told, 'sqrt(max(0, N_0 - lambda * F_K) / m_b)')
    return { actual: 'v_b', allowed: 'v_L' }
  },
})

/** `u_s`: how far the loop stands off its wheels. */
export function standOff(d: Draft, name: Running): void {
  runningSpeed(d, name)
  d.entry('m_b', 'track.massGPerM')
  d.figure('N_0', 'loopPretensionN')
  d.entry('N_p', 'track.loopPitches')
  d.entry('p', 'track.pitchMm')
  d.step('L_l', ['length', 'length of the loop'], 'N_p * p')
  d.entry('S_l', 'track.loopStiffnessN')
  const told = ['length', 'how far the loop stands off its wheels'] as const
  d.step('u_s', told, 'max(0, m_b * v_b^2 - N_0) * L_l / (2 * pi * S_l)', 'stretch of a turning ring')
}

/** How far a fixed loop stands off its wheels against half the tooth's height. */
export const meshWorking = (name: Running): LimitWorking => ({
  title: `How far the loop stands off its wheels ${words[name]} against half of the tooth’s height.`,
  source: 'stretch of a turning ring, any strength-of-materials text',
  assumptions: ['Half of the tooth’s height in mesh is enough.'],
  ...running[name],
  missing: onlyFixed,
  write: (d) => {
    standOff(d, name)
    d.entry('H', 'track.tooth.heightMm')
    d.step('u_a', ['length', 'half of the tooth’s height'], 'H / 2')
    return { actual: 'u_s', allowed: 'u_a' }
  },
})
