import { readFileSync, writeFileSync } from 'node:fs'
import path from 'node:path'
import { describe, expect, test } from 'vitest'
import { demoLog, demoLostAt } from '../../scripts/demo-log.ts'
import { demoFile, pitchline, root, temporaryFolder, untidyLines } from './command.ts'

const folder = temporaryFolder()
const golden = (name: string) => path.join(root, 'test/golden/logs', name)
const words = (number: string) => ['log', golden(`${number}.build.json`), golden(`${number}.csv`)]

describe('a golden log on the command line', () => {
  test('JSON has the keys of its definition and the golden episodes; 2 where the load went', () => {
    const { code, out, err } = pitchline([...words('02'), '--alarms', golden('02.alarms.json'), '--json'])
    const expected = JSON.parse(readFileSync(golden('02.expected.json'), 'utf8')) as {
      episodes: { kind: string }[]
      alarms: unknown
    }
    const found = JSON.parse(out) as typeof expected
    expect([code, err]).toEqual([2, ''])
    expect(Object.keys(found)).toEqual(Object.keys(expected))
    expect(found.episodes.map(({ kind }) => kind)).toEqual(expected.episodes.map(({ kind }) => kind))
    expect(found.alarms).toEqual(expected.alarms)
  })

  test('text tells the story in order of time, fits 80 columns, and names facts, repairs and what was not judged', () => {
    const { code, out, err } = pitchline(words('02'))
    expect([code, err]).toEqual([2, ''])
    expect(untidyLines(out)).toEqual([])
    const parts = [
      'spun',
      'faster than its limit',
      'the load went',
      'Facts',
      'Alarms',
      'Repairs',
      'not judged',
      'local rules',
    ]
    const places = parts.map((part) => out.replace(/\s+/g, ' ').indexOf(part))
    expect(places).not.toContain(-1)
    expect([...places].sort((one, other) => one - other)).toEqual(places)
  })

  test('imperial units stand in the sentences too', () => {
    const { out } = pitchline([...words('02'), '--units', 'imperial'])
    expect(out).toMatch(/\d\s(lbf|lb)/)
    expect(out).not.toMatch(/\d\sN /)
  })

  test('an earlier log and the build itself are held beside it where that is asked for, or it is said what they lack', () => {
    const before = ['--before', golden('07.csv'), '--before-build', golden('07.build.json')]
    const { out, err } = pitchline([...words('07'), ...before, '--by-build'])
    expect(err).toBe('')
    expect(untidyLines(out)).toEqual([])
    const said = out.replace(/\s+/g, ' ')
    expect(said).toContain('Before and after: ')
    // The log was simulated with this very build.
    expect(said).toContain('This run and its build: No difference between this run and its build is told')
    expect(said).toMatch(/Resistance of the pack: \d[\d.]* mΩ by the build, \d[\d.]* mΩ on this run/)
    const gone = pitchline([...words('07'), '--before', 'none.csv'])
    expect([gone.code, gone.out]).toEqual([1, ''])
    expect(gone.err).toMatch(/^none\.csv: /)
  })

  test('0 where nothing went over', () => {
    expect(pitchline(words('04')).code).toBe(0)
  })

  test('the log may come by standard input', () => {
    const piped = pitchline(['log', golden('04.build.json'), '-', '--json'], readFileSync(golden('04.csv')))
    expect(piped).toEqual(pitchline([...words('04'), '--json']))
  })
})

