import type { TrackCase } from '../cases/case.ts'
import { setLoad, Sharing } from '../track/sharing.ts'
import type { Draft } from './draft.ts'
import { slackTension } from './hold.ts'
import { loadOf } from './loads.ts'
import { loopPull } from './loop-pull.ts'
import { relativeStiffness } from './stiffness.ts'

const gerbert =
  'after Gerbert, Jönsson, Persson and Stensson, Load Distribution in Timing Belts, ASME J. Mech. Des. 100 (1978)'

/** `N_s` and `y_m`: tension behind the last row, and the same with what the pitch error adds. */
function slackSide(d: Draft, name: TrackCase): void {
  slackTension(d, name)
  d.figure('e_p', 'pitchErrorM')
  const told = ['force', 'slack tension and the pitch error’s share'] as const
  d.step('y_m', told, 'N_s + e_p * S_l / p')
}

/** Sharing of a case, filled again: `xi`, `y_m` and `N_r`, the rows that carry, are written. */
export function stiffnessSharing(d: Draft, name: TrackCase): Sharing {
  const { track } = d.checked.machine
  const sharing = new Sharing()
  const { pull, slack } = loadOf(d.checked, name)
  loopPull(d, name)
  if (track.springs !== null) setLoad(sharing, track.springs, pull, slack)
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
    loopPull(d, name)
    d.entry('q', 'track.sharePercent')
    d.figure('z_e', 'teethEngaged')
    d.assume(
      'How the rows share is a guess (track.sharePercent): at 100 % all alike, at 0 % one row carries all.',
    )
    return d.step('f', told, 'F_K / (1 + q * (z_e - 1))')
  }
  stiffnessSharing(d, name)
  const ends = (level: string) =>
    `sqrt(kappa) * exp(-xi / 2) * (F_K * (1 + exp(-(2 * N_r - 1) * xi)) + ${level} * (1 - exp(-N_r * xi)) * (1 - exp(-(N_r - 1) * xi))) / (1 - exp(-2 * N_r * xi))`
  d.step('f_1', ['force', 'force of the first row, at the tight end'], ends('y_m'))
  d.step('f_m', ['force', 'force of the last row that carries'], ends('(-y_m - F_K)'))
  return d.step('f', told, 'max(f_1, f_m)')
}

/** Whether sharing by stiffness says anything: it is known, and there is a pull to share. */
export function isShared(d: Draft, name: TrackCase): boolean {
  return d.checked.machine.track.springs !== null && loadOf(d.checked, name).pull > 0
}
