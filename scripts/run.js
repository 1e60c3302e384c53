// Runs one of this folder's TypeScript scripts: `node scripts/run.js build`. Node 20 can't read TypeScript itself.
import path from 'node:path'
import { fileURLToPath } from 'node:url'
import { runnerImport } from 'vite'

const [task, ...words] = process.argv.slice(2)
const here = path.dirname(fileURLToPath(import.meta.url))
process.chdir(path.dirname(here))

const environment = process.env['NODE_ENV']
/** @type {{ module: { run: (words: string[]) => Promise<number> } }} */
const { module } = await runnerImport(path.join(here, `${task}.ts`), { configFile: false, logLevel: 'warn' })
// Reading a script sets NODE_ENV; what a script starts is to find what the person set, as when started by hand.
if (environment === undefined) delete process.env['NODE_ENV']
process.exitCode = await module.run(words)
