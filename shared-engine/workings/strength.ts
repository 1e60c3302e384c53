import type { TrackCase } from '../cases/case.ts'
import type { RowSprings } from '../geometry/row-springs.ts'
import { rowRoom, setRowForces } from '../track/climb.ts'
import type { Sharing } from '../track/sharing.ts'
import type { Draft } from './draft.ts'
import type { ComparedRow } from './limit.ts'
import { materialRow } from './material.ts'
import { pressing } from './hold.ts'
import { loadOf } from './loads.ts'
import { loopPull } from './loop-pull.ts'
import { isShared, stiffnessSharing } from './sharing.ts'

// What limits of the track compare with, and how its rows climb.

export type Strength = 'shear' | 'tensile' | 'bearing'

/** What lasts, as the table and as an own material's entries name it. */
const work = { shear: 'workShear', tensile: 'workTensile', bearing: 'workBearing' } as const
const workEntry = { shear: 'workShearMpa', tensile: 'workTensileMpa', bearing: 'workBearingMpa' } as const

/** `f_k` and the strength that the working’s knock-down leaves. */
export function allowedStress(d: Draft, strength: Strength, span: 'once' | 'work' = 'once'): void {
  const material = d.checked.build.track.tooth?.material ?? 'custom'
  d.entry('f_k', 'track.knockdownPercent')
  const own = span === 'once' ? `${strength}StrengthMpa` : workEntry[strength]
  if (material === 'custom') d.entry('S_0', `track.tooth.${own}`)
  else materialRow(d, 'S_0', 'track.tooth.material', material, span === 'once' ? strength : work[strength])
  d.step('S_f', ['stress', 'what is left of it after making and gluing'], 'S_0 * f_k')
}

/** `C_j`: how close the worst row is to climbing out. */
export function climbing(d: Draft, row: ComparedRow): void {
  const name = row.case as TrackCase
  const { tooth, springs } = d.checked.machine.track
  const { pressing: pressed } = loadOf(d.checked, name)
  const slope = tooth?.climbSlope ?? 0
  d.entry('beta_f', 'track.tooth.flankDegrees')
  d.entry('mu_f', 'track.tooth.flankFriction')
  const told = ['none', 'push outwards for each newton of pull'] as const
  d.step('s_c', told, 'max(0, tan(beta_f - atan(mu_f)))')
  const ratio = ['none', 'pushed out over held in, worst row'] as const
  if (slope === 0 || springs === null || !isShared(d, name)) {
    if (slope === 0) d.step('C', ratio, 's_c', 'friction holds so steep a flank by itself')
    else {
      loopPull(d, name)
      d.found('C', ratio, 'there is no pull F_K that s_c could push a row out with', 0)
    }
    return
  }
  if (pressed === 0) {
    d.entry('z', 'track.sprocketTeeth')
    loopPull(d, name)
    const words =
      's_c * z / pi: nothing presses the slack side on, and the last row climbs at any pull F_K alike'
    d.found('C', ratio, words, loadOf(d.checked, name).climb)
    return
  }
  rowForces(d, stiffnessSharing(d, name), springs, pressed)
  pressing(d, name)
  d.entry('z', 'track.sprocketTeeth')
  const held = 'P_s + f_j / 2 + f_b'
  d.step('N_j', ['force', 'mean tension over that row, without the loop’s own pull'], held)
  d.step('C', ratio, 'f_j * s_c * z / (2 * pi * N_j)')
}

/** `f_j` and `f_b`: force of the row that is closest to climbing out, and of all rows behind it. */
function rowForces(d: Draft, sharing: Sharing, springs: RowSprings, pretension: number): void {
  const forces = new Float64Array(rowRoom)
  setRowForces(forces, sharing, springs)
  const count = sharing.rows
  let worst = { row: count, ratio: 0 }
  let behind = 0
  for (let row = count; row >= 1; row -= 1) {
    const force = forces[row] ?? 0
    const ratio = force > 0 ? force / (pretension + force / 2 + behind) : 0
    if (ratio > worst.ratio) worst = { row, ratio }
    behind += force
  }
  const solved = 'the row, counted from the tight end, where pushed out over held in is largest'
  d.found('j', ['count', 'worst row'], solved, worst.row)
  const ends = '(1 - exp(-2 * N_r * xi))'
  const whole = '(1 - exp(-N_r * xi))'
  const pulled = 'F_K * (exp(-(j - 1/2) * xi) + exp(-(2 * N_r - j + 1/2) * xi))'
  const leaning = `y_m * ${whole} * (exp(-(j - 1/2) * xi) - exp(-(N_r - j + 1/2) * xi))`
  const told = ['force', 'force of that row'] as const
  d.step('f_j', told, `sqrt(kappa) * (${pulled} + ${leaning}) / ${ends}`)
  const pull = 'F_K * (exp(-j * xi) - exp(-(2 * N_r - j) * xi))'
  const level = `y_m * (1 - exp(-(N_r - j) * xi)) * (1 - exp(-j * xi)) * ${whole}`
  const rest = ['force', 'force of all rows behind it'] as const
  d.step('f_b', rest, `(${pull} - ${level}) / ${ends}`)
}
