import { bentStep } from '../numeric/bent-step.ts'
import { decayOf } from '../numeric/decay.ts'

/**
 * Share of the soil's shear strength that a patch raises, averaged over its length.
 *
 * φ(x) = 1 − (1 − e^−x)/x,  x = i L/K.
 *
 * @param x slip times contact length over shear modulus, ≥ 0
 * @returns 0 at x = 0, towards 1
 * *Source:* Janosi and Hanamoto (1961), integrated over the patch; Wong, Theory of Ground Vehicles, thrust of a track.
 * @example shearShare(1) // 0.36788
 */
export function shearShare(x: number): number {
  if (x > 37) return 1 - 1 / x // e^−37 is below the last digit
  if (x > 0.1) return 1 - (1 - decayOf(x)) / x
  return x * shearSeries(x)
}

/** φ(x)/x by its power series, Σ (−x)^k/(k + 2)!; below one tenth eight terms give every digit. */
function shearSeries(x: number): number {
  return (
    1 / 2 -
    x *
      (1 / 6 -
        x * (1 / 24 - x * (1 / 120 - x * (1 / 720 - x * (1 / 5040 - x * (1 / 40320 - x * (1 / 362880)))))))
  )
}

/** The share and how fast it grows, told together because they need the same exponential. */
export class Shear {
  /** φ(x). */
  share = NaN
  /** φ′(x). */
  slope = NaN
}

/**
 * Fills the share and its slope.
 *
 * φ′(x) = [(1 − e^−x)/x − e^−x]/x.
 *
 * @param x as above
 * *Source:* derivative of {@link shearShare}.
 * @example ((shear) => (setShear(shear, 1), shear.slope))(new Shear()) // 0.26424
 */
export function setShear(shear: Shear, x: number): void {
  if (x <= 0.1) {
    shear.share = x * shearSeries(x)
    shear.slope = slopeSeries(x)
    return
  }
  const decay = x > 37 ? 0 : decayOf(x) // e^−37 is below the last digit
  const inverse = 1 / x
  const missing = (1 - decay) * inverse
  shear.share = 1 - missing
  shear.slope = (missing - decay) * inverse
}

/** φ′(x) by its power series, Σ (k + 1)(−x)^k/(k + 2)!. */
function slopeSeries(x: number): number {
  return (
    1 / 2 -
    x *
      (1 / 3 - x * (1 / 8 - x * (1 / 30 - x * (1 / 144 - x * (1 / 840 - x * (1 / 5760 - x * (1 / 45360)))))))
  )
}

/**
 * How fast the slope itself grows: φ″(x), from what `setShear` gave.
 *
 * φ + x φ′ = 1 − e^−x, so x φ″ = e^−x − 2 φ′ = 1 − φ − (x + 2) φ′. Few digits of it are right where x is small, which is
 * enough to bend a step of a root.
 *
 * @param x as above
 * *Source:* derivative of `setShear`'s slope; −1/3 at x = 0.
 */
export function shearBend(shear: Shear, x: number): number {
  if (x === 0) return -1 / 3
  return (1 - shear.share - (x + 2) * shear.slope) / x
}

/**
 * A first guess of the x at which the share has a value.
 *
 * x ≈ y (2 − y)/(1 − y) · [1 + 0.22 y (1 − y)]: right to 1 % over the whole range, exact at both ends; 0.22 is fitted.
 *
 * @param share y, 0 ≤ y < 1
 * @returns x
 * *Source:* fitted here to {@link shearShare}; a start for its inverse, never a result.
 */
export function shearShareGuess(share: number): number {
  const rest = 1 - share
  return (share * (1 + rest) * (1 + 0.22 * share * rest)) / rest
}

const reached = new Shear()

/**
 * The x at which the share has a value: the inverse of {@link shearShare}.
 *
 * @param share 0 ≤ share < 1
 * @returns x; 0 for a share of 0 or less, Infinity from 1 on
 * *Source:* Halley's method from {@link shearShareGuess}.
 */
export function shearShareInverse(share: number): number {
  if (share <= 0) return 0
  if (share >= 1) return Infinity
  let x = shearShareGuess(share)
  for (let step = 0; step < 8; step += 1) {
    setShear(reached, x)
    const change = bentStep(reached.share - share, reached.slope, shearBend(reached, x))
    x += change
    if (!(Math.abs(change) > 1e-4 * x)) break // what is left is of the order of the cube
  }
  return x
}
