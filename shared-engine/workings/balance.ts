import type { Evaluated } from '../figures/evaluated.ts'
import type { Draft } from './draft.ts'
import {
  centreOfMass,
  coefficientPractice,
  groundPressure,
  mass,
  slopeAngle,
  soilBooks,
  transferredWeight,
} from './footing.ts'
import { sprocketRadius } from './circuit.ts'
import { pieceAt, startThrust, thrustSlope } from './motion.ts'
import { strongestPush } from './push.ts'
import { firstOf, inCase, needing, type Missing, type Subject } from './subject.ts'

// Where weight goes, what lifts the front, and where the machine falls over.

const needingCentre = needing('vehicle.cgHeightMm', 'vehicle.cgAheadMm')
const moments = 'moments about the rear edge of the patch'

/** `W`: weight across the ground, all of it on the tracks once the front is up. */
function liftedWeight(d: Draft): void {
  mass(d)
  d.constant('g', 'gravity')
  slopeAngle(d)
  d.step('W', ['force', 'weight across the ground'], 'm * g * cos(theta)')
}

/** The patch of a loop on soil. */
function patch(d: Draft): void {
  d.source(soilBooks)
  d.entry('N_t', 'track.count')
  d.entry('L', 'vehicle.contactLengthMm')
  d.entry('B', 'vehicle.contactWidthMm')
}

/** `F_g`: grip with all weight on the tracks, at the ground’s full strength. */
export function liftedGrip(d: Draft): void {
  liftedWeight(d)
  const told = ['force', 'most thrust with all weight on the tracks'] as const
  if (d.checked.machine.ground.model === 'coefficient') {
    d.source(coefficientPractice)
    d.entry('mu', 'ground.gripCoefficient')
    d.step('F_g', told, 'mu * W')
    return
  }
  patch(d)
  d.entry('c_s', 'ground.soil.cohesionKpa')
  d.entry('phi', 'ground.soil.frictionDegrees')
  d.entry('K', 'ground.soil.shearModulusMm')
  const whole = 'whole cohesion, snow of any strength: more grip is worse here'
  const expression = '(N_t * L * B * c_s + W * tan(phi)) * (1 - (1 - exp(-L / K)) * K / L)'
  d.step('F_g', told, expression, whole)
}

/** `R_up`: resistance of the ground with all weight on the tracks. */
export function liftedResistance(d: Draft): void {
  liftedWeight(d)
  const told = ['force', 'resistance of the ground with all weight on the tracks'] as const
  if (d.checked.machine.ground.model === 'coefficient') {
    d.source(coefficientPractice)
    d.entry('c_rr', 'ground.rollingCoefficient')
    d.step('R_up', told, 'c_rr * W')
    return
  }
  patch(d)
  d.entry('k_c', 'ground.soil.kc')
  d.entry('k_phi', 'ground.soil.kphi')
  d.entry('n_s', 'ground.soil.n')
  d.step('p_up', ['pressure', 'pressure with all weight on the tracks'], 'W / (N_t * L * B)')
  const modulus = ['soilFrictionalModulus', 'modulus of sinkage of this patch'] as const
  d.step('k_s', modulus, 'k_c / min(L, B) + k_phi')
  d.step('z_up', ['length', 'sinkage with all weight on the tracks'], '(p_up / k_s)^(1 / n_s)')
  d.step('R_up', told, 'N_t * B * p_up * z_up / (n_s + 1)')
}

/** Why nothing lifts the front while the loops spin up. */
export function loopsGrip({ evaluation }: Evaluated): Missing | null {
  return evaluation.strongestPush > evaluation.lifted.gripThrust
    ? null
    : { why: 'the tracks grip with the front up: the loops do not spin up on the spot.' }
}

/** `a_b` and `m_s`: how fast the belt spins up while the front is up. */
function beltAcceleration(d: Draft): void {
  liftedGrip(d)
  strongestPush(d)
  d.figure('m_e', 'equivalentMassKg')
  mass(d)
  d.step('m_s', ['mass', 'what turns with the belt, as mass on the belt'], 'm_e - m')
  d.step('a_b', ['acceleration', 'acceleration of the belt'], '(F_m - F_g) / m_s')
}

/** `M_u`: moment that turns the machine over backwards while its loops spin up. */
export function spinUpLift(d: Draft): void {
  beltAcceleration(d)
  liftedResistance(d)
  d.entry('F_tow', 'vehicle.towForceN')
  const rest = ['force', 'resistance at rest with the front up'] as const
  d.step('R_st', rest, 'R_up + m * g * sin(theta) + F_tow')
  centreOfMass(d, ['height'])
  d.entry('h_t', 'vehicle.towHeightMm')
  d.entry('n_t', 'track.count')
  d.entry('m_b', 'track.massGPerM')
  if (d.checked.machine.track.enclosedArea !== null) d.entry('A', 'track.enclosedAreaCm2')
  else {
    sprocketRadius(d)
    d.entry('p', 'track.pitchMm')
    d.entry('z_l', 'track.loopPitches')
    d.step('A', ['area', 'area inside a flat loop'], 'max(0, r * z_l * p - pi * r^2)')
  }
  d.source('angular momentum of a closed loop')
  d.assume('The rotors’ own angular momentum is left out.')
  const expression = 'h * max(0, F_g - R_st) + h * m * g * sin(theta) + F_tow * h_t + 2 * n_t * m_b * A * a_b'
  d.step('M_u', ['torque', 'nose-up moment while the loops spin up'], expression)
}

