// Runs one of this folder's TypeScript scripts: `node scripts/run.js build`. Node 20 can't read TypeScript itself.
import { readdirSync, readFileSync } from 'node:fs'
import path from 'node:path'
import { fileURLToPath } from 'node:url'
import { runnerImport } from 'vite'

const [task, ...words] = process.argv.slice(2)
const here = path.dirname(fileURLToPath(import.meta.url))
process.chdir(path.dirname(here))

/** A script that can be asked for has a `run`. */
const hasRun = /^export (async function run\(|function run\(|\{ run \})/m
const tasks = readdirSync(here)
  .filter((name) => name.endsWith('.ts') && hasRun.test(readFileSync(path.join(here, name), 'utf8')))
  .map((name) => name.slice(0, -'.ts'.length))
if (task === undefined || !tasks.includes(task)) {
  const asked = task === undefined ? 'No script is named' : `There is no script ${task}`
  console.error(`${asked}; there are ${tasks.join(', ')}.`)
  process.exit(1)
}

const environment = process.env['NODE_ENV']
/** @type {{ module: { run: (words: string[]) => Promise<number> } }} */
const { module } = await runnerImport(path.join(here, `${task}.ts`), { configFile: false, logLevel: 'warn' })
// Reading a script sets NODE_ENV; what a script starts is to find what the person set, as when started by hand.
if (environment === undefined) delete process.env['NODE_ENV']
process.exitCode = await module.run(words)
