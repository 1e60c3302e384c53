import type { BeltStage } from '../build/machine-parts.ts'
import { beltMeshFactor } from '../reference/belts.ts'

/** Pitch radius of a pulley, m: r = p z/2π. *Source:* ISO 5294, pitch diameter. */
export function pulleyRadius(pitch: number, teeth: number): number {
  return (pitch * teeth) / (2 * Math.PI)
}

/**
 * Half of what the belt's straight runs lean towards each other.
 *
 * θ = asin((r_2 − r_1)/C), r_2 ≥ r_1.
 *
 * @returns rad, 0 for equal pulleys
 * *Source:* geometry of the open belt.
 */
export function beltLean(stage: Pick<BeltStage, 'pitch' | 'driverTeeth' | 'drivenTeeth' | 'centre'>): number {
  const difference = pulleyRadius(stage.pitch, Math.abs(stage.drivenTeeth - stage.driverTeeth))
  return Math.asin(difference / stage.centre)
}

/**
 * Whole teeth in mesh on the smaller pulley.
 *
 * z_m = ⌊z_s (½ − θ/π)⌋, 1e-9 added before rounding down.
 *
 * *Source:* ISO 5295, first edition.
 */
export function teethInMesh(
  stage: Pick<BeltStage, 'pitch' | 'driverTeeth' | 'drivenTeeth' | 'centre'>,
): number {
  const smaller = Math.min(stage.driverTeeth, stage.drivenTeeth)
  return Math.floor(smaller * (0.5 - beltLean(stage) / Math.PI) + 1e-9)
}

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
  return beltMeshFactor(teethInMesh(stage)) * stage.ratedPull - stage.massPerMetre * beltSpeed * beltSpeed
}

/**
 * Pitch length of an open belt.
 *
 * L = 2 C cos θ + π (r_1 + r_2) + 2 θ (r_2 − r_1).
 *
 * @param centre C, m
 * @returns m
 * *Source:* geometry of the open belt; ISO 5295.
 */
export function beltLength(pitch: number, driverTeeth: number, drivenTeeth: number, centre: number): number {
  const smaller = pulleyRadius(pitch, Math.min(driverTeeth, drivenTeeth))
  const larger = pulleyRadius(pitch, Math.max(driverTeeth, drivenTeeth))
  const lean = Math.asin((larger - smaller) / centre)
  return 2 * centre * Math.cos(lean) + Math.PI * (larger + smaller) + 2 * lean * (larger - smaller)
}

/** Length to buy: the whole number of teeth nearest to the pitch length, and the centre distance that it wants. */
export interface BeltFit {
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
export function beltFitOf(
  stage: Pick<BeltStage, 'pitch' | 'driverTeeth' | 'drivenTeeth' | 'centre'>,
): BeltFit {
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
