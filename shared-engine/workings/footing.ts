import { type Footing } from '../ground/footing.ts'
import type { Draft } from './draft.ts'

// Groups of steps about what the ground takes and gives.

export const soilBooks =
  'Bekker’s sinkage and compaction, Janosi and Hanamoto’s shear: Wong, Theory of Ground Vehicles'
export const coefficientPractice = 'common practice, no source: two coefficients, best from a pull test'

const compactionAlone =
  'Compaction under an even pressure is a lower bound: peaks under few wheels, bulldozing and the track’s own drag add to it.'

/** On the slope as entered, or on the level. */
export type Lie = 'slope' | 'level'

export const footingOf = (d: Draft, lie: Lie): Footing =>
  lie === 'slope' ? d.checked.evaluation.footing : d.checked.evaluation.level

/** `m`: ready to run and loaded. */
export function mass(d: Draft): number {
  d.entry('m_0', 'vehicle.massKg')
  d.entry('m_p', 'vehicle.loadKg')
  return d.step('m', ['mass', 'mass with its load'], 'm_0 + m_p')
}

/** `h` and `x`: centre of mass of machine and load, above ground and ahead of the patch’s rear edge. */
export function centreOfMass(d: Draft): void {
  const places = [
    ['h', 'cgHeightMm', 'loadCgHeightMm', 'height of the centre of mass'],
    ['x', 'cgAheadMm', 'loadCgAheadMm', 'centre of mass ahead of the patch’s rear edge'],
  ] as const
  const { load } = d.checked.machine.vehicle
  for (const [symbol, own, loads, words] of places) {
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

/** `p_g` and `z_s`: pressure under the tracks and how deep they sink. */
export function sinkage(d: Draft, lie: Lie): void {
  const { ground } = d.checked.machine
  if (ground.model !== 'soil') return
  trackWeight(d, lie)
  patch(d)
  d.step('p_g', ['pressure', 'pressure under the tracks'], 'W_t / (N_t * L * B)')
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
  d.source(soilBooks)
  trackWeight(d, lie)
  patch(d)
  d.entry('c_s', 'ground.soil.cohesionKpa')
  d.entry('phi', 'ground.soil.frictionDegrees')
  d.entry('K', 'ground.soil.shearModulusMm')
  const told = ['force', 'shear strength under the tracks'] as const
  const expression = 'N_t * L * B * c_s + W_t * tan(phi)'
  d.step('S_s', told, expression)
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
    const words = 'at full slip'
    d.step('F_max', told, 'S_s * (1 - (1 - exp(-L / K)) * K / L)', words)
    return
  }
  d.source(coefficientPractice)
  trackWeight(d, lie)
  d.entry('mu', 'ground.gripCoefficient')
  d.step('F_max', told, 'mu * W_t')
}
