import type { Checked } from '../check.ts'
import type { QuantityKind } from '../units/kinds.ts'
import type { Working } from '../workings/working.ts'
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
  readonly working: Working
}

/**
 * The alarm card of a build: rpm, volts, temperatures and currents, each with its working.
 *
 * Rpm at 95 % of the limit, temperatures 10 K below it, volts as the pack shows them under the run's current when the charge
 * is at the reserve, currents at their rating for long. Hold times and hysteresis are suggestions.
 *
 * *Source:* the `docs/model.md` §§2, 3 and 7 for the numbers; margins, hold times and hysteresis: common practice, no source.
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
