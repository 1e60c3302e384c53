import type { DriveLine } from '../motor/drive-line.ts'

/**
 * Most current that a motor feeds back at a speed.
 *
 * I_br = min(brakeAmps, ω K_t/R_s): at most what a short circuit would drive, which charges nothing.
 *
 * @param most the controller's setting, A; 0: it coasts
 * @param speed ω, rad/s
 * @returns A, ≥ 0
 * *Source:* Kirchhoff's law of the shorted motor; `docs/model.md` §7.
 */
export function brakingAmpsAt(drive: DriveLine, most: number, speed: number): number {
  return Math.min(most, (speed * drive.torqueConstant) / drive.seriesResistance)
}
