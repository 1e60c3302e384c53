import { readdirSync, writeFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import path from 'node:path'
import { compiledFile, compiledProgram } from '../src-main/cli/compiled.ts'

const folder = path.resolve('dist', 'cli')

/** The demos: between them they have every kind of reduction and of ground, drive teeth and a cooling loop. */
const demos = readdirSync('examples')
  .filter((name) => name.endsWith('.build.json'))
  .map((name) => path.join('examples', name))

/**
 * Keeps the command line as V8 compiles it, so that no start has to compile it anew. V8 compiles a function when it is
 * called first: what a check calls is therefore called once, its answer dropped.
 */
export async function keepCompiled(): Promise<void> {
  const { scripts, start } = compiledProgram(folder, createRequire(import.meta.url))
  const { main } = start()
  const complaints: string[] = []
  const io = { out: () => {}, err: (text: string) => void complaints.push(text) }
  for (const demo of demos) {
    await main(['check', demo], io)
    await main(['check', demo, '--json'], io)
  }
  if (complaints.length > 0) throw new Error(`the command line just built fails: ${complaints.join('')}`)
  for (const [name, script] of scripts)
    writeFileSync(compiledFile(path.join(folder, name)), script.createCachedData())
}
