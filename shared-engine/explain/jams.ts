import { evaluate } from '../cases/evaluate.ts'
import { Evaluation } from '../cases/evaluation.ts'
import { setStopPulls } from '../cases/jam.ts'
import { setTrackLoad } from '../cases/track-loads.ts'
import { setTrainDuties } from '../cases/train-duty.ts'
import type { LimitId } from '../limits/id.ts'
import { Ledger, limitAt, type LimitRow } from '../limits/ledger.ts'
import { measureLedger } from '../limits/measure.ts'
import type { Machine } from '../machine/parts.ts'

/** Stops of one machine at any speed, on one evaluation that is changed for each. */
export class Jams {
  readonly #machine: Machine
  readonly #e = new Evaluation()
  readonly #ledger = new Ledger()

  constructor(machine: Machine) {
    this.#machine = machine
    evaluate(this.#e, machine)
  }

  /** m/s of the belt at top speed, NaN without one, and running free at full charge. */
  get topSpeed(): number {
    return this.#e.top.exists ? this.#e.top.beltSpeed : NaN
  }
  get freeSpeed(): number {
    return this.#e.freeLoad.beltSpeed
  }

  /** Pull of one loop at the peak of a stop from a belt speed, N; NaN where no stop is judged. */
  pullAt(speed: number): number {
    this.#hold(speed)
    return this.#e.stopLoad.pull
  }

  /**
   * The belt speed at which a limit of a jam is just reached: 0 where it is passed at any; null where not even the
   * fastest does.
   *
   * @param fastest m/s
   */
  reachedAt(id: LimitId, fastest: number): number | null {
    return this.#margin(id, fastest) < 0 ? this.#speedAt(id, fastest) : null
  }

  /** The speed at which a limit that is over is just reached: 0 where it is passed at any. */
  speedAt({ id, case: name }: LimitRow): number {
    return this.#speedAt(id, name === 'stop' ? this.#e.top.beltSpeed : this.#e.freeLoad.beltSpeed)
  }

  #speedAt(id: LimitId, fastest: number): number {
    let low = 0
    let high = fastest
    if (this.#margin(id, 0) < 0) return 0
    for (let step = 0; step < 50; step += 1) {
      const middle = (low + high) / 2
      if (this.#margin(id, middle) < 0) high = middle
      else low = middle
    }
    return high
  }

  /** Both stops from one speed. */
  #hold(speed: number): void {
    const [e, machine] = [this.#e, this.#machine]
    const last = machine.stages.length
    for (const pulls of [e.pulls.stop, e.pulls.stopFree])
      setStopPulls(pulls, e.jam, machine, e.motorPull, speed)
    setTrackLoad(e.stopLoad, machine, e.pulls.stop[last] ?? NaN, 0, 1)
    setTrackLoad(e.stopFreeLoad, machine, e.pulls.stopFree[last] ?? NaN, 0, 1)
  }

  #margin(id: LimitId, speed: number): number {
    const [e, machine] = [this.#e, this.#machine]
    this.#hold(speed)
    setTrainDuties(e, machine)
    measureLedger(this.#ledger, e, machine)
    for (let row = 0; row < this.#ledger.count; row += 1) {
      if (limitAt(this.#ledger, row)?.id === id) return this.#ledger.margin[row] ?? NaN
    }
    return NaN
  }
}
