import type { JointPart } from '../../machine/joint.ts'
import { circlePath, px } from './outline.ts'

/** What keeps a wheel on its shaft, as far as it is drawn. */
export type DrawnJoint = Pick<JointPart, 'kind'> | null

/** In words, for screen readers. */
const words: Readonly<Record<JointPart['kind'], string>> = {
  key: 'keyed to its shaft',
  screw: 'held to its shaft by grub screws',
  pin: 'pinned to its shaft',
  clamp: 'clamped to its shaft',
  flat: 'on a flat of its shaft',
}

/** ", wheel keyed to its shaft"; nothing where the joint is not known. */
export function jointText(wheel: string, joint: DrawnJoint): string {
  return joint === null ? '' : `, ${wheel} ${words[joint.kind]}`
}

/**
 * A bore with what keeps the wheel from turning on its shaft, as path data about the wheel's centre: a key in both, a screw
 * through the hub, a pin across, a slit hub, a shaft with a flat; a plain bore where that is not known. Signs, not to scale.
 */
export function borePath(radius: number, joint: DrawnJoint): string {
  const r = px(radius)
  switch (joint?.kind) {
    case undefined:
      return circlePath(radius)
    case 'key': {
      const half = radius * 0.34
      const top = Math.sqrt(radius ** 2 - half ** 2)
      return `M${px(-half)} ${px(-top)}A${r} ${r} 0 1 0 ${px(half)} ${px(-top)}V${px(-radius * 1.3)}H${px(-half)}Z`
    }
    case 'screw':
      return `${circlePath(radius)}M${px(-radius * 0.25)} ${px(-radius)}V${px(-radius * 2.1)}H${px(radius * 0.25)}V${px(-radius)}`
    case 'pin': {
      const half = radius * 0.24
      const long = radius * 1.8
      return `${circlePath(radius)}M${px(-long)} ${px(-half)}H${px(long)}V${px(half)}H${px(-long)}Z`
    }
    case 'clamp':
      return `${circlePath(radius)}${circlePath(radius * 1.5)}M0 ${px(-radius)}V${px(-radius * 2)}`
    case 'flat': {
      const high = radius * 0.55
      const half = Math.sqrt(radius ** 2 - high ** 2)
      return `M${px(-half)} ${px(-high)}A${r} ${r} 0 1 0 ${px(half)} ${px(-high)}Z`
    }
  }
}
