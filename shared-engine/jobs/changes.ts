import type { Build } from '../entries/schema.ts'
import { changesBetween } from '../log/changes/changes.ts'
import type { ToldRun } from '../log/changes/course.ts'
import { changesFromBuild } from '../log/changes/from-build.ts'
import type { Changes } from '../log/changes/result.ts'
import type { ColumnsChoice } from '../log/columns/choice.ts'
import { LogReading } from '../log/log.ts'
import { failed, succeeded, type Mistake, type Result } from '../mistakes/mistake.ts'
import type { JobKind } from './job.ts'

/** A log and the build that it was driven with. */
interface DrivenLog {
  readonly build: Build
  readonly bytes: Uint8Array
  readonly choice: ColumnsChoice
}

/** A run, and the one before it; null: the build instead. */
interface ChangesInput {
  readonly before: DrivenLog | null
  readonly after: DrivenLog
}

/** Why a comparison could not be made: which log, and its mistakes. */
type ChangesFound = Result<Changes>

/** Two runs, or a run and its build, compared in a thread: the steps of the logs, then the comparison. */
export const changesJob: JobKind<ChangesInput, ChangesFound | null, ChangesFound | null> = {
  name: 'changes',
  alone: true,
  sizeOf: (input) => readingsOf(input).reduce((sum, { steps }) => sum + steps, 1),
  startWorker: (input) => {
    const readings = readingsOf(input)
    let found: ChangesFound | null = null
    return {
      work: (from, to) => {
        for (let item = from; item < to; item += 1) {
          const next = readings.find(({ done }) => !done)
          if (next === undefined) found = comparedBy(readings)
          else next.step()
        }
      },
      take: () => ({ part: found, transfer: [] }),
    }
  },
  startCollector: () => {
    let found: ChangesFound | null = null
    return {
      add: (part) => {
        found = part ?? found
      },
      outcome: () => found,
    }
  },
}

const readingsOf = ({ before, after }: ChangesInput): readonly LogReading[] =>
  (before === null ? [after] : [before, after]).map((one) => new LogReading({ ...one, alarms: null }))

function comparedBy(readings: readonly LogReading[]): ChangesFound {
  const runs: ToldRun[] = []
  const mistakes: Mistake[] = []
  for (const reading of readings) {
    const [log, result] = [reading.read(), reading.result()]
    if (log !== null && result?.ok === true) runs.push({ log, episodes: result.value.episodes })
    else if (result?.ok === false) mistakes.push(...result.mistakes)
  }
  const [first, second] = runs
  if (mistakes.length > 0 || first === undefined) return failed(mistakes)
  return succeeded(second === undefined ? changesFromBuild(first) : changesBetween(first, second))
}
