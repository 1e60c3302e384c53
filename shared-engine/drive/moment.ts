/** What straight travel or a turn asks of one motor, and of the pack through all of them, at one instant. */
export class Draw {
  /** ω, rad/s. */
  motorSpeed = 0
  /** I, A of one motor; negative while it charges. */
  amps = 0
  /** I_0(ω), A. */
  noLoadAmps = 0
  duty = 0
  /** M δ I, A. */
  packDriveAmps = 0
  /** A with accessories. */
  packAmps = 0
  packVolts = 0
}

/** Everything at one instant of a drive, filled again and again; SI. */
export class Moment {
  /** Straight travel. */
  readonly straight = new Draw()
  /** Turning on the spot; filled only where the row turns. */
  readonly turn = new Draw()
  /** v, m/s, not negative. */
  speed = 0
  /** R(v), N. */
  resistance = 0
  /** dv/dt. */
  acceleration = 0
  beltSpeed = 0
  /** dv_b/dt while the track spins on its own. */
  beltAcceleration = 0
  /** Force of the motors at the track, what they spin up included, N. */
  force = 0
  /** Force of the wheel brake, N. */
  brakeForce = 0
  /** N that the ground passes on. */
  thrust = 0
  /** Whether the belt runs free of the ground. */
  spinning = false
  /** 0 to 1. */
  charge = 0
  openVolts = 0
  accessoryAmps = 0
  /** Whether the pack cannot feed the accessories. */
  starving = false
  packResistance = 0
  /** S r(T_p)/P at the pack's own temperature, Ω: what warms the cells. */
  cellsResistance = 0
}