describe('what cannot be read is refused with one line and a code', () => {
  const refused = (name: string, bytes: string | Uint8Array, ...more: string[]) => {
    const file = path.join(folder(), name)
    writeFileSync(file, bytes)
    return pitchline(['log', demoFile('hut-hauler'), file, ...more])
  }
  test.each([
    ['empty', ' \n\n'],
    ['binary', '\u0001\u0002\u0003ELF'],
    ['one-column', 'Time\n1\n2\n3\n'],
    ['no-rows', 'Time,Rpm\nno,numbers\n'],
    ['no-time', 'Rpm,Volts\n100,50\n200,50\n'],
    ['no-values', 'Time,Colour depth\n1,2\n2,3\n'],
  ])('%s', (code, text) => {
    const { code: exit, out, err } = refused(`${code}.csv`, text)
    expect([exit, out]).toEqual([1, ''])
    expect(err.trimEnd().split('\n')).toHaveLength(1)
    expect(err).toMatch(new RegExp(`${code}\\.csv: [^\\n]+\\. \\[${code}\\]\\n$`))
  })

  test('a file of columns with mistakes is refused, each on a line of its own', () => {
    const file = path.join(folder(), 'columns.json')
    writeFileSync(file, '{ "rate": -1, "columns": { "Time": { "channel": "warp" } } }')
    const { code, err } = pitchline([...words('04'), '--columns', file])
    expect(code).toBe(1)
    expect(err.match(/\[columns\]\n/g)).toHaveLength(2)
  })

  test('a build with mistakes and a log that is not there are told in the words of every command', () => {
    const missing = pitchline(['log', demoFile('hut-hauler'), path.join(folder(), 'none.csv')])
    expect([missing.code, missing.err]).toEqual([1, expect.stringContaining('there is no file')])
    const folderAsLog = pitchline(['log', demoFile('hut-hauler'), folder()])
    expect([folderAsLog.code, folderAsLog.err]).toEqual([1, expect.stringContaining('is a folder')])
    expect(pitchline(['log', '-', '-'], '').code).toBe(1)
  })
})

test('an option names the column of the time, where a log is refused for want of one', () => {
  const log = path.join(folder(), 'bare.csv')
  writeFileSync(
    log,
    ['Sample,Rpm,Volts', ...Array.from({ length: 30 }, (_, at) => `${at},900,50`)].join('\n'),
  )
  const asked = ['log', demoFile('hut-hauler'), log, '--json']
  expect(pitchline(asked).err).toMatch(/say which column it is.*--time.* \[no-time\]/)
  for (const column of ['Sample', '1']) {
    const { out } = pitchline([...asked, '--time', column])
    expect((JSON.parse(out) as { reading: unknown }).reading).toMatchObject({ timeForm: 'count', rows: 30 })
  }
  expect(pitchline([...asked, '--time', 'Clock']).err).toContain('no column of the log')
})

test('a file of columns gives a log without time and names its meaning', () => {
  const log = path.join(folder(), 'bare.csv')
  const columns = path.join(folder(), 'rate.json')
  writeFileSync(log, ['A;B', ...Array.from({ length: 40 }, (_, row) => `${100 + row};50`)].join('\n'))
  writeFileSync(
    columns,
    JSON.stringify({ rate: 10, columns: { A: { channel: 'rpm' }, 2: { channel: 'volts' } } }),
  )
  const { code, out } = pitchline(['log', demoFile('hut-hauler'), log, '--columns', columns, '--json'])
  const found = JSON.parse(out) as {
    reading: { timeForm: string }
    facts: { seconds: number; peaks: object }
  }
  expect(code).toBe(0)
  expect(found.reading.timeForm).toBe('rate')
  expect(found.facts.seconds).toBeCloseTo(3.9, 9) // forty rows at ten a second
  expect(Object.keys(found.facts.peaks)).toEqual(['rpm', 'volts', 'leastVolts'])
})

describe('the demo log', () => {
  test('is what its script makes, to the byte', () => {
    expect(readFileSync(path.join(root, 'examples/quick-sled-puller.log.csv'), 'utf8')).toBe(demoLog())
  })

  test('the command that the README gives tells its story: a gap, and the loss of the track at its moment', () => {
    const readme = readFileSync(path.join(root, 'README.md'), 'utf8')
    const command = /^npx pitchline (log .*)$/m.exec(readme)?.[1] ?? ''
    const { code, out, err } = pitchline(command.split(' '))
    expect([code, err]).toEqual([2, ''])
    expect(untidyLines(out)).toEqual([])
    expect(out).toContain('there was no signal: no rows came')
    const [, from, to] = /Between ([\d.]+) s and ([\d.]+) s the load went/.exec(out) ?? []
    expect(Number(from)).toBeLessThanOrEqual(demoLostAt)
    // a sample later at the most: five a second
    expect(Number(to)).toBeLessThanOrEqual(demoLostAt + 0.21)
  })
})
