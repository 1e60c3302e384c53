import type { Evaluated } from '../figures/evaluated.ts'
import { inCase, firstOf, needingTop, type Missing, type Subject } from './subject.ts'
import { loopPull } from './loop-pull.ts'
import { loopScale, motorPull, slipPull } from './pulls.ts'
import { heldTerm, jamMass, jamStiffness, missingStop, slackening, stopAssumptions } from './stop.ts'
import { slipPullOf } from '../cases/train-pulls.ts'
import { speedFor, toothBreak } from '../cases/jam-break.ts'
import type { Draft } from './draft.ts'
import { tightShare } from './hold.ts'
import { materialRow } from './material.ts'
import { loadHeight, relativeStiffness } from './stiffness.ts'

const energySource = 'energy of what turns against the stretch of the held loop; a rigid train'

const jamStiffnessNPerM: Subject = {
  title: 'How stiff the held loop and the teeth on it are, seen from the belt.',
  state: 'the loop held at its tight span',
  source: 'springs in series and parallel',
  missing: missingStop,
  write: jamStiffness,
}

const jamMassKg: Subject = {
  title: 'The mass at one loop that all that turns with the motors makes.',
  state: 'as built',
  source: 'reflected inertia, any machine-dynamics text',
  missing: missingStop,
  write: (d) => {
    jamMass(d, 'mu', d.checked.machine.stages.length)
  },
}

const jamForceN: Subject = {
  title: 'The pull on one loop that is held at once, at top speed.',
  state: inCase('stop'),
  source: energySource,
  assumptions: stopAssumptions,
  missing: firstOf(missingStop, needingTop),
  write: (d) => {
    loopPull(d, 'stop')
  },
}

const jamFreeForceN: Subject = {
  title: 'The pull on one loop that is held at once while it runs free.',
  state: inCase('stop-free'),
  source: energySource,
  assumptions: stopAssumptions,
  missing: missingStop,
  write: (d) => {
    loopPull(d, 'stop-free')
  },
}

/** `F_1`: what one tooth bears once. */
function toothStrength(d: Draft): void {
  const { tooth } = d.checked.build.track
  if (tooth === undefined) return
  d.entry('f_k', 'track.knockdownPercent')
  loadHeight(d)
  d.entry('w', 'track.tooth.widthMm')
  d.entry('t', 'track.tooth.rootMm')
  d.entry('H', 'track.tooth.heightMm')
  const strengths = { S_s: 'shear', S_t: 'tensile', S_b: 'bearing' } as const
  for (const [symbol, strength] of Object.entries(strengths)) {
    if (tooth.material === 'custom') d.entry(symbol, `track.tooth.${strength}StrengthMpa`)
    else materialRow(d, symbol, 'track.tooth.material', tooth.material, strength)
  }
  const expression = 'f_k * w * min(S_s * t, S_t * t^2 / (6 * h), S_b * min(H, 2 * (H - h)))'
  d.step('F_1', ['force', 'what one tooth bears once, by its weakest stress'], expression)
}

/** `F_d`: pull at which the most loaded tooth breaks. */
function toothPull(d: Draft): void {
  const { machine } = d.checked
  const { tooth, hold } = machine.track
  if (tooth === null) return
  toothStrength(d)
  d.entry('n_a', 'track.teethAcross')
  d.figure('z_e', 'teethEngaged')
  relativeStiffness(d)
  d.figure('e_p', 'pitchErrorM')
  d.figure('N_0', 'loopPretensionN')
  if (hold.tensioner === 'fixed') tightShare(d)
  const slack = hold.tensioner === 'fixed' ? 'max(0, N_0 − lambda F_d)' : 'N_0'
  const words = `the pull whose most loaded row, of z_e with xi, S_l, p, e_p and a slack side of ${slack}, is n_a times F_1`
  d.found('F_d', ['force', 'pull at which the most loaded tooth breaks'], words, toothBreak(machine, tooth))
}

/** `F_l`: pull at which the loop breaks. */
function loopPullThatBreaks(d: Draft): void {
  const { hold } = d.checked.machine.track
  d.entry('N_B', 'track.breakingTensionN')
  d.figure('N_0', 'loopPretensionN')
  const told = ['force', 'pull at which the loop breaks'] as const
  if (hold.tensioner === 'sprung') {
    d.step('F_l', told, 'N_B - N_0')
    return
  }
  tightShare(d)
  if (d.of('lambda') * d.of('N_B') >= hold.pretension) {
    d.step('F_l', told, 'N_B', 'the slack side has relaxed by then: N_0 is below lambda times N_B')
  } else d.step('F_l', told, '(N_B - N_0) / (1 - lambda)')
}

