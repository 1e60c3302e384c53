/** What was done to the data of a log, by name. */
export const repairCodes = [
  'cut-tail',
  'short-row',
  'extra-cells',
  'width',
  'repeated-header',
  'text-row',
  'time-unit',
  'no-time',
  'merged',
  'coarse-time',
  'midnight',
  'repeated-time',
  'backward-time',
  'reset',
  'pause',
  'gap',
  'rpm-scale',
  'unreadable',
  'signed-wrap',
  'zero-row',
  'impossible',
  'dropout',
  'spike',
  'frozen',
  'stuck',
  'counter-wrap',
  'counter-reset',
] as const
export type RepairCode = (typeof repairCodes)[number]

/** Repairs of values that a person may take back: the file’s own numbers stand then. Those of counters go together. */
export const undoableRepairs = [
  'signed-wrap',
  'zero-row',
  'impossible',
  'dropout',
  'spike',
  'frozen',
  'stuck',
  'counter-wrap',
] as const
export type UndoableRepair = (typeof undoableRepairs)[number]

/** The repair to take back for a code; null where its rows or times could not be used otherwise. */
export function undoOf(code: RepairCode): UndoableRepair | null {
  return undoableRepairs.find((one) => one === (code === 'counter-reset' ? 'counter-wrap' : code)) ?? null
}

/** One kind of repair to one channel: how often, and where first. */
export interface Repair {
  readonly code: RepairCode
  /** Channel whose samples it concerns; null for whole rows. */
  readonly channel: string | null
  readonly count: number
  /** Line of the file, from 1. */
  readonly firstRow: number
}

/** Counts every repair: nothing of a log is left out or changed without a line here. */
export class Repairs {
  readonly #found = new Map<
    string,
    { code: RepairCode; channel: string | null; count: number; firstRow: number }
  >()

  /** @param line of the file, from 1 */
  add(code: RepairCode, channel: string | null, line: number, count = 1): void {
    const key = `${code} ${channel ?? ''}`
    const known = this.#found.get(key)
    if (known === undefined) this.#found.set(key, { code, channel, count, firstRow: line })
    else {
      known.count += count
      known.firstRow = Math.min(known.firstRow, line)
    }
  }

  /** By code, then channel, in code-unit order. */
  list(): readonly Repair[] {
    return [...this.#found.entries()]
      .sort(([one], [other]) => (one < other ? -1 : 1))
      .map(([, repair]) => repair)
  }
}
