import type { BeltStage } from './machine.ts'
import { beltLength, pulleyRadius, type BeltDrive } from './geometry.ts'

/**
 * Pull that the belt may carry at a speed.
 *
 * K_z T_a (w/w_0)^1.14 − m v².
 *
 * @param beltSpeed v, m/s
 * @returns N; nothing or less where the belt's own mass takes all
 * *Source:* ISO 5295, first edition.
 */
export function allowedBeltPull(stage: BeltStage, beltSpeed: number): number {
  return stage.meshedPull - stage.massPerMetre * beltSpeed * beltSpeed
}

/** A pull that comes once over the pull that lasts. *Source:* assumption. */
export const beltPeakFactor = 2

/** Pull allowed once of a standing belt, N. *Source:* assumption on ISO 5295's rating. */
export function peakBeltPull(stage: BeltStage): number {
  return beltPeakFactor * allowedBeltPull(stage, 0)
}

/** Length to buy: the whole number of teeth nearest to the pitch length, and the centre distance that it wants. */
interface BeltFit {
  /** m, for the centre distance entered. */
  readonly length: number
  readonly teeth: number
  /** m; NaN where so few teeth do not reach round the pulleys. */
  readonly centre: number
}

/**
 * Belt to buy for a stage.
 *
 * *Source:* ISO 5295; the centre distance by Newton's method on the length, whose slope is 2 cos θ.
 */
export function beltFitOf(stage: BeltDrive): BeltFit {
  const { pitch, driverTeeth, drivenTeeth } = stage
  const length = beltLength(pitch, driverTeeth, drivenTeeth, stage.centre)
  const teeth = Math.round(length / pitch)
  const difference = pulleyRadius(pitch, Math.abs(drivenTeeth - driverTeeth))
  let centre = stage.centre
  for (let step = 0; step < 50; step += 1) {
    const change =
      (beltLength(pitch, driverTeeth, drivenTeeth, centre) - teeth * pitch) /
      (2 * Math.sqrt(1 - (difference / centre) ** 2))
    if (!Number.isFinite(change)) break
    centre -= change
    if (Math.abs(change) < 1e-14 * centre) break
  }
  return { length, teeth, centre }
}
