import { existsSync, mkdtempSync, readFileSync, readdirSync, rmSync, writeFileSync } from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import { benches } from '../electron.config.ts'
import { rowsOf, withRun, type Measured } from './bench-table.ts'
import { buildFacts } from './build-facts.ts'
import { buildForUse, run as build } from './build.ts'
import { runProgram } from './child.ts'
import { prepareMachine } from './computer.ts'
import { isStale } from './stale.ts'

const folder = path.join('test', 'bench')

/** Where `--keep` writes. */
const table = path.join('docs', 'bench.md')

/**
 * `npm run bench`, `npm run bench -- check`: each `test/bench/*.bench.ts`, built like what ships, one after the other;
 * `--keep` writes what they measured into `docs/bench.md`.
 */
export async function run(words: string[]): Promise<number> {
  const asked = words.filter((word) => !word.startsWith('-'))
  const all = existsSync(folder) ? readdirSync(folder).filter((file) => file.endsWith('.bench.ts')) : []
  const names = all.map((file) => file.replace(/\.bench\.ts$/, ''))
  const wanted = asked.length === 0 ? names : names.filter((name) => asked.includes(name))
  const unknown = words.filter((word) => word !== '--keep' && !names.includes(word))
  if (unknown.length > 0) {
    console.error(
      `There is no bench ${unknown.join(', ')}; benches: ${names.join(', ')}; --keep keeps what they measure.`,
    )
    return 1
  }
  // What is lacking the bench itself says, in one line.
  const { env } = wanted.some((name) => name.startsWith('window')) ? await prepareMachine() : { env: {} }
  if (isStale(process.cwd()) && (await build([])) !== 0) return 1
  await buildForUse(
    benches(Object.fromEntries(wanted.map((name) => [name, path.join(folder, `${name}.bench.ts`)]))),
  )
  const { codes, measured } = await measuredBy(wanted, env)
  if (words.includes('--keep')) keep(measured)
  return Math.max(...codes)
}

/** Runs the benches; each writes what it measured into a file of its own as well. */
async function measuredBy(names: readonly string[], env: NodeJS.ProcessEnv) {
  const kept = mkdtempSync(path.join(os.tmpdir(), 'pitchline-bench-'))
  const codes: number[] = []
  const measured: Measured[] = []
  for (const name of names) {
    const file = path.join(kept, `${name}.json`)
    const script = path.join('dist', 'bench', `${name}.js`)
    codes.push(await runProgram(process.execPath, [script], { ...env, PITCHLINE_BENCH_KEEP: file }))
    if (existsSync(file)) measured.push(...(JSON.parse(readFileSync(file, 'utf8')) as Measured[]))
  }
  rmSync(kept, { recursive: true, force: true })
  return { codes, measured }
}

function keep(measured: readonly Measured[]): void {
  const run = {
    day: new Date().toISOString().slice(0, 10),
    commit: (JSON.parse(buildFacts(process.cwd())['__PITCHLINE_COMMIT__'] ?? '""') as string) || 'unknown',
    machine: `${process.platform} ${process.arch}, ${os.availableParallelism()} cores, Node ${process.versions.node}`,
  }
  writeFileSync(table, withRun(existsSync(table) ? readFileSync(table, 'utf8') : '', rowsOf(measured, run)))
  console.log(`Kept in ${table}: ${measured.length} numbers of ${run.commit}.`)
}
