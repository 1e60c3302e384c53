import type { Build } from '../entries/schema.ts'
import { measure, type Measurement } from '../measure/measure.ts'
import { plottedReadings, type PlottedReadings } from '../measure/plotted.ts'
import { readReadingsValue } from '../measure/read.ts'
import { succeeded, type Result } from '../mistakes/mistake.ts'
import type { TestId } from '../reference/measurements.ts'
import type { JobKind } from './job.ts'

/** Readings as their file holds them, and the build that has what they do not give. */
interface MeasureInput {
  readonly test: TestId
  readonly readings: unknown
  readonly build: Build
}

/** What came of readings, and how to draw them. */
export interface Measured {
  readonly measurement: Measurement
  readonly plotted: PlottedReadings | null
}

type Outcome = Result<Measured> | null

/** A guided test worked out, as a job of one item: some tenths of a second where a curve is fitted to many readings. */
export const measureJob: JobKind<MeasureInput, Outcome, Outcome> = {
  name: 'measure',
  alone: true,
  sizeOf: () => 1,
  startWorker: (input) => {
    let found: Outcome = null
    return {
      work: () => {
        found = measured(input)
      },
      take: () => ({ part: found, transfer: [] }),
    }
  },
  startCollector: () => {
    let found: Outcome = null
    return {
      add: (part) => {
        found = part
      },
      outcome: () => found,
    }
  },
}

function measured({ test, readings, build }: MeasureInput): Result<Measured> {
  const read = readReadingsValue(test, readings, build)
  if (!read.ok) return read
  const measurement = measure(read.value, build)
  if (!measurement.ok) return measurement
  return succeeded({ measurement: measurement.value, plotted: plottedReadings(read.value, build) })
}
