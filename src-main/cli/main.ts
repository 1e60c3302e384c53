import { commands } from './commands.ts'
import { exit } from './exit.ts'
import { processIo } from './io.ts'
import { runCommandLine } from './program.ts'

export { writtenBy } from './io.ts'

/**
 * The whole command line behind one door: what pitchline.ts starts, and what the build runs once to have it compiled.
 *
 * @param words what the person typed behind `pitchline`
 * @returns the exit code; never rejects
 */
export async function main(words: readonly string[], io = processIo()): Promise<number> {
  try {
    return await runCommandLine(words, commands, __PITCHLINE_VERSION__, io)
  } catch (bug) {
    const story = bug instanceof Error ? (bug.stack ?? bug.message) : String(bug)
    io.err(`pitchline: the program made a mistake of its own; please report this:\n${story}\n`)
    return exit.unreadable
  }
}
