import { evaluate } from '../cases/evaluate.ts'
import { Evaluation } from '../cases/evaluation.ts'
import { machineOf } from '../machine/machine.ts'
import type { Build } from '../entries/schema.ts'
import { Stepper } from '../numeric/stepper.ts'
import { place, stateNames, type Pattern } from './drive.ts'
import { driveModelOf, type DriveModel, type Held, type SettledRow } from './model.ts'
import { firstPhase, setMoment, Workplace, type Phase } from './phase.ts'
import { Recorder } from './recorder.ts'
import { resultOf, type DriveRun } from './result.ts'
import { setDriveSlopes } from './slopes.ts'
import { CrossingSeeker, type Crossing } from './crossing.ts'
import { emptyReading, setReading } from './reading.ts'
import { StarvingWatch } from './starving.ts'
import { Watcher } from './watch.ts'

/** What may be set for a drive. */
export interface DriveOptions {
  /** Largest error of a step, relative to each state. */
  readonly relative?: number
  /** Steps after which it is not followed further; {@link mostSteps} where absent. */
  readonly steps?: number
  /** What does not change, for comparison with closed forms. */
  readonly held?: Held
  /** States to start from in place of a machine that stood outside. */
  readonly start?: Readonly<Partial<Record<(typeof stateNames)[number], number>>>
}

/** How a drive ended. */
export type DriveEnd = 'finished' | 'reserve' | 'too-hot' | 'too-stiff' | 'too-long' | 'stopped'

/** Steps of a whole drive, tried ones included. The rest is not followed. */
export const mostSteps = 2_000_000

/** Setting off, slipping and stopping more often than this in one row is a bug of ours, not a drive. */
const mostPhases = 2000

/** Parts of the drive's time that a step may not pass over, so that a plot has no gaps. */
const leastSteps = 400

