import { bracketedRoot } from '../numeric/root.ts'
import type { Stepper } from '../numeric/stepper.ts'
import { hottestWinding, place, spinUpShare } from './drive.ts'
import { leastSpeedOf, type DriveModel, type SettledRow } from './model.ts'
import { setMoment, type Phase, type Workplace } from './phase.ts'

/** What may happen inside a step. `strong` alone does not end the phase: what follows only spins the track up. */
const crossingNames = ['reserve', 'too-hot', 'stop', 'spin', 'catch', 'strong'] as const

type CrossingName = (typeof crossingNames)[number]

/** What ends a phase inside a step, and at which part of it, 0 to 1. */
export interface Crossing {
  readonly name: CrossingName
  readonly part: number
}

/** Margins at the start, in the middle and at the end of a step, each by name; NaN where it does not apply. */
const margins = [0, 1, 2].map(() => new Float64Array(crossingNames.length))

/** Parts of the step at which these are. */
const looks = [0, 0.5, 1] as const

/** What looks for crossings in steps, with memory of its own. */
export class CrossingSeeker {
  readonly #state: Float64Array
  #started = false
  readonly #workplace: Workplace
  readonly #model: DriveModel
  /** Part at which the force passed what only spins the track up, of the step last looked at. */
  strongAt: number | null = null

  constructor(workplace: Workplace, model: DriveModel, length: number) {
    this.#workplace = workplace
    this.#model = model
    this.#state = new Float64Array(length)
  }

  /** Begins a phase: the start of its first step is looked at anew. */
  restart(): void {
    this.#started = false
  }

  /**
   * What happens first in the step on trial: the charge's end, too hot a winding, rest, the track loose or caught. Where it
   * is nothing, the workplace is left at the step's end.
   */
  first(stepper: Stepper, row: SettledRow, phase: Phase): Crossing | null {
    this.strongAt = null
    this.#setMargins(stepper, row, phase)
    let first: Crossing | null = null
    for (let at = 0; at < crossingNames.length; at += 1) {
      const name = crossingNames[at] as CrossingName
      const part = this.#partOf(stepper, row, phase, name, at)
      if (part === null) continue
      if (name === 'strong') this.strongAt = part
      else if (first === null || part < first.part) first = { name, part }
    }
    return first
  }

  /** Start, middle and end; the start is the end of the step before. */
  #setMargins(stepper: Stepper, row: SettledRow, phase: Phase): void {
    const [start, middle, end] = margins as [Float64Array, Float64Array, Float64Array]
    if (this.#started) start.set(end)
    else this.#lookAt(stepper, row, phase, 0, start)
    this.#started = true
    this.#lookAt(stepper, row, phase, 0.5, middle)
    this.#lookAt(stepper, row, phase, 1, end)
  }

  #lookAt(stepper: Stepper, row: SettledRow, phase: Phase, part: number, into: Float64Array): void {
    this.#look(stepper, row, phase, part)
    for (let at = 0; at < crossingNames.length; at += 1) {
      into[at] = this.#margin(crossingNames[at] as CrossingName, row, phase)
    }
  }

  #look(stepper: Stepper, row: SettledRow, phase: Phase, part: number): void {
    if (part === 0) this.#state.set(stepper.state)
    else if (part === 1) this.#state.set(stepper.end)
    else stepper.within(part, this.#state)
    setMoment(this.#workplace, this.#model, row, phase, this.#state)
  }

  /** First part at which a margin passes 0: downwards, or for `strong` either way. */
  #partOf(stepper: Stepper, row: SettledRow, phase: Phase, name: CrossingName, at: number): number | null {
    for (let look = 1; look < looks.length; look += 1) {
      const before = (margins[look - 1] as Float64Array)[at] as number
      const after = (margins[look] as Float64Array)[at] as number
      const falls = before > 0 && after <= 0
      if (!falls && !(name === 'strong' && before < 0 && after >= 0)) continue
      const value = (part: number) => {
        this.#look(stepper, row, phase, part)
        return this.#margin(name, row, phase)
      }
      const [from, to] = [looks[look - 1] as number, looks[look] as number]
      return bracketedRoot(value, from, to) ?? to
    }
    return null
  }

  /** Positive until it happens; NaN where it cannot. */
  #margin(name: CrossingName, row: SettledRow, phase: Phase): number {
    const [model, state] = [this.#model, this.#state]
    const { moment } = this.#workplace
    const { gripThrust } = row.ground.footing
    const loose = 'throttle' in row.ask && model.machine.ground.model === 'coefficient'
    switch (name) {
      case 'reserve':
        return model.machine.pack.usable - (state[place.chargeDrawn] as number)
      case 'too-hot':
        return model.heat.winding === null ? NaN : hottestWinding - (state[place.winding] as number)
      case 'stop':
        return phase === 'standing' ? NaN : (state[place.speed] as number) - leastSpeedOf(row)
      case 'spin':
        return phase === 'moving' && loose ? gripThrust - moment.thrust : NaN
      case 'catch':
        return phase === 'spinning' ? (state[place.belt] as number) - moment.speed / (1 - model.slip) : NaN
      case 'strong':
        return phase === 'standing' ? NaN : spinUpShare * gripThrust - moment.force
    }
  }
}
