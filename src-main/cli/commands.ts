import type { Command } from './command.ts'
import { alarms } from './alarms/command.ts'
import { check } from './check/command.ts'
import { compare } from './compare/command.ts'
import { explain } from './explain/command.ts'
import { fit } from './fit/command.ts'
import { measure } from './measure/command.ts'
import { log } from './log/command.ts'
import { merge } from './merge/command.ts'
import { newBuild } from './new/command.ts'
import { drive } from './drive/command.ts'
import { report } from './report/command.ts'
import { remedy } from './remedy/command.ts'
import { search } from './search/command.ts'
import { sweep } from './sweep/command.ts'
import { validate } from './validate/command.ts'
import { uncertainty } from './uncertainty/command.ts'

/** Every command, in the order of the help. To add one: a file like check.ts, and a line here. */
export const commands: readonly Command[] = [
  check,
  explain,
  search,
  sweep,
  compare,
  uncertainty,
  merge,
  remedy,
  drive,
  alarms,
  report,
  measure,
  log,
  fit,
  validate,
  newBuild,
]
