import type { Point } from '../scene.ts'
import { polar, roundWheel } from './outline.ts'

/** An external spur wheel without profile shift. */
export interface GearForm {
  /** m. */
  readonly module: number
  /** rad. */
  readonly pressureAngle: number
  readonly teeth: number
}

interface GearRadii {
  readonly pitch: number
  readonly base: number
  readonly tip: number
  readonly root: number
}

/**
 * The involute function: how far the flank has turned away from where it leaves the base circle.
 *
 *     inv α = tan α − α
 *
 * @param angle α, pressure angle at the point, rad, 0 to below π/2
 * @returns inv α, rad
 *
 * *Source:* ISO 21771-1:2024 (cylindrical involute gears, geometry), involute function; the formula from memory.
 * @example involuteOf(0.3490658504) // 0.0149044
 */
export function involuteOf(angle: number): number {
  return Math.tan(angle) - angle
}

/**
 * The four circles of a wheel.
 *
 *     r = m z/2,  r_b = r cos α,  r_a = r + m,  r_f = r − 1.25 m
 *
 * @param form module m (m), pressure angle α (rad), teeth z
 * @returns radii, m
 *
 * *Source:* ISO 53:1998, basic rack profile A (addendum 1 m, dedendum 1.25 m); from memory.
 * @example gearRadii({ module: 2, pressureAngle: 0.349, teeth: 20 }).tip // 22
 */
export function gearRadii({ module, pressureAngle, teeth }: GearForm): GearRadii {
  const pitch = (module * teeth) / 2
  return { pitch, base: pitch * Math.cos(pressureAngle), tip: pitch + module, root: pitch - 1.25 * module }
}

/**
 * Half of the angle that a tooth takes up at a radius.
 *
 *     ψ(ρ) = π/(2z) + inv α − inv α_ρ,  cos α_ρ = r_b/ρ
 *
 * @param form module (m), pressure angle α (rad), teeth z
 * @param radius ρ, m; at and below the base circle the flank's start is meant
 * @returns ψ, rad; negative past the point where both flanks meet
 *
 * *Source:* ISO 21771-1:2024, tooth thickness at any circle, without shift; from memory.
 * @example 2 * 20 * halfToothAngle({ module: 2, pressureAngle: 0.349, teeth: 20 }, 20) // 3.14159
 */
export function halfToothAngle(form: GearForm, radius: number): number {
  const { base } = gearRadii(form)
  const atRadius = radius <= base ? 0 : Math.acos(base / radius)
  return Math.PI / (2 * form.teeth) + involuteOf(form.pressureAngle) - involuteOf(atRadius)
}

/** The radius up to which a tooth has a top: few teeth at a steep angle come to a point below the tip circle. */
export function toppedRadius(form: GearForm): number {
  const { pitch, tip, module } = { ...gearRadii(form), module: form.module }
  const leastHalfTop = (0.06 * module) / tip
  if (halfToothAngle(form, tip) >= leastHalfTop) return tip
  let low = pitch
  let high = tip
  for (let step = 0; step < 40; step++) {
    const middle = (low + high) / 2
    if (halfToothAngle(form, middle) >= leastHalfTop) low = middle
    else high = middle
  }
  return low
}

/**
 * One tooth centred on angle 0, from the root on one side to the root on the other: involute flanks from the base
 * circle to the tip, radial below the base circle (*assumption*, for the drawing: the true fillet depends on the cutter).
 *
 * @param form the wheel
 * @param points per flank, 2 or more
 */
export function toothOutline(form: GearForm, points = 7): Point[] {
  const { base, root } = gearRadii(form)
  const from = Math.max(base, root)
  const to = toppedRadius(form)
  const flank = Array.from({ length: points }, (_, index) => {
    // Closer together near the base, where the flank bends most.
    const radius = from + (to - from) * (index / (points - 1)) ** 1.5
    return { radius, angle: halfToothAngle(form, radius) }
  })
  const foot = { radius: root, angle: halfToothAngle(form, from) }
  const rising = (root < from ? [foot, ...flank] : flank).map(({ radius, angle }) => polar(-angle, radius))
  const falling = rising.map(({ x, y }) => ({ x, y: -y })).reverse()
  return [...rising, ...falling]
}

/** The whole wheel's outline, a tooth centred on angle 0. */
export function gearOutline(form: GearForm, points = 7): Point[] {
  return roundWheel(toothOutline(form, points), form.teeth)
}

/** How far a wheel must be turned (rad) for a gap of its teeth, not a tooth, to stand at angle π, opposite a tooth at 0. */
export function meshingPhase(teeth: number): number {
  return Math.PI + Math.PI / teeth
}
