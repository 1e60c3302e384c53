import { spawnSync } from 'node:child_process'
import { cpSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import path from 'node:path'
import { expect, test } from 'vitest'
import { compiledFile, compiledProgram } from '../../src-main/cli/compiled.ts'
import { command, demoFile, pitchline, temporaryFolder } from './command.ts'

const built = path.dirname(command)
const folder = temporaryFolder()
const demo = demoFile('hut-hauler')

/** Which compiled forms V8 refused in a check, by the file that they are of; those that it took are there with false. */
async function refusedIn(folder: string) {
  const { scripts, start } = compiledProgram(folder, createRequire(command))
  await start().main(['check', demo], { out: () => {}, err: () => {} })
  return Object.fromEntries([...scripts].map(([name, script]) => [name, script.cachedDataRejected]))
}

/** The command line in a folder of its own, its compiled forms changed; what it says of a demo. */
function answerWith(change: (compiled: string) => void) {
  const copy = path.join(folder(), 'cli')
  cpSync(built, copy, { recursive: true })
  for (const name of readdirSync(copy)) if (name.endsWith('.compiled')) change(path.join(copy, name))
  const { status, stdout, stderr } = spawnSync(
    process.execPath,
    [path.join(copy, 'pitchline.cjs'), 'check', demo],
    {
      encoding: 'utf8',
    },
  )
  return { code: status, out: stdout, err: stderr }
}

test('the compiled forms are taken by the Node that made them, each file of a check has one', async () => {
  const refused = await refusedIn(built)
  expect(Object.keys(refused)).toContainEqual(expect.stringMatching(/^check-/))
  expect(new Set(Object.values(refused))).toEqual(new Set([false]))
})

test('without the compiled forms, or with those of another V8, the answer is the same', async () => {
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
  expect(new Set(Object.values(await refusedIn(path.join(folder(), 'cli'))))).toEqual(new Set([true]))
})

test('the forms of another Node are not even read: V8 would take those of its own number, and crash', () => {
  const forms = readdirSync(built).filter((name) => name.endsWith('.compiled'))
  expect(forms.length).toBeGreaterThan(1)
  for (const name of forms) expect(name).toContain(`.${process.version}-${process.arch}.`)
  // Node 20.19.0 has the V8 of 20.20.2 by its number: 11.3.244.
  expect(compiledFile('main.cjs', 'v20.19.0-x64')).not.toBe(compiledFile('main.cjs', 'v20.20.2-x64'))
})

test('half of a compiled form does no harm', () => {
  const half = (compiled: string) =>
    writeFileSync(compiled, readFileSync(compiled).subarray(0, readFileSync(compiled).length >> 1))
  expect(answerWith(half)).toEqual(pitchline(['check', demo]))
})

test('a check reads no other command, and reads a byte a letter', async () => {
  for (const name of Object.keys(await refusedIn(built)))
    expect(
      readFileSync(path.join(built, name)).findIndex((byte) => byte > 0x7f),
      name,
    ).toBe(-1)
  const { scripts, start } = compiledProgram(built, createRequire(command))
  await start().main(['check', demo], { out: () => {}, err: () => {} })
  const ofACheck = scripts.size
  await start().main(['alarms', demo], { out: () => {}, err: () => {} })
  expect(scripts.size).toBeGreaterThan(ofACheck)
})
