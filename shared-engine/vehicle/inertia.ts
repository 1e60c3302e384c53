import type { Machine } from '../machine/parts.ts'

/**
 * Mass that the thrust accelerates: the machine, its circulating loops and what turns with the motors.
 *
 * m_e = m + count · m_loop + M [J_rotor G² + Σ J_k (G/G_k)²]/r².
 *
 * @returns kg
 * *Source:* kinetic energy of the parts; a circulating loop counts once more than its translation. Held while the track
 * spins too: `docs/model.md` §5, assumption.
 */
export function equivalentMassOf(machine: Machine): number {
  const { vehicle, track, motor, train } = machine
  const motorPerBelt = train.ratio / track.radius
  return (
    vehicle.mass +
    track.count * track.loopMass +
    motor.count * train.inertiaAtMotor * motorPerBelt * motorPerBelt
  )
}
