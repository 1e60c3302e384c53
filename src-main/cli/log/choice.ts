import { readColumns, type ColumnsChoice } from '../../../shared-engine/log/columns/choice.ts'
import { refusalCodeOf } from '../../../shared-engine/log/refusal.ts'
import { sentenceOf } from '../../../shared-engine/mistakes/catalogue.ts'
import type { Mistake, Result } from '../../../shared-engine/mistakes/mistake.ts'
import { oneLine } from '../../../shared-engine/mistakes/shown.ts'
import { contentOf } from '../build-file.ts'
import type { OptionValues } from '../command.ts'
import { exit } from '../exit.ts'
import type { Io } from '../io.ts'

/** How a log is to be read, as the options say; null after what is wrong with them has been reported. */
export function choiceOf(options: OptionValues, io: Io): ColumnsChoice | null {
  const choice = fileOf(options['columns'], readColumns, io)
  return choice === null ? null : withTime(choice.value ?? {}, options['time'])
}

/** A choice with the column that an option names as the time, by heading or number. */
function withTime(choice: ColumnsChoice, column: string | boolean | undefined): ColumnsChoice {
  if (typeof column !== 'string') return choice
  return { ...choice, columns: { ...choice.columns, [column]: { channel: 'time' } } }
}

/** What a file that an option names holds: null in it without the option, null alone after its mistakes were reported. */
export function fileOf<T>(
  file: string | boolean | undefined,
  reader: (bytes: Uint8Array) => Result<T>,
  io: Io,
): { readonly value: T | null } | null {
  if (typeof file !== 'string') return { value: null }
  let mistakes: readonly Mistake[] = []
  // Its mistakes are reported here, with their codes; those of the file itself by the reader of files.
  const value = contentOf<{ readonly found: T | null }>(
    file,
    (bytes) => {
      const read = reader(bytes)
      if (!read.ok) mistakes = read.mistakes
      return { ok: true, value: { found: read.ok ? read.value : null } }
    },
    io,
  )
  if (mistakes.length > 0) refused(file, mistakes, io)
  return value === null || mistakes.length > 0 ? null : { value: value.found }
}

/** Each mistake on a line, with its code where programs may want it. */
export function refused(file: string, mistakes: readonly Mistake[], io: Io): number {
  const where = file === '-' ? 'standard input' : oneLine(file, 200)
  for (const one of mistakes) {
    const code = refusalCodeOf(one)
    io.err(`${where}: ${sentenceOf(one)}${code === null ? '' : ` [${code}]`}\n`)
  }
  return exit.unreadable
}
