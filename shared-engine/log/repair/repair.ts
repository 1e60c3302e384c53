import type { LogData } from '../data.ts'
import type { LogModel } from '../model.ts'
import type { Repairs } from '../repairs.ts'

/** What a repair works on. */
export interface RepairTask {
  readonly data: LogData
  readonly model: LogModel
  readonly repairs: Repairs
  /** Logged rpm × this = motor rpm; what the heading's unit brings is in it. */
  readonly rpmFactor: number
  /** The rpm is not what its heading says, but was read by another scale. */
  readonly rpmRescaled: boolean
  /** Rows whose cells were all zeros, or the same as before: filled by their steps, in order. */
  readonly zeroRows: number[]
  readonly frozenRows: number[]
}

/** Line of the file of a row. */
export function lineOf({ data }: RepairTask, row: number): number {
  return data.timeline.lines[row] ?? 0
}
