import { check } from '../../../shared-engine/check.ts'
import { readBuild } from '../../../shared-engine/entries/read.ts'
import type { UnitSystem } from '../../../shared-engine/units/kinds.ts'
import { readingOf } from '../build-file.ts'
import { checkedJson } from './json.ts'
import { exit, exitOf } from '../exit.ts'
import type { Io } from '../io.ts'

/** How a check is printed. */
export interface CheckManner {
  readonly json: boolean
  readonly system: UnitSystem
}

/** Checks one build and prints figures and limits; gives the exit code. */
export async function checkBuild(file: string, manner: CheckManner, io: Io): Promise<number> {
  const build = readingOf(file, readBuild, io)
  if (build === null) return exit.unreadable
  const found = check(build.value)
  const checked = { ...found, notes: [...build.notes, ...found.notes] }
  if (manner.json) {
    io.out(checkedJson(checked))
  } else {
    const { checkedText } = await import('./text.ts')
    io.out(checkedText(checked, manner.system))
  }
  return exitOf(checked.limits)
}
