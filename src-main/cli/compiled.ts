import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import path from 'node:path'
import { Script } from 'node:vm'
import type { Io } from './io.ts'

/** The command line in one file, and beside it what the build's V8 has made of that. */
const programFile = 'program.cjs'
export const compiledFile = 'program.compiled'

/** What main.ts gives. */
interface Program {
  readonly main: (words: readonly string[], io?: Io) => Promise<number>
}

interface CompiledProgram {
  readonly script: Script
  /** Runs the bundle as Node would run a CommonJS module; gives its exports. */
  readonly start: () => Program
}

type CommonJs = (
  exports: object,
  require: NodeJS.Require,
  module: object,
  file: string,
  folder: string,
) => void

/**
 * The command line as the build has compiled it (scripts/compiled.ts): to compile it anew at each start takes longer
 * than a check works. V8 takes the compiled form only where the same V8 with the same settings made it, of a source as
 * long; otherwise, under another Node, it compiles the source as ever. It looks no further: both files are the build's,
 * which takes the old compiled form away before it writes a new program.
 *
 * Node's own cache of compiled modules does the same from 22.1 on, but keeps it in a folder of the person's.
 *
 * @param folder where both files are
 */
export function compiledProgram(folder: string): CompiledProgram {
  const file = path.join(folder, programFile)
  const source = readFileSync(file, 'utf8')
  const cachedData = compiledIn(folder)
  const script = new Script(`(function(exports,require,module,__filename,__dirname){${source}\n})`, {
    filename: file,
    ...(cachedData === null ? {} : { cachedData }),
  })
  return {
    script,
    start: () => {
      const module = { exports: {} as Program }
      const run = script.runInThisContext() as CommonJs
      run(module.exports, createRequire(file), module, file, folder)
      return module.exports
    },
  }
}

/** `null` where there is none: an unfinished build still has to run. */
function compiledIn(folder: string): Buffer | null {
  try {
    return readFileSync(path.join(folder, compiledFile))
  } catch {
    return null
  }
}
