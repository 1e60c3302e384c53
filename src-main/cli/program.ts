import { Command as Program, CommanderError, Option } from 'commander'
import { modelVersion } from '../../shared-engine/constants.ts'
import type { Command, OptionValues } from './command.ts'
import { commandLineMistake } from './command-line.ts'
import { exit } from './exit.ts'
import type { Io } from './io.ts'
import { mistake, report } from './trouble.ts'

/** Width of the help, like that of all text here. */
const width = 80

const summary = 'Will it hold, how fast, how hot: the drivetrain of an electric tracked machine.'
const more = `
Exit codes: 0 nothing is over its limit, 2 something is, 1 the build or the
command line could not be read, 130 stopped before there was a result.

Every number is an estimate, not an approval: follow the maker's limits and
your local rules.`

/**
 * Runs one command line.
 *
 * @param typed what the person typed behind `pitchline`
 * @returns the exit code
 */
export async function runCommandLine(
  typed: readonly string[],
  commands: readonly Command[],
  version: string,
  io: Io,
): Promise<number> {
  // In front of the command's name it parts nothing, and the parser would take what follows for no command.
  const first = typed.findIndex((word) => word !== '--')
  const words = first < 0 ? typed : typed.slice(first)
  const asked = words[0] === 'help' ? words[1] : undefined
  if (asked !== undefined && !commands.some(({ name }) => name === asked)) {
    // The parser would answer with the general help, as if nothing were wrong.
    const names = commands.map(({ name }) => name).join(', ')
    return report(io, 'pitchline', [mistake('unknown-command', { value: asked, allowed: names })])
  }
  if (words.length > 0 && words.every((word) => word === '--')) {
    const allowed = `pitchline <command>, of ${commands.map(({ name }) => name).join(', ')}`
    return report(io, 'pitchline', [mistake('missing-argument', { value: '<command>', allowed })])
  }
  let code: number = exit.within
  const program = new Program('pitchline').description(summary).addHelpText('after', more)
  program.version(
    `${version}, model version ${modelVersion}`,
    '-V, --version',
    'program and model: the same model, the same figures',
  )
  settle(program, io)
  for (const command of commands) {
    const sub = program.command(command.name).summary(command.summary).description(command.summary)
    settle(sub, io)
    for (const { name, about, optional } of command.arguments) {
      sub.argument(optional === true ? `[${name}]` : `<${name}>`, about)
    }
    for (const { flags, about, choices, standard } of command.options) {
      const option = new Option(flags, about)
      if (choices !== undefined) option.choices(choices)
      if (standard !== undefined) option.default(standard)
      sub.addOption(option)
    }
    sub.addHelpText('after', `\n${command.more}`)
    sub.action(async () => {
      code = await command.run(sub.args, sub.opts<OptionValues>(), io)
    })
  }
  try {
    await program.parseAsync(words, { from: 'user' })
    return code
  } catch (thrown) {
    if (!(thrown instanceof CommanderError)) throw thrown
    return refused(thrown, words, commands, io)
  }
}

/** Same manners for the program and each command: our width, our streams, mistakes thrown and not printed. */
function settle(program: Program, io: Io): void {
  program
    .exitOverride()
    .configureHelp({ helpWidth: width, subcommandTerm: (command) => command.name() })
    .configureOutput({
      writeOut: io.out,
      writeErr: io.err,
      getOutHelpWidth: () => width,
      getErrHelpWidth: () => width,
      outputError: () => {},
    })
    .showSuggestionAfterError(false)
}

/** Help and version end in a throw too; everything else is a mistake of the command line. */
function refused(
  thrown: CommanderError,
  words: readonly string[],
  commands: readonly Command[],
  io: Io,
): number {
  if (thrown.exitCode === 0) return exit.within
  if (thrown.code === 'commander.help') return words.length === 0 ? exit.unreadable : exit.within
  return report(io, 'pitchline', [commandLineMistake(thrown, words, commands)])
}
