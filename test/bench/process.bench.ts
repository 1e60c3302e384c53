import { spawnSync } from 'node:child_process'
import path from 'node:path'
import { keptAs, repeated, wallSeconds } from './measure.ts'

// What one `check` costs from start to exit, beside a bare start of Node.js.

const command = path.join('dist', 'cli', 'pitchline.cjs')
const build = path.join('examples', 'quick-sled-puller.build.json')

const milliseconds = (words: readonly string[]) =>
  repeated(15, () => 1000 * wallSeconds(() => void spawnSync(process.execPath, words, { stdio: 'ignore' })))

const bare = milliseconds(['-e', '0'])
const check = milliseconds([command, 'check', build])
const json = milliseconds([command, 'check', build, '--json'])
console.log('A process from start to exit; median of 15 (least to most):')
console.log(`  Node.js alone: ${keptAs('Node.js alone, start to exit', bare, 'ms', 0)}`)
console.log(
  `  pitchline check: ${keptAs('check, start to exit', check, 'ms', 0)}, ${(check.median / bare.median).toFixed(1)} times that`,
)
console.log(`  pitchline check --json: ${keptAs('check --json, start to exit', json, 'ms', 0)}`)
