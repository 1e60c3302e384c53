import { existsSync, readdirSync } from 'node:fs'
import path from 'node:path'
import { benches } from '../electron.config.ts'
import { buildForUse } from './build.ts'
import { runProgram } from './child.ts'

const folder = path.join('test', 'bench')

/** `npm run bench`, `npm run bench -- check`: each `test/bench/*.bench.ts`, built like what ships, one after the other. */
export async function run(words: string[]): Promise<number> {
  const all = existsSync(folder) ? readdirSync(folder).filter((file) => file.endsWith('.bench.ts')) : []
  const names = all.map((file) => file.replace(/\.bench\.ts$/, ''))
  const wanted = words.length === 0 ? names : names.filter((name) => words.includes(name))
  if (wanted.length === 0) {
    console.error(`There is no such bench; benches: ${names.join(', ')}.`)
    return 1
  }
  await buildForUse(
    benches(Object.fromEntries(wanted.map((name) => [name, path.join(folder, `${name}.bench.ts`)]))),
  )
  const codes: number[] = []
  for (const name of wanted)
    codes.push(await runProgram(process.execPath, [path.join('dist', 'bench', `${name}.js`)]))
  return Math.max(...codes)
}
