import type { Machine } from '../machine/parts.ts'
import type { Motion } from './motion.ts'

/**
 * Speed at which shorted motors creep down the build's slope.
 *
 * v = [(m g sin θ − R_g − D_0) r η/(G M) − K_t I_0(0)]⁺/[K_t²/R_s + K_t β I_nl/ω_ref + D_1 (r/G)² η/M] · r/G.
 *
 * @returns m/s; 0 where it stands
 * *Source:* the shorted motor's torque K_t² ω/R_s against the slope's pull; the gears take their share: assumption.
 */
export function creepSpeedOf(machine: Machine, { drive, line, footing }: Motion): number {
  const { train, track, vehicle } = machine
  const slopeForce = footing.standingResistance - footing.groundResistance - vehicle.towForce
  const perForce = train.efficiency / (line.motorPerBelt * drive.count)
  const driven = (slopeForce - footing.groundResistance - track.internalDrag) * perForce
  const torque = driven - drive.torqueConstant * drive.noLoadBase
  if (!(torque > 0)) return 0
  const held =
    (drive.torqueConstant * drive.torqueConstant) / drive.seriesResistance +
    drive.torqueConstant * drive.noLoadSlope +
    (track.internalDragPerSpeed * perForce) / line.motorPerBelt
  return torque / held / line.motorPerBelt
}
