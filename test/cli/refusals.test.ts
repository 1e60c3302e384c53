import { spawnSync } from 'node:child_process'
import { closeSync, existsSync, mkdirSync, openSync, readFileSync, writeFileSync } from 'node:fs'
import path from 'node:path'
import { beforeAll, describe, expect, test } from 'vitest'
import { command, demoFile, pitchline, temporaryFolder } from './command.ts'

const folder = temporaryFolder()
const text = () => readFileSync(demoFile('culvert-crawler'), 'utf8')

/** Odd files by name, and the lines that each gets on stderr, behind its name. */
const odd: Record<string, { bytes: () => string | Uint8Array; lines: readonly RegExp[] }> = {
  'empty.json': {
    bytes: () => '',
    lines: [/^the file is empty; a build, readings and channels are JSON in braces\.$/],
  },
  'blank.json': {
    bytes: () => ' \n\t',
    lines: [/^the file is empty; a build, readings and channels are JSON in braces\.$/],
  },
  'noise.json': {
    // 2 MiB of noise from a fixed recurrence.
    bytes: () =>
      Uint8Array.from({ length: 2 * 1024 * 1024 }, (_, i) => (Math.imul(i, 2654435761) >>> 13) & 255),
    lines: [/^the file is too large: 2\.0 MiB; allowed: at most 1 MiB\.$/],
  },
  'not-utf8.json': {
    bytes: () => Uint8Array.of(0x7b, 0xff, 0xfe, 0x7d),
    lines: [/^the file is not UTF-8 text\.$/],
  },
  'broken.json': {
    bytes: () => '{\n "format": "pitchline-build",,',
    lines: [/^the file is not JSON: line 2, column \d+\.$/],
  },
  'deep.json': {
    bytes: () => '['.repeat(100_000) + ']'.repeat(100_000),
    lines: [/^the file is nested too deeply; allowed: .+\.$/],
  },
  'list.json': {
    bytes: () => '[]',
    lines: [/^the file is an empty list, not a group of entries; allowed: .+\.$/],
  },
  'nan.json': {
    bytes: () => text().replace(/"series": \d+/, '"series": NaN'),
    lines: [/^the file is not JSON: line \d+, column \d+\.$/],
  },
  'huge-number.json': {
    bytes: () => text().replace(/"series": \d+/, '"series": 1e999'),
    lines: [/^pack\.series is Infinity.*; allowed: a whole number, 1 to 60 cells\.$/],
  },
  'proto.json': {
    bytes: () => text().replace('"name"', '"__proto__": {"polluted": 1}, "name"'),
    lines: [/^__proto__ is a key that no file may have; take it out\.$/],
  },
  'newer.json': {
    bytes: () => text().replace('"version": 2', '"version": 3'),
    lines: [/^version is 3: the file is from a newer Pitchline than this one; allowed: up to 2\.$/],
  },
  'other.json': {
    bytes: () => '{"format": "something", "version": 1}',
    lines: [/^format is "something": this is not a build file; allowed: "pitchline-build"\.$/],
  },
  'three-mistakes.json': {
    bytes: () =>
      text()
        .replace(/"series": \d+/, '"series": 99')
        .replace('"massKg": 13.5', '"massKg": "heavy"')
        .replace('"name"', '"colour": "red", "name"'),
    lines: [
      /^colour is not an entry of a build.*\.$/,
      /^pack\.series is 99, out of range; allowed: a whole number, 1 to 60 cells\.$/,
      /^vehicle\.massKg is "heavy", not a number; allowed: 0\.05 to 20,000 kg\.$/,
    ],
  },
  'escape.json': {
    bytes: () => text().replace('"name"', '"a\\u001b[31m\\nb": 1, "name"'),
    lines: [/^a.\[31m.b is not an entry of a build.*\.$/],
  },
}

describe('a file that is no build gets one line per mistake, on stderr, and exit code 1', () => {
  beforeAll(() => {
    for (const [name, { bytes }] of Object.entries(odd)) writeFileSync(path.join(folder(), name), bytes())
    mkdirSync(path.join(folder(), 'a-folder'))
  })

  test.each(Object.keys(odd))('%s', (name) => {
    const { code, out, err } = pitchline(['check', name], undefined, folder())
    expect(code).toBe(1)
    expect(out).toBe('')
    const lines = err.trimEnd().split('\n').sort()
    const expected = odd[name]?.lines ?? []
    expect(lines).toHaveLength(expected.length)
    for (const line of lines) expect(line.startsWith(`${name}: `)).toBe(true)
    for (const wanted of expected)
      expect(
        lines.some((line) => wanted.test(line.slice(name.length + 2))),
        String(wanted),
      ).toBe(true)
  })

  test('a folder, and nothing', () => {
    expect(pitchline(['check', 'a-folder'], undefined, folder())).toEqual({
      code: 1,
      out: '',
      err: 'a-folder: this is a folder, not a file; allowed: a build file.\n',
    })
    expect(pitchline(['check', 'nowhere.json'], undefined, folder()).err).toBe(
      'nowhere.json: there is no file of this name.\n',
    )
    expect(pitchline(['check', '-'], '').err).toBe(
      'standard input: the file is empty; a build, readings and channels are JSON in braces.\n',
    )
  })
})

test.runIf(existsSync('/dev/full'))(
  'a full disk behind standard output is told in one line, exit code 1',
  () => {
    const full = openSync('/dev/full', 'w')
    const { status, stderr } = spawnSync(process.execPath, [command, 'check', demoFile('hut-hauler')], {
      encoding: 'utf8',
      timeout: 100_000,
      stdio: ['ignore', full, 'pipe'],
    })
    closeSync(full)
    expect({ status, stderr }).toEqual({
      status: 1,
      stderr: 'standard output: the file cannot be written: the system says ENOSPC.\n',
    })
  },
)

const everyCommand =
  'check, explain, search, sweep, compare, uncertainty, merge, remedy, pattern, alarms, report, measure, log, fit, validate, new'

describe('a command line that is not understood', () => {
  test.each([
    [['chek'], `there is no command chek; allowed: ${everyCommand}.`],
    [['help', 'chek'], `there is no command chek; allowed: ${everyCommand}.`],
    [['--colour'], 'there is no option --colour; allowed: --version, --help.'],
    [['check', '--yaml', 'x'], 'there is no option --yaml; allowed: --json, --units <system>, --help.'],
    [['check'], '<build> is missing; allowed: pitchline check <build> [options].'],
    [['check', 'a', 'b'], 'b is one argument too many; allowed: pitchline check <build> [options].'],
    [
      ['check', 'a', '--units', 'furlong'],
      '--units is "furlong", not one of the choices; allowed: metric, imperial.',
    ],
    [
      ['check', 'a', '--units'],
      'a value for --units <system> is missing; allowed: pitchline check <build> [options].',
    ],
    [['new'], '<file> is missing; allowed: pitchline new <file> [options].'],
  ])('%j', (words, sentence) => {
    expect(pitchline(words)).toEqual({ code: 1, out: '', err: `pitchline: ${sentence}\n` })
  })
})
