import type { Machine } from '../machine/parts.ts'
import { finiteOrNull } from '../numeric/finite.ts'
import { CruiseState, setCruise } from './cruise.ts'
import { curveSettingOf, type CurveSetting } from './curve-setting.ts'

/** Run time and range over level cruise speed; null where the speed cannot be held. */
export interface CruiseCurve {
  /** m/s. */
  readonly speed: readonly number[]
  readonly packAmps: readonly (number | null)[]
  /** s to the reserve. */
  readonly seconds: readonly (number | null)[]
  /** m to the reserve. */
  readonly metres: readonly (number | null)[]
  /** Where the range is longest; null where no speed can be held. */
  readonly best: { readonly speed: number; readonly metres: number; readonly seconds: number } | null
}

/** Fastest speed that the curve asks about: the belt's free speed. */
function fastestOf(setting: CurveSetting): number {
  return Math.max(0, setting.line.openStart / setting.line.openSlope)
}

/**
 * Level cruise from a walk to the free speed.
 *
 * @param count points, at least 2
 * *Source:* `docs/model.md` §7.
 */
export function cruiseCurve(machine: Machine, count = 161): CruiseCurve {
  const setting = curveSettingOf(machine)
  const end = fastestOf(setting)
  const speed = Array.from({ length: count }, (_, index) => (end * (index + 1)) / count)
  const states = speed.map((at) => cruiseAt(setting, at))
  const metres = states.map((state) => finiteOrNull(state.metres))
  let best: CruiseCurve['best'] = null
  for (const state of states) {
    if (state.metres > (best?.metres ?? 0)) {
      best = { speed: state.groundSpeed, metres: state.metres, seconds: state.seconds }
    }
  }
  return {
    speed,
    packAmps: states.map((state) => finiteOrNull(state.packAmps)),
    seconds: states.map((state) => finiteOrNull(state.seconds)),
    metres,
    best,
  }
}

/** Level travel at one speed. */
export function cruiseAt(setting: CurveSetting, speed: number): CruiseState {
  const cruise = new CruiseState()
  setCruise(cruise, setting.machine, setting, speed)
  return cruise
}

/**
 * How far the machine may go and still come back over the same ground.
 *
 * Half of the metres to the reserve at that speed.
 *
 * @param speed m/s, level
 * @returns m; null where the speed cannot be held
 * *Source:* `docs/model.md` §7; wind, turns and stops are left out: assumption.
 */
export function turnBackDistance(machine: Machine, speed: number): number | null {
  return finiteOrNull(cruiseAt(curveSettingOf(machine), speed).metres / 2)
}
