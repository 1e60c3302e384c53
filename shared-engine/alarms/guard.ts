import type { Evaluated } from '../figures/evaluated.ts'
import { DriveLine, setDriveLine, torqueAt } from '../motor/drive-line.ts'
import { throttleForFreeSpeed } from '../motor/free-speed.ts'
import { internalDragAt } from '../track/drag.ts'
import { angularSpeedOf } from '../units/rpm.ts'

/** What an alarm on rpm has to be set to, and whether it can guard. */
export interface RpmGuard {
  readonly value: number
  /** Id of the limit that decides. */
  readonly from: string
  /** s from the alarm to the limit, unloaded at full throttle; null where nothing pushes that far. */
  readonly seconds: number | null
  /** What the seconds are made of: m_s, kg; v_n and v_b, m/s of the belt; F, N. */
  readonly spinning: number
  readonly limitBelt: number
  readonly alarmBelt: number
  readonly force: number
  /** Whether the warning is long enough for a hand; true where nothing pushes that far. */
  readonly guards: boolean
  /** Most throttle, %, that never gets to the limit; null where none reaches it or none is low enough. */
  readonly capPercent: number | null
}

/** Shortest warning that a hand can use, s: telemetry, speech, hand. *Source:* assumption. */
const usable = 3

/**
 * The rpm alarm: the least of 95 % of rated, 95 % of electrical, 90 % of burst, 95 % of lift-off.
 *
 * seconds = m_s (v_n − v_b)/F,  F = M T G/r − D at v_b, T the larger of the cold and the hot motor's at full throttle.
 *
 * *Source:* `docs/model.md` §8; shares common practice, no source.
 */
export function rpmGuardOf({ machine, figures, evaluation: e }: Evaluated): RpmGuard {
  const { motor, controller, pack, track, train } = machine
  const electrical = controller.maxElectricalRpm
  const candidates = [
    { from: 'motor.free-rpm', rpm: motor.ratedMaxRpm, share: 0.95 },
    {
      from: 'controller.electrical-rpm',
      rpm: electrical === null ? NaN : electrical / motor.polePairs,
      share: 0.95,
    },
    { from: 'track.burst-speed', rpm: figures.burstMotorRpm ?? NaN, share: 0.9 },
    { from: 'track.lift-off-free', rpm: figures.liftOffMotorRpm ?? NaN, share: 0.95 },
  ].filter(({ rpm }) => !Number.isNaN(rpm))
  const value = Math.min(...candidates.map(({ rpm, share }) => rpm * share))
  const limit = Math.min(...candidates.map(({ rpm }) => rpm))
  const from = candidates.find(({ rpm, share }) => rpm * share === value)?.from ?? 'motor.free-rpm'
  const belt = (rpm: number) => (angularSpeedOf(rpm) * track.radius) / train.ratio
  const [alarm, reached] = [belt(value), belt(limit)]
  const hot = new DriveLine()
  setDriveLine(hot, machine, pack.fullVolts, motor.maxTemperature, controller.throttleCap)
  const speed = angularSpeedOf(value)
  const torque = Math.max(torqueAt(e.launchDrive, speed), torqueAt(hot, speed))
  const force = (motor.count * torque * train.ratio) / track.radius - internalDragAt(track, alarm)
  const spinning = e.equivalentMass - machine.vehicle.mass
  const seconds = force > 0 ? (spinning * (reached - alarm)) / force : null
  const cap = throttleForFreeSpeed(machine, angularSpeedOf(limit))
  return {
    value,
    from,
    seconds,
    spinning,
    limitBelt: reached,
    alarmBelt: alarm,
    force,
    guards: seconds === null || seconds >= usable,
    capPercent: limit > 0 && cap > 0 ? 100 * cap : null,
  }
}
