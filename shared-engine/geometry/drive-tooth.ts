/** A drive tooth as a short cantilever. */
interface ToothBeam {
  /** h, m from the root to where the load stands. */
  readonly loadHeight: number
  /** t, m. */
  readonly root: number
  /** w, m. */
  readonly width: number
  /** E, Pa. */
  readonly modulus: number
  /** ν. */
  readonly poisson: number
}

/**
 * Stiffness of one row of drive teeth, as short cantilevers.
 *
 * k = teethAcross · E w/[4 (h/t)³ + 2.4 (1 + ν) h/t].
 *
 * @returns N/m
 * *Source:* Timoshenko beam, bending and shear with the form factor 6/5; `docs/model.md` §6.
 */
export function rowStiffnessOf(tooth: ToothBeam, teethAcross: number): number {
  const slenderness = tooth.loadHeight / tooth.root
  const give = 4 * slenderness * slenderness * slenderness + 2.4 * (1 + tooth.poisson) * slenderness
  return (teethAcross * tooth.modulus * tooth.width) / give
}

/**
 * Part of a loop's pull that the most loaded row carries, where stiffness is not known.
 *
 * 1/[1 + q (z_e − 1)].
 *
 * @param share q: 1 all rows alike, 0 one row carries all
 * @param engaged z_e
 * @returns 0 to 1
 * *Source:* assumption, `docs/model.md` §6.
 */
export function assumedRowShare(share: number, engaged: number): number {
  return 1 / (1 + share * (engaged - 1))
}

/**
 * Slope of the force that pushes a tooth out along its flank.
 *
 * tan(β − atan μ_f), 0 where negative: friction holds a steep flank by itself.
 *
 * @param flank β, rad from the radial direction
 * @param friction μ_f
 * *Source:* wedge with friction; `docs/model.md` §6.
 */
export function climbSlopeOf(flank: number, friction: number): number {
  return Math.max(0, Math.tan(flank - Math.atan(friction)))
}
