import { execFileSync, spawn, spawnSync } from 'node:child_process'
import { once } from 'node:events'
import { mkdirSync, readFileSync, readdirSync, writeFileSync } from 'node:fs'
import path from 'node:path'
import { describe, expect, test } from 'vitest'
import { command, demoFile, pitchline, temporaryFolder, untidyLines } from './command.ts'

const folder = temporaryFolder()
const hauler = demoFile('hut-hauler')
/** Colours, a bell, the one-byte start of a terminal command, text that runs the other way, and a line of its own. */
const nasty = 'red\u001b[31m bell\u0007 c1\u009b2J bidi\u202e end\nnext'

/** A demo build under another name, in a file of its own. */
function renamed(name: string): string {
  const file = path.join(folder(), 'renamed.build.json')
  const stored = JSON.parse(readFileSync(hauler, 'utf8')) as object
  writeFileSync(file, JSON.stringify({ ...stored, name }))
  return file
}

describe('new', () => {
  // The shell's limit on the size of a file stands for a disk that fills up: the write fails in the middle. A build takes
  // about 2 kB, the page 26; a unit of the limit is 512 bytes or 1 kB, by the shell.
  test.skipIf(process.platform === 'win32').each([
    ['the build', 1],
    ['the page', 8],
  ])('leaves nothing where there is no room for %s, and takes the same name later', (_, blocks) => {
    const place = path.join(folder(), `full-${blocks}`)
    mkdirSync(place)
    const { status, stdout, stderr } = spawnSync(
      'sh',
      ['-c', `ulimit -f ${blocks}; exec "$@"`, 'sh', process.execPath, command, 'new', 'hut'],
      { cwd: place, encoding: 'utf8' },
    )
    expect({ status, stdout }).toEqual({ status: 1, stdout: '' })
    expect(stderr).toMatch(/^hut\.\S+: there is no room left on the disk for this file\.\n$/)
    expect(readdirSync(place)).toEqual([])
    expect(pitchline(['new', 'hut'], undefined, place).code).toBe(0)
  })

  test.each([[''], [' '], ['some-folder/']])('asks for a name in place of %j', (name) => {
    expect(pitchline(['new', name], undefined, folder())).toEqual({
      code: 1,
      out: '',
      err: 'pitchline: a name for the file is missing; allowed: pitchline new <file>.\n',
    })
  })

  test.skipIf(process.platform === 'win32')('shows an odd name without driving the terminal', () => {
    const { code, out } = pitchline(['new', 'odd\u001b[31m'], undefined, folder())
    expect(code).toBe(0)
    expect(untidyLines(out)).toEqual([])
  })
})

describe('text of a file', () => {
  test.each([
    ['check'],
    ['sweep', 'vehicle.massKg', '40', '60', '1'],
    ['compare', hauler],
    ['uncertainty', '--samples', '20', '--workers', '1'],
    ['remedy'],
    ['alarms'],
    ['pattern', 'stop and go'],
  ])('%s shows control characters as signs and keeps to its lines', (name = '', ...more) => {
    const { out, err } = pitchline([name, renamed(nasty), ...more])
    expect(err).toBe('')
    expect(out).toContain('red\uFFFD[31m')
    expect(untidyLines(out)).toEqual([])
    expect(out).not.toMatch(/[\u0080-\u009f\u202e]/)
  })

  test.each([['check'], ['remedy'], ['alarms'], ['sweep', 'vehicle.massKg', '40', '60', '1']])(
    'the JSON of %s holds it to the letter, written so that no terminal takes it for a command',
    (name = '', ...more) => {
      const { out } = pitchline([name, renamed(nasty), ...more, '--json'])
      expect((JSON.parse(out) as { name: string }).name).toBe(nasty)
      expect(out).not.toMatch(/[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u202e]/)
    },
  )
})

test('standard input asked for twice is refused in one line', () => {
  const err = 'pitchline: standard input can be read only once; allowed: one -, the others by name.\n'
  expect(pitchline(['search', '-', '-'], readFileSync(hauler))).toEqual({ code: 1, out: '', err })
  expect(pitchline(['compare', '-', '-'], readFileSync(hauler))).toEqual({ code: 1, out: '', err })
  expect(pitchline(['pattern', '-', '-'], readFileSync(hauler))).toEqual({ code: 1, out: '', err })
})

test('two dashes alone are no command', () => {
  const { code, out, err } = pitchline(['--'])
  expect({ code, out }).toEqual({ code: 1, out: '' })
  expect(err).toMatch(/^pitchline: <command> is missing; allowed: [^\n]+\.\n$/)
})

test('of a file with 60,000 mistakes the first 50 are listed and the others counted', () => {
  const file = path.join(folder(), 'many.build.json')
  const stored = JSON.parse(readFileSync(hauler, 'utf8')) as object
  const wrong = Object.fromEntries(Array.from({ length: 60_000 }, (_, at) => [`k${at}`, 0]))
  writeFileSync(file, JSON.stringify({ ...stored, ...wrong }))
  const { code, out, err } = pitchline(['check', file])
  expect({ code, out }).toEqual({ code: 1, out: '' })
  const lines = err.trimEnd().split('\n')
  expect(lines).toHaveLength(51)
  expect(lines.at(-1)).toBe(`${file}: 59,950 more mistakes are not listed.`)
})

describe.skipIf(process.platform === 'win32')('a named pipe', () => {
  test('that nobody writes to is given up with one line', () => {
    const pipe = path.join(folder(), 'nobody')
    execFileSync('mkfifo', [pipe])
    expect(pitchline(['check', pipe])).toEqual({
      code: 1,
      out: '',
      err: `${pipe}: the file cannot be read: it is a pipe, and nobody wrote to it for 5 s.\n`,
    })
  })

  test('whose writer comes later is read to its end', async () => {
    const pipe = path.join(folder(), 'later')
    execFileSync('mkfifo', [pipe])
    const checking = spawn(process.execPath, [command, 'check', pipe], {
      stdio: ['ignore', 'pipe', 'inherit'],
    })
    let out = ''
    checking.stdout.on('data', (text) => (out += String(text)))
    spawn('sh', ['-c', 'sleep 0.5; cat "$1" > "$2"', 'sh', hauler, pipe])
    const [code] = (await once(checking, 'close')) as [number]
    expect(code).toBe(0)
    expect(out).toBe(pitchline(['check', hauler]).out)
  })
})
