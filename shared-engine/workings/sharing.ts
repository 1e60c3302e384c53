import type { TrackCase } from '../cases/case.ts'
import { setLoad, Sharing } from '../track/sharing.ts'
import { centrifugalTension } from '../track/tension.ts'
import type { Draft } from './draft.ts'
import { materialRow } from './material.ts'
import { loadOf, servicePull } from './loads.ts'

export const gerbert =
  'after Gerbert, Jönsson, Persson and Stensson, Load Distribution in Timing Belts, ASME J. Mech. Des. 100 (1978)'

const tooth = 'track.tooth'

/** `h`: where the flank is pressed, above the root. */
export function loadHeight(d: Draft): void {
  if (d.checked.build.track.tooth?.loadHeightMm !== undefined) {
    d.entry('h', `${tooth}.loadHeightMm`)
    return
  }
  d.entry('H', `${tooth}.heightMm`)
  const words = 'half of the height where nothing is entered'
  d.step('h', ['length', 'height of the load above the root'], 'H / 2', words)
}

/** `E`: what the tooth’s material gives way by. */
function modulus(d: Draft): void {
  if (d.checked.build.track.tooth?.modulusMpa !== undefined) d.entry('E', `${tooth}.modulusMpa`)
  else {
    const material = d.checked.build.track.tooth?.material ?? 'custom'
    if (material !== 'custom') materialRow(d, 'E', `${tooth}.material`, material, 'modulus')
  }
}

/** `kappa` and `theta`: stiffness of tooth against loop. */
function relativeStiffness(d: Draft): void {
  const { track } = d.checked.machine
  loadHeight(d)
  modulus(d)
  d.entry('w', `${tooth}.widthMm`)
  d.entry('t', `${tooth}.rootMm`)
  d.entry('n_a', 'track.teethAcross')
  const poisson = ['none', 'Poisson’s ratio of the material’s family (handbook value)'] as const
  d.row('nu', `${tooth}.material`, poisson, track.tooth?.poisson ?? NaN)
  const beam = 'n_a * E * w / (4 * (h / t)^3 + 2.4 * (1 + nu) * h / t)'
  d.step('k_r', ['stiffness', 'stiffness of one row of teeth, short cantilevers'], beam)
  d.entry('S_l', 'track.loopStiffnessN')
  d.entry('p', 'track.pitchMm')
  d.step('kappa', ['none', 'a row’s stiffness over the loop’s between rows'], 'k_r * p / S_l')
  d.step('theta', ['none', 'how fast the load dies away from row to row'], '2 * asinh(sqrt(kappa) / 2)')
}

/** `N_s` and `y_m`: tension behind the last row, and the same with what the pitch error adds. */
function slackSide(d: Draft, name: TrackCase): void {
  const { beltSpeed } = loadOf(d.checked, name)
  slackTension(d, beltSpeed)
  d.entry('e_p', 'track.pitchErrorMm')
  const told = ['force', 'slack tension and the pitch error’s share'] as const
  d.step('y_m', told, 'N_s + e_p * S_l / p')
}

/** `N_0`: static tension of the loop as entered, 0 where it is not known. */
export function staticTension(d: Draft): void {
  if (d.checked.machine.track.pretensionGiven) d.entry('N_0', 'track.pretensionN')
  else d.given('N_0', ['force', 'static tension, not entered'], 0)
}

/** `N_s`: tension of the loop behind the sprocket. */
export function slackTension(d: Draft, beltSpeed: number): void {
  staticTension(d)
  const told = ['force', 'tension of the slack side'] as const
  if (beltSpeed === 0) {
    d.step('N_s', told, 'N_0', 'the loop stands')
    return
  }
  d.entry('m_b', 'track.massGPerM')
  d.step('N_s', told, 'N_0 + m_b * v_b^2', 'pretension and the pull of the loop’s own mass')
}

/** Sharing of a case, filled again: `theta`, `y_m` and `N_r`, the rows that carry, are written. */
export function stiffnessSharing(d: Draft, name: TrackCase): Sharing {
  const { track } = d.checked.machine
  const pull = servicePull(d, name)
  const sharing = new Sharing()
  const { beltSpeed } = loadOf(d.checked, name)
  const slack = track.pretension + centrifugalTension(track, beltSpeed)
  if (track.springs !== null) setLoad(sharing, track.springs, track.engagedTeeth, pull, slack)
  d.source(gerbert)
  d.assume('The sprocket is rigid, and friction on the tooth tops is left out.')
  relativeStiffness(d)
  slackSide(d, name)
  d.figure('z_e', 'teethEngaged')
  const solved = 'the most of the z_e engaged rows whose springs are all pressed, not pulled'
  d.found(
    'N_r',
    ['count', 'rows that carry'],
    `${solved}: ${sharing.rows} of ${track.engagedTeeth}`,
    sharing.rows,
  )
  return sharing
}

/** `f`: force of the most loaded row, service factor included. */
export function largestRow(d: Draft, name: TrackCase): number {
  const told = ['force', 'force of the most loaded row'] as const
  if (!isShared(d, name)) {
    servicePull(d, name)
    d.entry('q', 'track.sharePercent')
    d.figure('z_e', 'teethEngaged')
    d.assume(
      'How the rows share is a guess (track.sharePercent): at 100 % all alike, at 0 % one row carries all.',
    )
    return d.step('f', told, 'F_K / (1 + q * (z_e - 1))')
  }
  stiffnessSharing(d, name)
  const ends = (level: string) =>
    `sqrt(kappa) * exp(-theta / 2) * (F_K * (1 + exp(-(2 * N_r - 1) * theta)) + ${level} * (1 - exp(-N_r * theta)) * (1 - exp(-(N_r - 1) * theta))) / (1 - exp(-2 * N_r * theta))`
  d.step('f_1', ['force', 'force of the first row, at the tight end'], ends('y_m'))
  d.step('f_m', ['force', 'force of the last row that carries'], ends('(-y_m - F_K)'))
  return d.step('f', told, 'max(f_1, f_m)')
}

/** Whether sharing by stiffness says anything: it is known, and there is a pull to share. */
export function isShared(d: Draft, name: TrackCase): boolean {
  const { track, service } = d.checked.machine
  return track.springs !== null && service.factor * loadOf(d.checked, name).force > 0
}
