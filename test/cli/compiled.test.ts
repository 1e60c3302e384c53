import { spawnSync } from 'node:child_process'
import { cpSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import path from 'node:path'
import { expect, test } from 'vitest'
import { compiledFile, compiledProgram } from '../../src-main/cli/compiled.ts'
import { command, demoFile, pitchline, temporaryFolder } from './command.ts'

const built = path.dirname(command)
const folder = temporaryFolder()
const demo = demoFile('hut-hauler')

/** The command line in a folder of its own, its compiled form changed; what it says of a demo. */
function answerWith(change: (compiled: string) => void) {
  const copy = path.join(folder(), 'cli')
  cpSync(built, copy, { recursive: true })
  change(path.join(copy, compiledFile))
  const { status, stdout, stderr } = spawnSync(
    process.execPath,
    [path.join(copy, 'pitchline.cjs'), 'check', demo],
    {
      encoding: 'utf8',
    },
  )
  return { code: status, out: stdout, err: stderr }
}

test('the compiled form is taken by the Node that made it', () => {
  expect(compiledProgram(built).script.cachedDataRejected).toBe(false)
})

test('without the compiled form, or with one of another V8, the answer is the same', () => {
  const answer = pitchline(['check', demo])
  expect(answer.out).toContain('Worst:')
  expect(answerWith((compiled) => rmSync(compiled))).toEqual(answer)
  const ofAnother = (compiled: string) => {
    const bytes = readFileSync(compiled)
    // The second word of the head names the version of V8.
    bytes.writeUInt32LE(bytes.readUInt32LE(4) ^ 1, 4)
    writeFileSync(compiled, bytes)
  }
  expect(answerWith(ofAnother)).toEqual(answer)
  expect(compiledProgram(path.join(folder(), 'cli')).script.cachedDataRejected).toBe(true)
})

test('half of the compiled form does no harm', () => {
  const half = (compiled: string) =>
    writeFileSync(compiled, readFileSync(compiled).subarray(0, readFileSync(compiled).length >> 1))
  expect(answerWith(half)).toEqual(pitchline(['check', demo]))
})