/** `v_s`: belt speed at which the motors push with the grip at full throttle, 0 where they never do more. */
function spinningBelt(d: Draft): void {
  const { spinUpLift: spinUp } = d.checked.evaluation
  const piece = pieceAt(d, spinUp.seconds * spinUp.acceleration)
  startThrust(d, piece)
  thrustSlope(d, piece)
  const words = 'where full throttle pushes with the grip; 0 where part throttle alone pushes more'
  d.step('v_s', ['speed', 'belt speed while spinning'], 'max(0, (F_st - F_g) / s_b)', words)
}

const cgHeightM: Subject = {
  title: 'How high above the ground the centre of mass is, load included.',
  state: 'as built',
  source: 'statics',
  missing: needing('vehicle.cgHeightMm'),
  write: (d) => {
    centreOfMass(d, ['height'])
    d.step('h_c', ['length', 'height of the centre of mass'], 'h')
  },
}

const cgAheadM: Subject = {
  title: 'How far ahead of the patch’s rear edge the centre of mass is, load included.',
  state: 'as built',
  source: 'statics',
  missing: needing('vehicle.cgAheadMm'),
  write: (d) => {
    centreOfMass(d, ['ahead'])
    d.step('x_c', ['length', 'centre of mass ahead of the rear edge'], 'x')
  },
}

const weightTransferN: Subject = {
  title: 'The weight that the strongest thrust moves from the skis to the tracks.',
  state: inCase('rest'),
  source: 'statics',
  write: (d) => {
    const { skiDistance, centreHeight, centreAhead, onTrackShare } = d.checked.machine.vehicle
    const moves = skiDistance !== null && centreHeight !== null && centreAhead !== null && onTrackShare < 1
    const words = 'no skis, or neither their distance nor the centre of mass is entered'
    if (moves) transferredWeight(d)
    else d.found('Delta', ['force', 'weight that thrust moves to the tracks'], words, 0)
  },
}

const spinUpLiftNm: Subject = {
  title: 'The moment that lifts the front while the loops spin up on the spot.',
  state: inCase('rest'),
  source: moments,
  missing: firstOf(needingCentre, loopsGrip),
  write: spinUpLift,
}

const spinUpLiftSeconds: Subject = {
  title: 'How long that moment lasts.',
  state: inCase('rest'),
  source: 'momentum of what turns with the belt',
  missing: firstOf(needingCentre, loopsGrip),
  write: (d) => {
    beltAcceleration(d)
    spinningBelt(d)
    d.step('t_s', ['time', 'seconds until the belt has that speed'], 'v_s / a_b')
  },
}

/** `beta`: slope on which it falls over backwards, in degrees. */
function backAngle(d: Draft): void {
  centreOfMass(d)
  d.step('beta', ['degrees', 'slope on which it falls over backwards'], 'atan(x / h) * 180 / pi')
}

/** `gamma`: side slope on which it falls over, in degrees. */
function sideAngle(d: Draft): void {
  centreOfMass(d, ['height'])
  d.entry('B_g', 'vehicle.gaugeMm')
  const width = d.checked.machine.vehicle.contactWidth !== null
  if (width) d.entry('B', 'vehicle.contactWidthMm')
  const expression = width ? 'atan((B_g + B) / (2 * h)) * 180 / pi' : 'atan(B_g / (2 * h)) * 180 / pi'
  d.step('gamma', ['degrees', 'side slope on which it falls over'], expression)
}

const tipBackDegrees: Subject = {
  title: 'The slope on which the standing machine falls over backwards.',
  state: 'standing',
  source: 'statics',
  missing: needingCentre,
  write: backAngle,
}

const oneLoop = ({ machine }: Evaluated): Missing | null =>
  machine.track.count > 1 ? null : { why: 'it needs two or more loops to stand on.' }

const tipSideDegrees: Subject = {
  title: 'The side slope on which the standing machine falls over.',
  state: 'standing',
  source: 'statics',
  missing: firstOf(oneLoop, needing('vehicle.gaugeMm', 'vehicle.cgHeightMm', 'vehicle.cgAheadMm')),
  write: sideAngle,
}

const soilPressurePa: Subject = {
  title: 'The pressure of the tracks on the soil.',
  state: 'standing on the slope',
  source: 'statics: weight on the tracks over their patches',
  missing: ({ machine }) =>
    machine.ground.model === 'soil'
      ? null
      : { why: 'it needs the ground described by its soil or snow (ground.model).' },
  write: (d) => groundPressure(d, 'slope'),
}

export const balanceWorkings = {
  cgHeightM,
  cgAheadM,
  weightTransferN,
  spinUpLiftNm,
  spinUpLiftSeconds,
  tipBackDegrees,
  tipSideDegrees,
  soilPressurePa,
} satisfies Record<string, Subject>
