import type { SoilGround } from '../machine/parts.ts'
import type { Draft } from './draft.ts'

// Groups of steps about what the ground takes and gives.

export const soilBooks =
  'Bekker’s sinkage and compaction, Janosi and Hanamoto’s shear: Wong, Theory of Ground Vehicles'
const snowReport = 'strength of snow: CRREL Report 90-9, from memory'
export const coefficientPractice = 'common practice, no source: two coefficients, best from a pull test'

const compactionAlone =
  'Compaction under an even pressure is a lower bound: peaks under few wheels, bulldozing and the track’s own drag add to it.'

/** On the slope as entered, or on the level. */
type Lie = 'slope' | 'level'

/** `m`: ready to run and loaded. */
export function mass(d: Draft): number {
  d.entry('m_0', 'vehicle.massKg')
  d.entry('m_p', 'vehicle.loadKg')
  return d.step('m', ['mass', 'mass with its load'], 'm_0 + m_p')
}

/**
 * `h` and `x`: centre of mass of machine and load, above ground and ahead of the patch’s rear edge.
 *
 * @param height its symbol, another one where `h` is the height of something else
 */
export function centreOfMass(
  d: Draft,
  wanted: readonly ('height' | 'ahead')[] = ['height', 'ahead'],
  height = 'h',
): void {
  const places = [
    ['height', height, 'cgHeightMm', 'loadCgHeightMm', 'height of the centre of mass'],
    ['ahead', 'x', 'cgAheadMm', 'loadCgAheadMm', 'centre of mass ahead of the patch’s rear edge'],
  ] as const
  const { load } = d.checked.machine.vehicle
  for (const [place, symbol, own, loads, words] of places) {
    if (!wanted.includes(place)) continue
    if (load === 0 || d.checked.build.vehicle[loads] === undefined) {
      d.entry(symbol, `vehicle.${own}`)
      continue
    }
    mass(d)
    d.entry(`${symbol}_v`, `vehicle.${own}`)
    d.entry(`${symbol}_l`, `vehicle.${loads}`)
    d.step(symbol, ['length', words], `(m_0 * ${symbol}_v + m_p * ${symbol}_l) / m`)
  }
}

/** `theta`: the slope’s angle. */
export function slopeAngle(d: Draft): void {
  d.entry('j', 'ground.gradePercent')
  d.step('theta', ['angle', 'angle of the slope'], 'atan(j)')
}

/** `W`: weight across the ground. */
function weight(d: Draft, lie: Lie): void {
  mass(d)
  d.constant('g', 'gravity')
  if (lie === 'slope') slopeAngle(d)
  const expression = lie === 'slope' ? 'm * g * cos(theta)' : 'm * g'
  d.step('W', ['force', 'weight across the ground'], expression)
}

/** `W_t`: weight on the tracks. */
export function trackWeight(d: Draft, lie: Lie): void {
  weight(d, lie)
  d.entry('q_t', 'vehicle.onTrackPercent')
  d.step('W_t', ['force', 'weight on the tracks'], 'W * q_t')
}

/** `p_g`: pressure under the tracks. */
export function groundPressure(d: Draft, lie: Lie): void {
  trackWeight(d, lie)
  patch(d)
  d.step('p_g', ['pressure', 'pressure under the tracks'], 'W_t / (N_t * L * B)')
}

/** `p_g` and `z_s`: pressure under the tracks and how deep they sink. */
export function sinkage(d: Draft, lie: Lie): void {
  const { ground } = d.checked.machine
  if (ground.model !== 'soil') return
  groundPressure(d, lie)
  d.entry('k_c', 'ground.soil.kc')
  d.entry('k_phi', 'ground.soil.kphi')
  const told = ['soilFrictionalModulus', 'modulus of sinkage of this patch'] as const
  d.step('k_s', told, 'k_c / min(L, B) + k_phi')
  d.entry('n', 'ground.soil.n')
  d.step('z_s', ['length', 'sinkage'], '(p_g / k_s)^(1 / n)')
}

function patch(d: Draft): void {
  d.entry('N_t', 'track.count')
  d.entry('L', 'vehicle.contactLengthMm')
  d.entry('B', 'vehicle.contactWidthMm')
}