/**
 * Drives a pattern through time with charge, temperatures, speed and, while the track spins, the belt as states, and the
 * books of where the energy goes.
 *
 * Each row starts from where the one before it ended; the drive ends with its last row, or where the charge reaches the
 * reserve, the winding passes 300 °C, or {@link mostSteps} are used up.
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
  readonly #model: DriveModel
  readonly #workplace = new Workplace()
  readonly #stepper: Stepper
  readonly #recorder: Recorder
  readonly #watcher: Watcher
  readonly #starving: StarvingWatch
  readonly #seeker: CrossingSeeker
  readonly #between = emptyReading()
  readonly #partState = new Float64Array(stateNames.length)
  readonly #betweenState = new Float64Array(stateNames.length)
  readonly #options: DriveOptions
  #row = -1
  #rowEnd = 0
  #phase: Phase = 'standing'
  #phasesOfRow = 0
  #end: DriveEnd | null = null

  constructor(build: Build, pattern: Pattern, options: DriveOptions = {}) {
    this.#build = build
    this.#pattern = pattern
    this.#options = options
    const machine = machineOf(build)
    const evaluation = new Evaluation()
    evaluate(evaluation, machine)
    const { top } = evaluation
    this.#model = driveModelOf(machine, pattern.rows, top.exists ? top.groundSpeed : NaN, options.held)
    const start = startState(this.#model, options.start)
    this.#stepper = new Stepper(start, () => undefined, options.relative ?? 1e-8, floors)
    this.#recorder = new Recorder(this.#model)
    this.#watcher = new Watcher(this.#model)
    this.#starving = new StarvingWatch(this.#model, start)
    this.#seeker = new CrossingSeeker(this.#workplace, this.#model, stateNames.length)
    this.seconds = pattern.rows.reduce((sum, row) => sum + row.seconds, 0)
  }

  /** Steps tried, refused ones with them. */
  get tried(): number {
    return this.#stepper.tried
  }

  /** How far it is, s. */
  get time(): number {
    return this.#stepper.time
  }

  get isOver(): boolean {
    return this.#end !== null
  }

  /** Goes on until a time is passed, or to the drive's end. */
  until(time: number): void {
    while (this.#end === null && this.time < time) {
      if (this.#row < 0 || this.time >= this.#rowEnd) this.#nextRow()
      else this.#advance()
    }
  }

  /** What came of it; of one that is not over, what there is so far. */
  result(): DriveRun {
    const { state, time } = this.#stepper
    return resultOf({
      build: this.#build,
      pattern: this.#pattern,
      model: this.#model,
      recorder: this.#recorder,
      watcher: this.#watcher,
      starved: this.#starving.found,
      state,
      seconds: time,
      end: this.#end ?? 'stopped',
      lastRow: this.#model.rows[Math.max(0, Math.min(this.#row, this.#model.rows.length - 1))] as SettledRow,
    })
  }

  #settled(): SettledRow {
    return this.#model.rows[this.#row] as SettledRow
  }

  #nextRow(): void {
    const before = this.#model.rows[this.#row]
    this.#row += 1
    const row = this.#model.rows[this.#row]
    if (row === undefined) {
      this.#row -= 1
      this.#end = 'finished'
      return
    }
    const { state } = this.#stepper
    if (before !== undefined) {
      const speed = state[place.speed] as number
      state[place.loads] =
        (state[place.loads] as number) + ((row.ground.mass - before.ground.mass) * speed * speed) / 2
    }
    this.#rowEnd = this.#row === this.#model.rows.length - 1 ? this.seconds : this.#rowEnd + row.row.seconds
    this.#phasesOfRow = 0
    this.#enter(firstPhase(this.#workplace, this.#model, row, this.#phase, state))
  }

  /** Begins a phase: its slopes, and what is recorded of its first moment. */
  #enter(phase: Phase): void {
    this.#phase = phase
    this.#phasesOfRow += 1
    const [row, workplace, model] = [this.#settled(), this.#workplace, this.#model]
    const { state } = this.#stepper
    if (phase === 'standing') state[place.speed] = 0
    this.#stepper.restart((_, at, slope) => {
      setMoment(workplace, model, row, phase, at)
      setDriveSlopes(slope, workplace.moment, model, row, workplace.propulsion, at)
    }, 1e-3)
    this.#seeker.restart()
    setMoment(workplace, model, row, phase, state)
    this.#record(state, this.time)
  }

  /** Takes down the workplace's instant; `from` is where the step on trial began, if bounds may have been passed inside it. */
  #record(state: Float64Array, time: number, from = time): void {
    const reading = this.#recorder.add(time, state, this.#workplace.moment, this.#settled())
    this.#starving.look(time, state, this.#workplace.moment, this.#settled())
    this.#watcher.look(from, time, reading, (between) => this.#readingAt(between))
  }

  /** What counts at a time inside the step on trial. */
  #readingAt(time: number) {
    const [stepper, state] = [this.#stepper, this.#betweenState]
    stepper.within((time - stepper.time) / stepper.step, state)
    setMoment(this.#workplace, this.#model, this.#settled(), this.#phase, state)
    setReading(this.#between, state, this.#workplace.moment, this.#settled(), this.#model)
    return this.#between
  }

  #advance(): void {
    const stepper = this.#stepper
    const left = this.#rowEnd - stepper.time
    if (stepper.tried >= (this.#options.steps ?? mostSteps)) {
      this.#end = 'too-long'
      return
    }
    if (this.#phasesOfRow > mostPhases || !stepper.advance(Math.min(left, this.seconds / leastSteps))) {
      this.#end = 'too-stiff'
      return
    }
    const crossing = this.#seeker.first(stepper, this.#settled(), this.#phase)
    const part = crossing?.part ?? 1
    const { strongAt } = this.#seeker
    if (strongAt !== null && strongAt <= part) this.#recordPart(strongAt)
    if (crossing !== null) {
      this.#recordPart(part)
      this.#cross(crossing)
      return
    }
    if (strongAt === null) this.#record(stepper.end, stepper.time + stepper.step, stepper.time)
    else this.#recordPart(1)
    const last = stepper.step >= left
    stepper.commit()
    if (last) stepper.time = this.#rowEnd
  }

  /** Takes down an instant inside the step on trial. */
  #recordPart(part: number): void {
    const [stepper, state] = [this.#stepper, this.#partState]
    if (part === 1) state.set(stepper.end)
    else stepper.within(part, state)
    setMoment(this.#workplace, this.#model, this.#settled(), this.#phase, state)
    this.#record(state, stepper.time + part * stepper.step, stepper.time)
  }

  #cross({ name, part }: Crossing): void {
    const stepper = this.#stepper
    stepper.commitPart(part)
    const { state } = stepper
    if (name === 'reserve' || name === 'too-hot') this.#end = name
    else if (name === 'stop') {
      state[place.speed] = 0
      this.#enter(this.#phase === 'spinning' ? 'spinning' : 'standing')
    } else if (name === 'spin') {
      state[place.belt] = (state[place.speed] as number) / (1 - this.#model.slip)
      this.#enter('spinning')
    } else this.#enter('moving')
  }
}

/** A machine that stood outside at rest, its pack as warm as the service says. */
function startState(model: DriveModel, given: DriveOptions['start'] = {}): Float64Array {
  const { machine, heat } = model
  const { airTemperature } = machine.ground
  const state = new Float64Array(stateNames.length)
  state[place.winding] = heat.winding === null ? machine.service.windingTemperature : airTemperature
  state[place.case] = state[place.controller] = state[place.coolant] = airTemperature
  state[place.packTemperature] = machine.service.packTemperature
  for (const name of stateNames) state[place[name]] = given[name] ?? (state[place[name]] as number)
  return state
}

/** Errors that matter to nobody: 10 nA·s, 1 nK, 0.1 nm/s, 10 µJ. */
const floors = Float64Array.from(stateNames, (name) =>
  ['speed', 'distance', 'belt', 'height'].includes(name)
    ? 1e-10
    : name === 'chargeDrawn'
      ? 1e-8
      : ['winding', 'case', 'controller', 'coolant', 'packTemperature'].includes(name)
        ? 1e-9
        : 1e-5,
)
