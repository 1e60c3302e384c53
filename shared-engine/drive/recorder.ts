import type { DriveModel, SettledRow } from './model.ts'
import type { Moment } from './moment.ts'
import { emptyReading, peakNames, setReading, type PeakName, type Reading } from './reading.ts'
import { SampleStore } from './series.ts'

/** The most of a drive, of volts the least, and its moment. */
export interface Peak {
  readonly value: number
  readonly seconds: number
}

/** What is taken down along a drive: samples and peaks. */
export class Recorder {
  readonly samples = new SampleStore()
  readonly #model: DriveModel
  readonly #peaks = new Map<PeakName, { value: number; seconds: number; sample: number }>()
  readonly #reading: Reading = emptyReading()

  constructor(model: DriveModel) {
    this.#model = model
  }

  /** Takes down an instant; gives what counts of it. */
  add(seconds: number, state: Float64Array, moment: Moment, row: SettledRow): Readonly<Reading> {
    const sample = this.samples.length
    this.samples.add(seconds, state, moment)
    const reading = this.#reading
    setReading(reading, state, moment, row, this.#model)
    for (const name of peakNames) {
      const value = reading[name]
      if (Number.isNaN(value)) continue
      const peak = this.#peaks.get(name)
      if (peak === undefined) this.#peaks.set(name, { value, seconds, sample })
      else if (name === 'packVolts' ? value < peak.value : value > peak.value) {
        peak.value = value
        peak.seconds = seconds
        peak.sample = sample
      }
    }
    return reading
  }

  /** The peak of a name; null where no moment counted. */
  peak(name: PeakName): Peak | null {
    const peak = this.#peaks.get(name)
    return peak === undefined ? null : { value: peak.value, seconds: peak.seconds }
  }

  /** Places of the samples that hold a peak. */
  get peakSamples(): ReadonlySet<number> {
    return new Set([...this.#peaks.values()].map(({ sample }) => sample))
  }
}
