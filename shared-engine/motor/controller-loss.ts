/** What of a controller decides its losses. */
interface SwitchingParts {
  /** Ω of the two conducting switches. */
  readonly resistance: number
  /** Hz. */
  readonly pwmFrequency: number | null
  /** s, rise and fall together. */
  readonly switchingTime: number | null
  /** s of one dead time. */
  readonly deadTime: number
  /** V of the body diodes that conduct meanwhile. */
  readonly diodeVolts: number
}

/**
 * Whether all of a controller's losses are known, or conduction alone: then its heat is at least what is computed.
 *
 * *Source:* {@link controllerLossAt}.
 */
export function knowsSwitching(controller: SwitchingParts): boolean {
  return controller.pwmFrequency !== null && controller.switchingTime !== null
}

/**
 * W that each ampere of one motor costs in switching.
 *
 * f (½ V (t_r + t_f) + 2 t_d V_d).
 *
 * @param volts V of the pack under load
 * @returns W/A; 0 where frequency or switching time are not known
 * *Source:* hard-switched half bridge, handbooks of power electronics; at full duty too: the safe side.
 */
function switchingLossPerAmp(controller: SwitchingParts, volts: number): number {
  const { pwmFrequency, switchingTime, deadTime, diodeVolts } = controller
  if (pwmFrequency === null || switchingTime === null) return 0
  return pwmFrequency * (0.5 * volts * switchingTime + 2 * deadTime * diodeVolts)
}

/**
 * Loss of one controller.
 *
 * P = I² R_esc + |I| f (½ V (t_r + t_f) + 2 t_d V_d).
 *
 * @param amps I of its motor, A, either sign
 * @param volts V of the pack under load
 * @returns W
 * *Source:* handbooks of power electronics, hard-switched half bridge; `docs/model.md` §3.
 */
export function controllerLossAt(controller: SwitchingParts, amps: number, volts: number): number {
  const conduction = amps * amps * controller.resistance
  return conduction + Math.abs(amps) * switchingLossPerAmp(controller, volts)
}
