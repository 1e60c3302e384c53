import type { Io } from './io.ts'

/** A word that a command takes, in the order of the command line. */
interface CommandArgument {
  readonly name: string
  readonly about: string
  /** May be left out; only the last one may. */
  readonly optional?: true
}

/** A switch, or an option that takes one of a few words. */
interface CommandOption {
  /** As typed: `--json`, or `--units <system>`. */
  readonly flags: string
  readonly about: string
  readonly choices?: readonly string[]
  readonly standard?: string
}

/** Values of a command's options by name; a switch that was not given is absent. */
export type OptionValues = Readonly<Record<string, string | boolean | undefined>>

/**
 * One command of `pitchline`, in a file of its own that is listed in commands.ts.
 *
 * The file itself stays light, since `--help` loads all of them: what does the work is imported inside `run`.
 */
export interface Command {
  readonly name: string
  /** One line, for the list of commands. */
  readonly summary: string
  readonly arguments: readonly CommandArgument[]
  readonly options: readonly CommandOption[]
  /** What stands below the options in the command's help: examples, exit codes. */
  readonly more: string
  /** Does the work; gives the exit code (exit.ts). Foreseen trouble is reported through `io`, not thrown. */
  readonly run: (words: readonly string[], options: OptionValues, io: Io) => Promise<number>
}

/** The option that every command with a result for programs takes. */
export const jsonOption: CommandOption = { flags: '--json', about: 'print the result as JSON, in SI units' }

/** The option of commands whose result is a table. */
export const csvOption: CommandOption = { flags: '--csv', about: 'print the result as a table, in SI units' }

/** The option of every command whose text shows quantities. */
export const unitsOption: CommandOption = {
  flags: '--units <system>',
  about: 'units of the text',
  choices: ['metric', 'imperial'],
  standard: 'metric',
}
