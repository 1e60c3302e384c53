/** Where the machine is looked at: throttle and speed. Shared by every plot, the power path and the strip. */
export class Operating {
  /** Duty asked for, 0 to 1; null: the cap of the build. */
  throttleAsked = $state.raw<number | null>(null)
  /** Ground speed of the shared cursor, m/s; null: where the machine settles. */
  speedAsked = $state.raw<number | null>(null)

  /** Time of the cursor in plots over time, s. */
  secondsAsked = $state.raw<number | null>(null)

  /** Time of the cursor in a log, s of its segment. */
  logSecondsAsked = $state.raw<number | null>(null)

  /** Motor speed that a log shows, as it was typed, and whether it counts electrical turns. */
  logText = $state.raw('')
  logIsElectrical = $state.raw(false)
  /** What was typed as a number, rpm of what was logged; null: nothing that reads as one. */
  logRpm = $state.raw<number | null>(null)

  reset(): void {
    this.logText = ''
    this.logRpm = null
    this.logSecondsAsked = null
    this.secondsAsked = null
    this.throttleAsked = null
    this.speedAsked = null
  }
}
