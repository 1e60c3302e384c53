import type { Evaluated } from '../figures/evaluated.ts'
import { byTension, byToothForce, casesTold, loadOf, servicePull, worstCase } from './loads.ts'
import { sprocketRadius } from './circuit.ts'
import { largestRow, loadHeight, slackTension, staticTension } from './sharing.ts'
import { inCase, needing, type Missing, type Subject } from './subject.ts'

const worstTooth = (checked: Evaluated) => inCase(worstCase(checked, byToothForce))

const teethEngaged: Subject = {
  title: 'How many of the sprocket’s teeth are in the loop at once.',
  state: 'as built, at any load',
  source: 'geometry: whole teeth within the arc of engagement, at least one',
  write: (d) => {
    d.entry('z', 'track.sprocketTeeth')
    d.entry('beta_w', 'track.wrapDegrees')
    const expression = 'max(1, floor(z * beta_w / (2 * pi) + 1e-9))'
    const words = 'rounded down; 1e-9 keeps a whole number that rounding has cut short'
    d.step('z_e', ['count', 'teeth engaged'], expression, words)
  },
}

function noPull({ evaluation }: Evaluated): Missing | null {
  return Number.isNaN(evaluation.toothShare)
    ? { why: 'the motors pull nothing in a jam, so there is nothing to share.' }
    : null
}

const toothSharePercent: Subject = {
  title: 'How much of a loop’s pull its most loaded row of teeth carries in a jam.',
  state: inCase('launch'),
  source: 'statics of the engaged rows',
  missing: noPull,
  write: (d) => {
    largestRow(d, 'launch')
    d.step('q_f', ['percent', 'share of the most loaded row'], '100 * f / F_K')
  },
}

const toothForceN: Subject = {
  title: 'The force on the most loaded drive tooth, in the worst of the load cases.',
  state: worstTooth,
  source: 'statics of the engaged rows',
  write: (d) => {
    const name = worstCase(d.checked, byToothForce)
    largestRow(d, name)
    d.entry('n_a', 'track.teethAcross')
    const words = casesTold(d.checked, byToothForce)
    const told = ['force', 'force on the most loaded tooth'] as const
    d.step('F_t', told, 'f / n_a', words)
  },
}

const needsTooth = needing('track.tooth')

const toothShearPa: Subject = {
  title: 'The mean shear stress at the root of the most loaded tooth.',
  state: worstTooth,
  source: 'mean stress over the root section, any strength-of-materials text',
  missing: needsTooth,
  write: (d) => {
    d.figure('F_t', 'toothForceN')
    d.entry('w', 'track.tooth.widthMm')
    d.entry('t', 'track.tooth.rootMm')
    d.step('tau', ['stress', 'shear stress'], 'F_t / (w * t)')
  },
}

const toothBendingPa: Subject = {
  title: 'The bending stress at the root of the most loaded tooth.',
  state: worstTooth,
  source: 'cantilever of rectangular section, any strength-of-materials text',
  missing: needsTooth,
  write: (d) => {
    d.figure('F_t', 'toothForceN')
    loadHeight(d)
    d.entry('w', 'track.tooth.widthMm')
    d.entry('t', 'track.tooth.rootMm')
    d.step('sigma_b', ['stress', 'bending stress'], '6 * F_t * h / (w * t^2)')
  },
}

const toothBearingPa: Subject = {
  title: 'The pressure on the flank of the most loaded tooth.',
  state: worstTooth,
  source: 'assumption',
  assumptions: [
    'The pressed height is twice the distance from the load to the tip, at most the whole tooth.',
  ],
  missing: needsTooth,
  write: (d) => {
    d.figure('F_t', 'toothForceN')
    d.entry('H', 'track.tooth.heightMm')
    loadHeight(d)
    d.entry('w', 'track.tooth.widthMm')
    d.step('h_c', ['length', 'pressed height of the flank'], 'min(H, 2 * (H - h))')
    d.step('sigma_c', ['stress', 'pressure on the flank'], 'F_t / (w * h_c)')
  },
}

const loopTensionN: Subject = {
  title: 'The tension of one loop where it is tightest, in the worst of the load cases.',
  state: (checked) => inCase(worstCase(checked, byTension)),
  source: 'statics; centrifugal tension of a running belt, any machine-elements text',
  write: (d) => {
    const name = worstCase(d.checked, byTension)
    servicePull(d, name)
    const { beltSpeed } = loadOf(d.checked, name)
    slackTension(d, beltSpeed)
    const words = casesTold(d.checked, byTension)
    d.step('N', ['force', 'loop tension'], 'F_K + N_s', words)
  },
}

const needsBreaking = needing('track.breakingTensionN')

const burstBeltSpeedMps: Subject = {
  title: 'The belt speed at which the loop’s own mass tears it.',
  state: 'the loop running free, without pull',
  source: 'centrifugal tension of a running belt, any machine-elements text',
  missing: needsBreaking,
  write: (d) => {
    d.entry('N_B', 'track.breakingTensionN')
    staticTension(d)
    d.entry('m_b', 'track.massGPerM')
    const expression = 'sqrt(max(0, N_B - N_0) / m_b)'
    d.step('v_B', ['speed', 'belt speed that bursts the loop'], expression)
  },
}

const burstMotorRpm: Subject = {
  title: 'The motor speed at which the loop’s own mass tears it.',
  state: 'the loop running free, without pull',
  source: 'geometry: belt speed over the sprocket’s radius, times the ratio',
  missing: needsBreaking,
  write: (d) => {
    d.figure('v_B', 'burstBeltSpeedMps')
    d.figure('G', 'ratio')
    sprocketRadius(d)
    d.step('n', ['rpm', 'motor speed'], 'v_B * G / r * 60 / (2 * pi)')
  },
}

export const trackWorkings = {
  teethEngaged,
  toothSharePercent,
  toothForceN,
  toothShearPa,
  toothBendingPa,
  toothBearingPa,
  loopTensionN,
  burstBeltSpeedMps,
  burstMotorRpm,
} satisfies Record<string, Subject>
