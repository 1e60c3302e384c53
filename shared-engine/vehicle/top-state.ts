/** The machine at the ground speed where thrust equals resistance: every number NaN where there is none. */
export class TopState {
  /** Whether thrust at rest is more than what holds it back. */
  exists = false
  /** v, m/s. */
  groundSpeed = NaN
  /** v_b, m/s. */
  beltSpeed = NaN
  /** i, 0 to 1. */
  slip = NaN
  /** N, equal to the resistance. */
  thrust = NaN
  /** Whether grip, not the motor, sets the speed (`coefficient` ground alone). */
  spinning = false
  /** rad/s of the motor. */
  motorSpeed = NaN
  /** N·m of one motor. */
  torque = NaN
  /** A of one motor. */
  amps = NaN
  /** Duty in force. */
  duty = NaN
  /** A of the drive at the pack. */
  packDriveAmps = NaN
  /** A of one motor without load at this speed. */
  noLoadAmps = NaN
}

/** Clears a state for a machine that does not get going. */
export function clearTopState(top: TopState): void {
  top.exists = false
  top.spinning = false
  top.groundSpeed = top.beltSpeed = top.slip = top.thrust = NaN
  top.motorSpeed = top.torque = top.amps = top.duty = top.packDriveAmps = top.noLoadAmps = NaN
}
