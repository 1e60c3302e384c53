// Runs command lines with the built program, read once. Plain JavaScript: Node 20 starts no thread on TypeScript.
import { createRequire } from 'node:module'
import path from 'node:path'
import { parentPort } from 'node:worker_threads'

const require = createRequire(import.meta.url)
const program = path.resolve(import.meta.dirname, '../../dist/cli/program.cjs')

/** @typedef {{ words: string[], far: import('node:worker_threads').MessagePort, done: Int32Array }} Asked */

parentPort?.on('message', async (/** @type {Asked} */ { words, far, done }) => {
  try {
    const { main, writtenBy } = require(program)
    let [out, err] = ['', '']
    const io = writtenBy(
      (/** @type {string} */ text) => (out += text),
      (/** @type {string} */ text) => (err += text),
    )
    far.postMessage({ code: await main(words, io), out, err })
  } finally {
    Atomics.store(done, 0, 1)
    Atomics.notify(done, 0)
  }
})
