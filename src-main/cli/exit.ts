import { isDecisive } from '../../shared-engine/limits/group.ts'
import type { LimitRow } from '../../shared-engine/limits/ledger.ts'

/** What the process says to the shell; the same for every command. */
export const exit = {
  /** Done, and nothing is over its limit. */
  within: 0,
  /** The build, a file or the command line could not be read. */
  unreadable: 1,
  /** Done, and something is over its limit. */
  over: 2,
  /** Stopped by Ctrl-C before there was a result; 128 and the signal's number [common practice, no source]. */
  stopped: 130,
} as const

/** The code of a ledger: whether something in it is over that ordinary use meets; a mishap alone is said, no more. */
export function exitOf(limits: readonly Pick<LimitRow, 'standing' | 'group'>[]): number {
  const isOver = limits.some(({ standing, group }) => standing === 'over' && isDecisive(group))
  return isOver ? exit.over : exit.within
}
