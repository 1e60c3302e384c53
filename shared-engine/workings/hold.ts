import type { TrackCase } from '../cases/case.ts'
import { sprocketRadius } from './circuit.ts'
import type { Draft } from './draft.ts'
import { loadOf } from './loads.ts'

// How a loop is kept tight: what its slack side keeps and what presses it onto its wheels.

/** `L_l` and `l_t`: the loop's length, and the span that the pull stretches. */
export function tightSpan(d: Draft): void {
  d.entry('N_p', 'track.loopPitches')
  d.entry('p', 'track.pitchMm')
  d.step('L_l', ['length', 'length of the loop'], 'N_p * p')
  const told = ['length', 'span from the sprocket to where the loop is pulled or held'] as const
  if (d.checked.build.track.tightSpanMm !== undefined) {
    d.entry('l_g', 'track.tightSpanMm')
    d.step('l_t', told, 'min(l_g, L_l)')
  } else {
    sprocketRadius(d)
    d.entry('beta_w', 'track.wrapDegrees')
    d.assume('The loop is pulled or held half of the way round from the sprocket (track.tightSpanMm).')
    d.step('l_t', told, 'min(max(p, (L_l - r * beta_w) / 2), L_l)')
  }
}

/** `lambda`: the part of the loop that the pull stretches. */
export function tightShare(d: Draft): void {
  tightSpan(d)
  d.step('lambda', ['fraction', 'its part of the loop'], 'l_t / L_l')
}

/** `q_b`: tension of the loop’s own mass as it turns. */
export function centrifugal(d: Draft, name: TrackCase): void {
  const told = ['force', 'tension of the loop’s own mass as it turns'] as const
  if (loadOf(d.checked, name).beltSpeed === 0) {
    d.step('q_b', told, '0', 'the loop stands')
    return
  }
  d.entry('m_b', 'track.massGPerM')
  d.step('q_b', told, 'm_b * v_b^2')
}

/** `N_s`: tension of the slack side in a case whose pull is `F_K`. */
export function slackTension(d: Draft, name: TrackCase): void {
  d.figure('N_0', 'loopPretensionN')
  centrifugal(d, name)
  const told = ['force', 'tension of the slack side'] as const
  if (d.checked.machine.track.hold.tensioner === 'sprung') {
    d.step('N_s', told, 'N_0 + q_b', 'the tensioner keeps the slack side at the pretension')
    return
  }
  tightShare(d)
  const words = 'what the tight side gains the slack side loses; a loop is no slacker than its own ring'
  d.step('N_s', told, 'max(q_b, N_0 - lambda * F_K)', words)
}

/** `P_s`: what of it presses the loop onto its wheels. */
export function pressing(d: Draft, name: TrackCase): void {
  d.figure('N_0', 'loopPretensionN')
  const told = ['force', 'part of the slack side’s tension that presses the loop onto its wheels'] as const
  if (d.checked.machine.track.hold.tensioner === 'sprung') {
    d.step('P_s', told, 'N_0')
    return
  }
  centrifugal(d, name)
  tightShare(d)
  d.step('P_s', told, 'max(0, N_0 - lambda * F_K - q_b)')
}
