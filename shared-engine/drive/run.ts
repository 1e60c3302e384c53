import type { Build } from '../entries/schema.ts'
import { followSteps, type StepEvent, type StepRun } from '../numeric/step.ts'
import { place, stateNames, type Pattern } from './drive.ts'
import { PatternPoint, setPatternPoint, setPatternSlopes } from './point.ts'
import { patternSettingOf, type PatternSetting, type SettledRow } from './setting.ts'
import { resultOf, type PatternRun } from './result.ts'

/** What may be set for a drive. */
export interface PatternOptions {
  /** °C of winding, controller and coolant at the start; the air's where absent: a machine that stood outside. */
  readonly startTemperature?: number
  /** Largest error of a step, relative to each state. */
  readonly relative?: number
}

/** One stretch between two kinks: the same row, moving or standing. */
export interface Stretch {
  readonly settled: SettledRow
  readonly run: StepRun
}

/** How a drive ended. */
export type PatternEnd = 'finished' | 'reserve' | 'too-hot' | 'too-stiff'

/** °C of the winding at which a drive ends: insulation is gone and the motor's constants mean nothing. *Source:* assumption. */
const hottestWinding = 300

/** Setting off and stopping more often than this in one row is a bug of ours, not a drive. */
const mostStretches = 200

/**
 * Drives a pattern through time with charge, temperatures, speed and distance as states, and a book of where the energy
 * goes.
 *
 * dq/dt = I_pack;  m_e dv/dt = thrust − R(v);  temperatures as in {@link setPatternSlopes}; each row starts from where the
 * one before it ended; the drive ends with its last row, or where the charge reaches the reserve.
 *
 * *Source:* `docs/model.md` §7; the laws of each part are those of §§2 to 7 at the state of the instant.
 */
export function runPattern(build: Build, pattern: Pattern, options: PatternOptions = {}): PatternRun {
  const setting = patternSettingOf(build, pattern)
  const stretches: Stretch[] = []
  let time = 0
  let state = startState(setting, options.startTemperature)
  let end: PatternEnd = 'finished'
  for (const settled of setting.rows) {
    const rowEnd = time + settled.row.seconds
    const before = stretches.length
    while (end === 'finished' && time < rowEnd) {
      const run = followStretch(setting, settled, state, time, rowEnd, options.relative ?? 1e-9)
      stretches.push({ settled, run })
      time = run.times.at(-1) ?? rowEnd
      state = Float64Array.from(run.states.at(-1) ?? state)
      if (run.ended === 'too-stiff' || stretches.length - before > mostStretches) end = 'too-stiff'
      else if (run.ended === 'event') {
        const happened = run.happened.at(-1)?.name
        if (happened === 'reserve' || happened === 'too-hot') end = happened
        else state[place.speed] = 0
      }
    }
  }
  return resultOf(build, pattern, setting, stretches, end)
}

function startState(
  { machine, followsWinding, followsController }: PatternSetting,
  start?: number,
): Float64Array {
  const state = new Float64Array(stateNames.length)
  const warm = start ?? machine.ground.airTemperature
  state[place.winding] = followsWinding ? warm : machine.service.windingTemperature
  state[place.controller] = followsController ? warm : machine.ground.airTemperature
  state[place.coolant] = machine.cooling === null ? machine.ground.airTemperature : warm
  return state
}

/** Errors that matter to nobody: 1 µA·s, 1 µK, 10 nm/s, 1 mJ. */
const floors = stateNames.map((name) =>
  name === 'speed' || name === 'distance'
    ? 1e-8
    : name === 'chargeDrawn' || name === 'winding' || name === 'controller' || name === 'coolant'
      ? 1e-6
      : 1e-3,
)

function followStretch(
  setting: PatternSetting,
  settled: SettledRow,
  state: Float64Array,
  from: number,
  to: number,
  relative: number,
): StepRun {
  const point = new PatternPoint()
  const { pack } = setting.machine
  const usable = (pack.stateOfCharge - pack.reserve) * pack.capacity
  setPatternPoint(point, setting, settled, state)
  const moving = point.speed > 0 || point.surplus > 0
  const reserve: StepEvent = {
    name: 'reserve',
    value: (_, at) => usable - (at[place.chargeDrawn] ?? 0),
    stops: true,
  }
  const tooHot: StepEvent = {
    name: 'too-hot',
    value: (_, at) => hottestWinding - (at[place.winding] ?? 0),
    stops: true,
  }
  const stop: StepEvent = { name: 'stop', value: (_, at) => at[place.speed] ?? 0, stops: true }
  const setOff: StepEvent = {
    name: 'set-off',
    value: (_, at) => (setPatternPoint(point, setting, settled, at), point.surplus),
    stops: true,
  }
  return followSteps({
    slopes: (_, at, slope) => {
      setPatternPoint(point, setting, settled, at)
      setPatternSlopes(slope, point, setting, settled, at, moving)
    },
    from,
    to,
    start: [...state],
    relative,
    absolute: floors,
    mostSteps: 50_000,
    events: moving ? [reserve, tooHot, stop] : [reserve, tooHot, setOff],
  })
}