/** `R_g`: rolling or compaction, and skis. */
export function groundResistance(d: Draft, lie: Lie): void {
  const { ground } = d.checked.machine
  const told = ['force', 'resistance of the ground'] as const
  trackWeight(d, lie)
  if (ground.model === 'soil') {
    d.source(soilBooks)
    d.assume(compactionAlone)
    sinkage(d, lie)
  } else {
    d.source(coefficientPractice)
    d.entry('c_rr', 'ground.rollingCoefficient')
  }
  d.entry('mu_s', 'ground.skiFriction')
  const skis = 'mu_s * (W - W_t)'
  if (ground.model === 'soil') d.step('R_g', told, `N_t * B * p_g * z_s / (n + 1) + ${skis}`)
  else d.step('R_g', told, `c_rr * W_t + ${skis}`)
}

/** `R_l`: what holds the machine back at rest, tow included. */
export function standingResistance(d: Draft, lie: Lie, symbol: string): void {
  groundResistance(d, lie)
  d.entry('F_tow', 'vehicle.towForceN')
  const told = [
    'force',
    lie === 'slope' ? 'resistance at rest' : 'resistance on the level, air left out',
  ] as const
  const expression = lie === 'slope' ? 'R_g + m * g * sin(theta) + F_tow' : 'R_g + F_tow'
  d.step(symbol, told, expression)
}

/** `S_s`: thrust that the soil would give at endless slip; `K` and `L` with it. */
export function shearStrength(d: Draft, lie: Lie): void {
  const { ground } = d.checked.machine
  if (ground.model !== 'soil') return
  ownStrength(d, lie, ground)
  const told = ['force', 'shear strength under the tracks'] as const
  if (lie === 'level' || !transfers(d)) {
    d.step('S_s', told, 'S_0 * f_s')
    return
  }
  transferredWeight(d)
  d.step('S_s', told, '(S_0 + Delta * tan(phi)) * f_s', 'with the weight that thrust moves to the tracks')
}

/** `S_0` and `f_s`: strength under the weight that stands on the tracks, and what snow leaves of it. */
function ownStrength(d: Draft, lie: Lie, soil: SoilGround): void {
  d.source(soilBooks)
  groundPressure(d, lie)
  d.entry('c_s', 'ground.soil.cohesionKpa')
  d.entry('phi', 'ground.soil.frictionDegrees')
  d.entry('K', 'ground.soil.shearModulusMm')
  d.assume('Cohesion bears half of the weight at most.')
  d.step('c_u', ['pressure', 'cohesion that this pressure lets one count on'], 'min(c_s, p_g / 2)')
  const told = ['force', 'shear strength under the weight on the tracks'] as const
  d.step('S_0', told, 'N_t * L * B * c_u + W_t * tan(phi)')
  if (!soil.snow) {
    d.given('f_s', ['none', 'what is counted of it'], 1)
    return
  }
  d.source(snowReport)
  d.assume('Snow brings cohesion and friction down alike.')
  d.step('S_n', ['force', 'most that snow bears at that pressure'], 'N_t * L * B * 851 * (p_g / 1000)^0.823')
  d.step('f_s', ['none', 'what snow leaves of the strength'], 'min(1, S_n / S_0)')
}

/** `s_1`: share of the shear strength that full slip raises. */
function fullSlipShare(d: Draft): void {
  d.step('s_1', ['none', 'share of the strength at full slip'], '1 - (1 - exp(-L / K)) * K / L')
}

/** Whether thrust moves weight from the skis to the tracks. */
function transfers({ checked }: Draft): boolean {
  const { skiDistance, centreHeight, centreAhead, onTrackShare } = checked.machine.vehicle
  return skiDistance !== null && centreHeight !== null && centreAhead !== null && onTrackShare < 1
}

/** `Delta`: weight that thrust moves from the skis to the tracks, on the slope as entered. */
export function transferredWeight(d: Draft): void {
  const { ground } = d.checked.machine
  if (ground.model === 'soil') {
    ownStrength(d, 'slope', ground)
    fullSlipShare(d)
    d.step('F_0', ['force', 'grip before any weight moves'], 'S_0 * f_s * s_1')
    d.step('f_w', ['none', 'grip for one more newton on the tracks'], 'f_s * tan(phi) * s_1')
  } else {
    d.source(coefficientPractice)
    trackWeight(d, 'slope')
    d.entry('f_w', 'ground.gripCoefficient')
    d.step('F_0', ['force', 'grip before any weight moves'], 'f_w * W_t')
  }
  groundResistance(d, 'slope')
  movedWeight(d)
}

