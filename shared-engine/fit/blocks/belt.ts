import type { Machine } from '../../machine/parts.ts'

/** Belt speed of a motor speed: v_b = ω r/G. */
export const beltSpeedOf = (machine: Machine, speed: number): number =>
  (speed * machine.track.radius) / machine.train.ratio

/** Slip of the ground, 0 to 1; none that is constant on soil. */
export const slipOf = ({ ground }: Machine): number => (ground.model === 'coefficient' ? ground.slip : 0)
