import type { CommanderError } from 'commander'
import type { Mistake } from '../../shared-engine/mistakes/mistake.ts'
import type { Command } from './command.ts'
import { mistake } from './trouble.ts'

/** What is wrong with a command line, in the catalogue's words; the parser's message is only searched for the culprit. */
export function commandLineMistake(
  { code, message }: CommanderError,
  words: readonly string[],
  commands: readonly Command[],
): Mistake {
  const names = commands.map((command) => command.name).join(', ')
  const command = commands.find(({ name }) => words.includes(name))
  const culprit = /'([^']*)'/.exec(message)?.[1] ?? ''
  const usage = command === undefined ? `pitchline <command>, of ${names}` : usageOf(command)
  switch (code) {
    case 'commander.unknownCommand':
      return mistake('unknown-command', { value: culprit, allowed: names })
    case 'commander.unknownOption':
      return mistake('unknown-option', { value: culprit, allowed: optionsOf(command) })
    case 'commander.missingArgument':
      return mistake('missing-argument', { value: `<${culprit}>`, allowed: usage })
    case 'commander.excessArguments':
      return mistake('too-many-arguments', { value: surplusOf(words, command), allowed: usage })
    case 'commander.optionMissingArgument':
      return mistake('missing-argument', { value: `a value for ${culprit}`, allowed: usage })
    case 'commander.invalidArgument':
      return wrongChoice(message, culprit, command)
    default:
      return mistake('option-not-understood', { path: 'the command line', value: `not understood (${code})` })
  }
}

const usageOf = (command: Command) =>
  ['pitchline', command.name, ...command.arguments.map(({ name }) => `<${name}>`), '[options]'].join(' ')

const optionsOf = (command: Command | undefined) =>
  [
    ...(command?.options ?? []).map(({ flags }) => flags),
    ...(command === undefined ? ['--version'] : []),
    '--help',
  ].join(', ')

/** The first word that no argument takes. */
function surplusOf(words: readonly string[], command: Command | undefined): string {
  const plain = words.filter((word) => !word.startsWith('--'))
  return plain[1 + (command?.arguments.length ?? 0)] ?? plain.at(-1) ?? ''
}

function wrongChoice(message: string, flags: string, command: Command | undefined): Mistake {
  const option = command?.options.find((one) => one.flags === flags)
  const value = /argument '([^']*)' is invalid/.exec(message)?.[1] ?? ''
  return mistake('not-one-of', {
    path: flags.split(' ')[0] ?? flags,
    value: `"${value}"`,
    allowed: option?.choices?.join(', ') ?? '',
  })
}