/** `Delta` from `F_0`, `f_w` and `R_g`. */
function movedWeight(d: Draft): void {
  d.source('moments about the middle of the patch')
  d.assume('Sinkage and resistance stay as they are where weight moves.')
  // What these rest on has a shaft's `d_s` and a tooth's `h` of its own.
  centreOfMass(d, ['height'], 'h_g')
  d.entry('d_k', 'vehicle.skiDistanceMm')
  d.entry('F_tow', 'vehicle.towForceN')
  d.entry('h_t', 'vehicle.towHeightMm')
  d.step('M_p', ['torque', 'moment that lifts the skis'], 'h_g * (F_0 - R_g) + F_tow * (h_t - h_g)')
  const told = ['force', 'weight that thrust moves to the tracks'] as const
  const moves = d.of('M_p') > 0
  const arm = ['length', 'arm, shortened by the grip that weight brings'] as const
  d.step('d_1', arm, 'd_k - h_g * f_w', moves ? undefined : 'not asked: nothing lifts the skis')
  if (!moves) {
    d.step('Delta', told, 'max(0, M_p)', 'nothing lifts the skis')
    return
  }
  const words = d.of('d_1') > 0 ? 'at most what stands on the skis' : 'all of it: each newton moves another'
  d.step('Delta', told, 'min(M_p / max(0, d_1), W - W_t)', words)
}

/** Below it a subtraction of near equals would eat the digits of the formula: its series says the same. */
const smallSlip = 1e-3

/** Thrust of the soil at a slip `x`, in shear displacements; `x` and `S_s` are known already. */
export function soilThrustAt(d: Draft, symbol: string, words?: string): void {
  const told = ['force', 'thrust of the soil at that slip'] as const
  if (d.of('x') >= smallSlip) {
    d.step(symbol, told, 'S_s * (1 - (1 - exp(-x)) / x)', words)
    return
  }
  const series = 'S_s (1 − (1 − exp(−x)) / x) as a series: at so small an x that form loses its digits'
  d.step(
    symbol,
    told,
    'S_s * (x / 2 - x^2 / 6 + x^3 / 24)',
    words === undefined ? series : `${words}; ${series}`,
  )
}

/** `F_max`: the most that the ground passes on. */
export function gripThrust(d: Draft, lie: Lie): void {
  const told = ['force', 'most thrust that the ground takes'] as const
  if (d.checked.machine.ground.model === 'soil') {
    shearStrength(d, lie)
    fullSlipShare(d)
    d.step('F_max', told, 'S_s * s_1', 'at full slip')
    return
  }
  if (lie === 'slope' && transfers(d)) {
    transferredWeight(d)
    d.step('F_max', told, 'F_0 + f_w * Delta', 'with the weight that thrust moves to the tracks')
    return
  }
  d.source(coefficientPractice)
  trackWeight(d, lie)
  d.entry('mu', 'ground.gripCoefficient')
  d.step('F_max', told, 'mu * W_t')
}

/** `F_let`: the most thrust that the ground can let through, for what has to bear it: nothing of a soil held back. */
export function mostGrip(d: Draft): void {
  const told = ['force', 'most thrust that the ground can let through'] as const
  if (d.checked.machine.ground.model === 'coefficient') {
    d.figure('F_max', 'gripThrustN')
    d.step('F_let', told, 'F_max')
    return
  }
  d.source(soilBooks)
  trackWeight(d, 'slope')
  patch(d)
  d.entry('c_s', 'ground.soil.cohesionKpa')
  d.entry('phi', 'ground.soil.frictionDegrees')
  d.entry('K', 'ground.soil.shearModulusMm')
  fullSlipShare(d)
  const words = 'whole cohesion, snow of any strength: more grip is worse here'
  d.step(
    'F_0',
    ['force', 'grip before any weight moves'],
    '(N_t * L * B * c_s + W_t * tan(phi)) * s_1',
    words,
  )
  if (!transfers(d)) {
    d.step('F_let', told, 'F_0')
    return
  }
  d.step('f_w', ['none', 'grip for one more newton on the tracks'], 'tan(phi) * s_1')
  groundResistance(d, 'slope')
  movedWeight(d)
  d.step('F_let', told, 'F_0 + f_w * Delta')
}