const jamBreakForceN: Subject = {
  title: 'The pull at which a held loop breaks, or the first of its teeth.',
  state: 'the loop held',
  source: 'statics of teeth and loop; strengths that break once',
  missing: missingStop,
  write: (d) => {
    toothPull(d)
    const told = ['force', 'pull that breaks it'] as const
    if (d.checked.machine.track.breakingTension === null) {
      d.step('F_b', told, 'max(0, F_d)')
      return
    }
    loopPullThatBreaks(d)
    d.step('F_b', told, 'max(0, min(F_d, F_l))')
  },
}

function unbreakable({ figures }: Evaluated): Missing | null {
  return figures.jamBreakBeltSpeedMps === null
    ? { why: 'no jam breaks it, at any speed: a limiter next to the loop holds.' }
    : null
}

/** Number of the reduction whose limiter lets the greatest speed through; 0: the motors alone do. */
function slippingAtBreak(d: Draft): number {
  const { evaluation: e, machine, figures } = d.checked
  const breaks = figures.jamBreakForceN ?? NaN
  let best = 0
  let speed = speedFor(e, machine, breaks, e.motorPull, e.jam.mass)
  let ratio = 1
  machine.stages.forEach(({ slipTorque, ratio: own }, at) => {
    ratio *= own
    if (slipTorque === null) return
    const slip = slipPullOf(machine, slipTorque, ratio)
    const one = speedFor(e, machine, breaks, slip, e.jam.mass - (e.jam.masses[at + 1] ?? NaN))
    if (one > speed) [best, speed] = [at + 1, one]
  })
  return best
}

const jamBreakBeltSpeedMps: Subject = {
  title: 'The belt speed above which a jam breaks teeth or loop.',
  state: 'the loop held',
  source: energySource,
  assumptions: stopAssumptions,
  missing: firstOf(missingStop, unbreakable),
  write: (d) => {
    d.figure('F_b', 'jamBreakForceN')
    motorPull(d)
    const told = ['speed', 'belt speed above which a jam breaks it'] as const
    const number = slippingAtBreak(d)
    if (d.checked.figures.jamBreakBeltSpeedMps === 0) {
      d.step(
        'v_j',
        told,
        '0 * max(F_b, P_m)',
        'the pull P_m alone, with what it holds, reaches F_b: a jam at any speed does',
      )
      return
    }
    slackening(d)
    const pull = number === 0 ? 'P_m' : slipPull(d, number)
    jamMass(d, 'mu', d.checked.machine.stages.length)
    if (number > 0) jamMass(d, 'mu_b', number)
    d.step('m_b', ['mass', 'what runs on'], number === 0 ? 'mu' : 'mu - mu_b')
    const over = `(F_b - ${pull})`
    const stretch = `${over}^2 / kappa_1 + delta_s * max(0, ${over}^2 - max(0, F_s - ${pull})^2)`
    d.step('w_b', ['energy', 'twice the energy that the stretch up to F_b takes up'], stretch)
    d.step('L_m', ['force', 'pull that is held already'], `min(${pull}, P_m)`)
    d.step('w_h', ['energy', 'twice the energy that this holds'], heldTerm('L_m'))
    d.step('v_j', told, 'sqrt((w_b - w_h) / m_b)')
  },
}

function withoutStages({ machine }: Evaluated): Missing | null {
  return machine.stages.length === 0 ? { why: 'there is no reduction that could hold a limiter.' } : null
}

const limiterHoldsNm: Subject = {
  title: 'The slip torque on the sprocket’s shaft that holds teeth and loop in a jam at any speed.',
  state: 'the loop held',
  source: energySource,
  assumptions: ['With pretension this is at most the exact setting: the safe side.'],
  missing: firstOf(missingStop, withoutStages),
  write: (d) => {
    d.figure('F_b', 'jamBreakForceN')
    motorPull(d)
    loopScale(d)
    d.step('T_h', ['torque', 'slip torque that holds'], 'max(F_b - P_m, F_b / 2) * r * N_t / M')
  },
}

export const jamWorkings = {
  jamStiffnessNPerM,
  jamMassKg,
  jamForceN,
  jamFreeForceN,
  jamBreakForceN,
  jamBreakBeltSpeedMps,
  limiterHoldsNm,
} satisfies Record<string, Subject>
