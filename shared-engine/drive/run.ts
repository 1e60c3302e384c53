import type { Build } from '../entries/schema.ts'
import { Following, type StepEvent, type StepProblem, type StepRun } from '../numeric/step.ts'
import { place, stateNames, type Pattern } from './drive.ts'
import { DrivePoint, setDrivePoint, setDriveSlopes } from './point.ts'
import { driveSettingOf, type DriveSetting, type SettledRow } from './setting.ts'
import { resultOf, type DriveRun } from './result.ts'

/** What may be set for a drive. */
interface DriveOptions {
  /** °C of winding, controller and coolant at the start; the air's where absent: a machine that stood outside. */
  readonly startTemperature?: number
  /** Largest error of a step, relative to each state. */
  readonly relative?: number
  /** Steps after which it is not followed further; {@link mostSteps} where absent. */
  readonly steps?: number
}

/** One stretch between two kinks: the same row, moving or standing. */
export interface Stretch {
  readonly settled: SettledRow
  readonly run: StepRun
}

/** How a drive ended. */
export type DriveEnd = 'finished' | 'reserve' | 'too-hot' | 'too-stiff' | 'too-long' | 'stopped'

/** °C of the winding at which a drive ends: insulation is gone and the motor's constants mean nothing. *Source:* assumption. */
const hottestWinding = 300

/** Steps of a whole drive, tried ones included: some minutes of work, a few hundred megabytes. The rest is not followed. */
export const mostSteps = 200_000
const mostStepsOfStretch = 50_000

/** Setting off and stopping more often than this in one row is a bug of ours, not a drive. */
const mostStretches = 200

/**
 * Drives a pattern through time with charge, temperatures, speed and distance as states, and a book of where the energy
 * goes.
 *
 * dq/dt = I_pack;  m_e dv/dt = thrust − R(v);  temperatures as in {@link setDriveSlopes}; each row starts from where the
 * one before it ended; the drive ends with its last row, or where the charge reaches the reserve,
 * the winding passes 300 °C, or {@link mostSteps} are used up.
 *
 * *Source:* `docs/model.md` §7; the laws of each part are those of §§2 to 7 at the state of the instant.
 */
export function runDrive(build: Build, pattern: Pattern, options: DriveOptions = {}): DriveRun {
  const drive = new DriveUnderWay(build, pattern, options)
  drive.until(Infinity)
  return drive.result()
}

/**
 * A drive followed piece by piece, so that it can be watched and broken off: where it is paused plays no part in what
 * comes out.
 */
export class DriveUnderWay {
  /** s from its start to the end of its last row. */
  readonly seconds: number
  readonly #build: Build
  readonly #pattern: Pattern
  readonly #setting: DriveSetting
  readonly #relative: number
  readonly #stretches: Stretch[] = []
  #stretch: { readonly settled: SettledRow; readonly following: Following } | null = null
  #row = 0
  #stretchesOfRow = 0
  #rowFrom = 0
  #stepsLeft: number
  #time = 0
  #state: Float64Array
  #end: DriveEnd | null = null

  constructor(build: Build, pattern: Pattern, options: DriveOptions = {}) {
    this.#build = build
    this.#pattern = pattern
    this.#setting = driveSettingOf(build, pattern)
    this.#relative = options.relative ?? 1e-9
    this.#stepsLeft = options.steps ?? mostSteps
    this.#state = startState(this.#setting, options.startTemperature)
    this.seconds = pattern.rows.reduce((sum, row) => sum + row.seconds, 0)
  }

  /** How far it is, s. */
  get time(): number {
    return this.#stretch?.following.time ?? this.#time
  }

  get isOver(): boolean {
    return this.#end !== null
  }

  /** Goes on until a time is passed, or to the drive's end. */
  until(time: number): void {
    while (this.#end === null && this.time < time) {
      const stretch = (this.#stretch ??= this.#begun())
      if (stretch === null) {
        this.#end = 'finished'
        return
      }
      stretch.following.until(time)
      if (stretch.following.isOver) this.#close(stretch.settled, stretch.following)
    }
  }

  /** What came of it; of one that is not over, what there is so far. */
  result(): DriveRun {
    const { settled, following } = this.#stretch ?? {}
    const open = settled === undefined || following === undefined ? [] : [{ settled, run: following.run() }]
    const stretches = [...this.#stretches, ...open]
    return resultOf(this.#build, this.#pattern, this.#setting, stretches, this.#end ?? 'stopped')
  }

  /** The next stretch, null behind the last row. */
  #begun() {
    for (;;) {
      const settled = this.#setting.rows[this.#row]
      if (settled === undefined) return null
      const rowEnd = this.#rowFrom + settled.row.seconds
      if (this.#time < rowEnd) {
        const steps = Math.min(mostStepsOfStretch, this.#stepsLeft)
        const problem = stretchProblem(this.#setting, settled, this.#state, this.#time, rowEnd)
        return {
          settled,
          following: new Following({ ...problem, relative: this.#relative, mostSteps: steps }),
        }
      }
      this.#row += 1
      this.#rowFrom = this.#time
      this.#stretchesOfRow = 0
    }
  }

  #close(settled: SettledRow, following: Following): void {
    const run = following.run()
    this.#stretch = null
    this.#stretches.push({ settled, run })
    this.#stretchesOfRow += 1
    this.#stepsLeft -= following.tried
    this.#time = run.times.at(-1) ?? this.#time
    this.#state = Float64Array.from(run.states.at(-1) ?? this.#state)
    if (this.#stepsLeft <= 0) this.#end = 'too-long'
    else if (run.ended === 'too-stiff' || this.#stretchesOfRow > mostStretches) this.#end = 'too-stiff'
    else if (run.ended === 'event') {
      const happened = run.happened.at(-1)?.name
      if (happened === 'reserve' || happened === 'too-hot') this.#end = happened
      else this.#state[place.speed] = 0
    }
  }
}

function startState(
  { machine, followsWinding, followsController }: DriveSetting,
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

function stretchProblem(
  setting: DriveSetting,
  settled: SettledRow,
  state: Float64Array,
  from: number,
  to: number,
): StepProblem {
  const point = new DrivePoint()
  const { pack } = setting.machine
  const usable = (pack.stateOfCharge - pack.reserve) * pack.capacity
  setDrivePoint(point, setting, settled, state)
  const moving = point.state.groundSpeed > 0 || point.surplus > 0
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
    value: (_, at) => (setDrivePoint(point, setting, settled, at), point.surplus),
    stops: true,
  }
  return {
    slopes: (_, at, slope) => {
      setDrivePoint(point, setting, settled, at)
      setDriveSlopes(slope, point, setting, settled, at, moving)
    },
    from,
    to,
    start: [...state],
    absolute: floors,
    events: moving ? [reserve, tooHot, stop] : [reserve, tooHot, setOff],
  }
}
