// Runs one of this folder's TypeScript scripts: `node scripts/run.js build`. Node 20 can't read TypeScript itself.
import path from 'node:path'
import { fileURLToPath } from 'node:url'
import { runnerImport } from 'vite'

const [task, ...words] = process.argv.slice(2)
const here = path.dirname(fileURLToPath(import.meta.url))
process.chdir(path.dirname(here))

/** @type {{ module: { run: (words: string[]) => Promise<number> } }} */
const { module } = await runnerImport(path.join(here, `${task}.ts`), { configFile: false, logLevel: 'warn' })
process.exitCode = await module.run(words)
