import type { Draft } from './draft.ts'
import { materialRow } from './material.ts'

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

/** `k_r`, `S_l`, `p`: stiffness of one row of teeth, and of the loop. */
export function rowStiffness(d: Draft): void {
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
}

/** `kappa` and `xi`: stiffness of tooth against loop. */
export function relativeStiffness(d: Draft): void {
  rowStiffness(d)
  d.step('kappa', ['none', 'a row’s stiffness over the loop’s between rows'], 'k_r * p / S_l')
  d.step('xi', ['none', 'how fast the load dies away from row to row'], '2 * asinh(sqrt(kappa) / 2)')
}
