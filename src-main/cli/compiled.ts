import { isAscii } from 'node:buffer'
import { readFileSync } from 'node:fs'
import path from 'node:path'
import { Script } from 'node:vm'
import type { Io } from './io.ts'

/** Where the command line begins; what it requires of its own stands beside it. */
const programFile = 'program.cjs'

/** What main.ts gives. */
interface Program {
  readonly main: (words: readonly string[], io?: Io) => Promise<number>
}

interface CompiledProgram {
  /** What has been read so far, by the file's name. */
  readonly scripts: ReadonlyMap<string, Script>
  /** Runs the program's file as Node would run a CommonJS module; gives its exports. */
  readonly start: () => Program
}

type CommonJs = (
  exports: object,
  require: (name: string) => unknown,
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
 * @param folder where the files are
 * @param nodes Node's own require, for all that is not in the folder
 */
export function compiledProgram(folder: string, nodes: (name: string) => unknown): CompiledProgram {
  const scripts = new Map<string, Script>()
  const modules = new Map<string, { exports: object }>()

  const load = (name: string): object => {
    const known = modules.get(name)
    if (known !== undefined) return known.exports
    const file = path.join(folder, name)
    const script = scriptOf(file)
    const module = { exports: {} }
    scripts.set(name, script)
    modules.set(name, module)
    const run = script.runInThisContext() as CommonJs
    run(module.exports, require, module, file, folder)
    return module.exports
  }
  const require = (name: string): unknown => (name.startsWith('./') ? load(name.slice(2)) : nodes(name))

  return { scripts, start: () => load(programFile) as Program }
}

/** A file of the build's, which writes plain ASCII where it can: then a byte is a letter, and V8 keeps it so. */
function scriptOf(file: string): Script {
  const bytes = readFileSync(file)
  const source = bytes.toString(isAscii(bytes) ? 'latin1' : 'utf8')
  const cachedData = bytesOf(compiledFile(file))
  return new Script(`(function(exports,require,module,__filename,__dirname){${source}\n})`, {
    filename: file,
    ...(cachedData === null ? {} : { cachedData }),
  })
}

/**
 * Where the compiled form of a file is kept for a Node. V8's own check tells only V8s of different numbers apart: Node 20.19.0
 * took the form of 20.20.2, both with V8 11.3.244, and crashed.
 */
export const compiledFile = (file: string, node = `${process.version}-${process.arch}`): string =>
  file.replace(/\.cjs$/, `.${node}.compiled`)

/** `null` where there is none: a command that no build has run, or an unfinished build, still has to run. */
function bytesOf(file: string): Buffer | null {
  try {
    return readFileSync(file)
  } catch {
    return null
  }
}
