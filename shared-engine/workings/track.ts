import { materialOf } from '../reference/materials.ts'
import type { Evaluated } from '../figures/evaluated.ts'
import type { Draft } from './draft.ts'
import { byTension, byToothForce, casesTold, worstCase } from './loads.ts'
import { sprocketRadius } from './circuit.ts'
import { slackTension } from './hold.ts'
import { standOff, stressOf } from './loop.ts'
import { loopPull } from './loop-pull.ts'
import { largestRow } from './sharing.ts'
import type { Strength } from './strength.ts'
import { firstOf, inCase, needing, type Missing, type Subject } from './subject.ts'

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

const toothStressSubject = (title: string, source: string, strength: Strength): Subject => ({
  title,
  state: worstTooth,
  source,
  missing: needsTooth,
  write: (d) => {
    d.figure('F_t', 'toothForceN')
    stressOf[strength](d)
  },
})

const toothShearPa = toothStressSubject(
  'The mean shear stress at the root of the most loaded tooth.',
  'mean stress over the root section, any strength-of-materials text',
  'shear',
)
const toothBendingPa = toothStressSubject(
  'The bending stress at the root of the most loaded tooth.',
  'cantilever of rectangular section, any strength-of-materials text',
  'tensile',
)
const toothBearingPa = toothStressSubject(
  'The pressure on the flank of the most loaded tooth.',
  'assumption',
  'bearing',
)

const loopTensionN: Subject = {
  title: 'The tension of one loop where it is tightest, in the worst of the load cases.',
  state: (checked) => inCase(worstCase(checked, byTension)),
  source: 'statics; centrifugal tension of a running belt, any machine-elements text',
  write: (d) => {
    const name = worstCase(d.checked, byTension)
    loopPull(d, name)
    slackTension(d, name)
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
    d.entry('m_b', 'track.massGPerM')
    const told = ['speed', 'belt speed that bursts the loop'] as const
    if (d.checked.machine.track.hold.tensioner === 'fixed') {
      d.step('v_B', told, 'sqrt(N_B / m_b)', 'the pretension fades as the ring tightens')
      return
    }
    d.figure('N_0', 'loopPretensionN')
    d.step('v_B', told, 'sqrt(max(0, N_B - N_0) / m_b)')
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

/** `s_t`: what the loop shrinks more than the frame. */
function strain(d: Draft): void {
  const { loopMaterial, frameMaterial } = d.checked.build.track
  const told = ['none', 'what the loop shrinks more than the frame'] as const
  if (loopMaterial === undefined) {
    d.step('s_t', told, '0', 'without the loop’s material (track.loopMaterial) nothing shrinks')
    return
  }
  const expansion = ['none', 'thermal expansion, 1/K (handbook value)'] as const
  d.row('a_l', 'track.loopMaterial', expansion, materialOf(loopMaterial).expansion)
  d.row('a_f', 'track.frameMaterial', expansion, materialOf(frameMaterial).expansion)
  d.entry('T_m', 'track.assemblyTemperatureC')
  d.entry('T_a', 'ground.airTemperatureC')
  d.step('s_t', told, '(a_l - a_f) * (T_m - T_a)')
}

const loopPretensionN: Subject = {
  title: 'The tension of one loop at rest, at the temperature of the air.',
  state: 'at rest',
  source: 'Hooke’s law and thermal expansion',
  write: (d) => {
    const { pretensionN, tensioner, loopStiffnessN } = d.checked.build.track
    const told = ['force', 'tension of the loop at rest'] as const
    if (pretensionN === undefined) {
      d.step('N_0', told, '0', 'where no pretension is entered, it counts as none')
      return
    }
    d.entry('N_A', 'track.pretensionN')
    if (tensioner === 'sprung' || loopStiffnessN === undefined) {
      d.step('N_0', told, 'N_A', 'the tensioner keeps it, or the loop’s stiffness is not known')
      return
    }
    d.entry('S_l', 'track.loopStiffnessN')
    strain(d)
    d.step('N_0', told, 'max(0, N_A + S_l * s_t)')
  },
}

const pitchErrorM: Subject = {
  title: 'The loop’s pitch, slack, less the sprocket’s, at the temperature of the air.',
  state: 'at rest',
  source: 'thermal expansion',
  write: (d) => {
    d.entry('e_0', 'track.pitchErrorMm')
    d.entry('p', 'track.pitchMm')
    strain(d)
    d.step('e_p', ['length', 'the loop’s pitch less the sprocket’s'], 'e_0 - p * s_t')
  },
}

const needsFixed = firstOf(
  ({ machine }: Evaluated) =>
    machine.track.hold.tensioner === 'sprung'
      ? { why: 'a sprung tensioner takes up what the loop grows: it stays on its wheels.' }
      : null,
  needing('track.pretensionN'),
)

const liftOffBeltSpeedMps: Subject = {
  title: 'The belt speed at which a loop running free no longer presses on its wheels.',
  state: 'the loop running free, without pull',
  source: 'centrifugal tension of a running belt, any machine-elements text',
  missing: needsFixed,
  write: (d) => {
    d.figure('N_0', 'loopPretensionN')
    d.entry('m_b', 'track.massGPerM')
    d.step('v_L', ['speed', 'belt speed that lifts the loop off'], 'sqrt(N_0 / m_b)')
  },
}

const liftOffMotorRpm: Subject = {
  title: 'The motor speed at which a loop running free no longer presses on its wheels.',
  state: 'the loop running free, without pull',
  source: 'geometry: belt speed over the sprocket’s radius, times the ratio',
  missing: needsFixed,
  write: (d) => {
    d.figure('v_L', 'liftOffBeltSpeedMps')
    d.figure('G', 'ratio')
    sprocketRadius(d)
    d.step('n', ['rpm', 'motor speed'], 'v_L * G / r * 60 / (2 * pi)')
  },
}

const loopGrowthFreeM: Subject = {
  title: 'How far the loop stands off its wheels, running free at the fastest speed of the unloaded motor.',
  state: inCase('free'),
  source: 'stretch of a turning ring, any strength-of-materials text',
  missing: firstOf(needsFixed, needing('track.loopStiffnessN')),
  write: (d) => {
    standOff(d, 'free')
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
  loopPretensionN,
  pitchErrorM,
  liftOffBeltSpeedMps,
  liftOffMotorRpm,
  loopGrowthFreeM,
} satisfies Record<string, Subject>
