import type { Command } from './command.ts'
import { check } from './check.ts'
import { compare } from './compare.ts'
import { explain } from './explain.ts'
import { newBuild } from './new.ts'
import { search } from './search.ts'
import { sweep } from './sweep.ts'

/** Every command, in the order of the help. To add one: a file like check.ts, and a line here. */
export const commands: readonly Command[] = [check, explain, search, sweep, compare, newBuild]
