import type { Command } from './command.ts'
import { alarms } from './alarms.ts'
import { check } from './check.ts'
import { compare } from './compare.ts'
import { explain } from './explain.ts'
import { newBuild } from './new.ts'
import { pattern } from './pattern.ts'
import { remedy } from './remedy.ts'
import { search } from './search.ts'
import { sweep } from './sweep.ts'
import { uncertainty } from './uncertainty.ts'

/** Every command, in the order of the help. To add one: a file like check.ts, and a line here. */
export const commands: readonly Command[] = [
  check,
  explain,
  search,
  sweep,
  compare,
  uncertainty,
  remedy,
  pattern,
  alarms,
  newBuild,
]
