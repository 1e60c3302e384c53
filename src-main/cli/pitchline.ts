#!/usr/bin/env node
import { commands } from './commands.ts'
import { exit } from './exit.ts'
import { processIo } from './io.ts'
import { runCommandLine } from './program.ts'

const io = processIo()
try {
  // Set, not called: what was written to a pipe still has to leave.
  process.exitCode = await runCommandLine(process.argv.slice(2), commands, __PITCHLINE_VERSION__, io)
} catch (bug) {
  const story = bug instanceof Error ? (bug.stack ?? bug.message) : String(bug)
  io.err(`pitchline: the program made a mistake of its own; please report this:\n${story}\n`)
  process.exitCode = exit.unreadable
}
