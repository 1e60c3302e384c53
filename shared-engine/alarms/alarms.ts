import type { Checked } from '../check.ts'
import type { QuantityKind } from '../units/kinds.ts'
import type { Working } from '../workings/working.ts'
import type { RpmGuard } from './guard.ts'
import { packAlarms } from './pack.ts'
import { currentAlarms, rpmAlarms } from './motor.ts'
import { temperatureAlarms } from './heat.ts'

/** One line of the card: what to set on the transmitter or the controller. */
export interface Alarm {
  readonly id: string
  /** What the sensor shows: "Pack volts under load". */
  readonly label: string
  /** In words, since a reversed comparison is the commonest slip. */
  readonly direction: 'alarm when above' | 'alarm when below'
  /** SI, °C, rpm; null where an entry is missing, which the working names. */
  readonly value: number | null
  readonly kind: QuantityKind
  /** Seconds from the alarm to the limit at the run's current; null where it never gets there or is not known. */
  readonly warningSeconds: number | null
  /** How long it has to last before it sounds, s. */
  readonly holdSeconds: number
  /** How far it has to fall back before it is quiet, in the unit of the value. */
  readonly hysteresis: number | null
  /** Ω: of volts, what times the amps has to be added to what is measured before it is compared. */
  readonly ohm?: number
  /** V: the same for a radio that can't add them, at the pattern's RMS current. */
  readonly voltsAtRms?: number
  /** Whether it sounds before the limit in every load; absent where that is not known. */
  readonly guards?: boolean
  /** Of an alarm at the limit itself: a value before it, and the s from there in the worst burst. */
  readonly earlier?: { readonly value: number; readonly seconds: number }
  /** Of rpm: which limit decides, and the throttle cap that never gets there. */
  readonly rpm?: RpmGuard
  readonly working: Working
}

/**
 * The alarm card of a build: rpm, volts, temperatures and currents, each with its working.
 *
 * Rpm at 95 % of the limit, the case at 90 % of its rise when the motor is at its limit, the coolant 10 K below boiling, volts
 * at the reserve, the charge down to there, currents at their rating for long. Hold times and hysteresis are suggestions.
 *
 * *Source:* the `docs/model.md` §§2, 3, 7 and 12 for the numbers; margins, hold times and hysteresis: common practice, no source.
 */
export function alarmsOf(checked: Checked): readonly Alarm[] {
  return [
    ...rpmAlarms(checked),
    ...packAlarms(checked),
    ...temperatureAlarms(checked),
    ...currentAlarms(checked),
  ]
}

/** Said once under the card. */
export const alarmCaution =
  'An alarm is a reminder, not a guard: test each one at the stand before relying on it, and follow the makers’ limits and your local rules.'
