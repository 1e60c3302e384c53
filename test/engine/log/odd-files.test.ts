import { readFileSync } from 'node:fs'
import path from 'node:path'
import { describe, expect, it } from 'vitest'
import { randomStream, randomBelow } from '../../../shared-engine/numeric/random.ts'
import type { LogResult } from '../../../shared-engine/log/result.ts'
import { countOf, logFolder, logNumbers, readText, resultOfText } from './reading.ts'

// Files as they come: cut, mixed, doubled, without heading, in odd units. Each is read or refused with a code; a result
// never holds a number that is none.

const rows = (count: number, line: (row: number) => string) =>
  Array.from({ length: count }, (_, row) => line(row))
const plain = (count: number) =>
  rows(count, (row) => `${(row / 5).toFixed(1)},${1500 + 10 * row},48.${row % 10}`)
const heading = 'Time [s],Motor rpm,Pack volts [V]'
const file = (...lines: (string | readonly string[])[]) => `${lines.flat().join('\n')}\n`

/** Every number in a result, at any depth, is finite. */
function oddNumbers(value: unknown, at = ''): readonly string[] {
  if (typeof value === 'number') return Number.isFinite(value) ? [] : [`${at}: ${value}`]
  if (typeof value !== 'object' || value === null) return value === undefined ? [`${at}: undefined`] : []
  return Object.entries(value).flatMap(([key, one]) => oddNumbers(one, `${at}.${key}`))
}

type Check = (result: LogResult) => void
const repaired =
  (code: string, count: number, channel: string | null = null): Check =>
  (result) =>
    expect(countOf(result, code, channel)).toBe(count)
const segments =
  (count: number): Check =>
  (result) =>
    expect(result.segments).toHaveLength(count)
const channels =
  (...ids: (string | null)[]): Check =>
  (result) =>
    expect(result.columns.map(({ channel }) => channel)).toEqual(ids)
const stepOf =
  (seconds: number): Check =>
  (result) =>
    expect(result.reading.stepSeconds).toBeCloseTo(seconds, 9)
const peak =
  (name: string, value: number): Check =>
  (result) =>
    expect(result.facts.peaks[name]?.value).toBeCloseTo(value, 9)
const reading =
  (key: keyof LogResult['reading'], value: unknown): Check =>
  (result) =>
    expect(result.reading[key]).toBe(value)

const withRow = (at: number, row: string) => [...plain(at), row, ...plain(40).slice(at)]
const swapped = (separator: string) =>
  file(
    heading.replaceAll(',', separator),
    plain(40).map((line) => line.replaceAll(',', separator)),
  )

const odd: readonly (readonly [name: string, text: string, ...checks: Check[]])[] = [
  ['tabs', swapped('\t'), reading('delimiter', '\t')],
  ['semicolons', swapped(';'), reading('delimiter', ';')],
  ['bars', swapped('|'), reading('delimiter', '|')],
  [
    'blanks',
    file(
      't rpm volts',
      plain(40).map((line) => line.replaceAll(',', '   ')),
    ),
    reading('delimiter', ' '),
  ],
  ['a first line that names the delimiter', `sep=;\n${swapped(';')}`, reading('headerRow', 2)],
  ['decimal commas', swapped(';').replaceAll('.', ','), reading('decimal', ',')],
  ['every cell in quotes', file(heading, plain(40)).replaceAll(/[^,\n]+/g, '"$&"'), reading('rows', 40)],
  ['no heading and no name', file(plain(40))],
  ['a heading in a remark', file('# Time,Motor rpm,Pack volts', plain(40)), reading('headerRow', 1)],
  ['text before the heading', file('Recorder 3', 'Cells,6', '', heading, plain(40)), reading('headerRow', 4)],
  [
    'a row of units',
    file(
      'Time,Motor speed,Pack',
      's,rpm,mV',
      rows(40, (row) => `${row},1500,48${100 + row}`),
    ),
    peak('volts', 48.139),
  ],
  [
    'the heading once more',
    file(heading, plain(20), heading, plain(20)),
    segments(2),
    repaired('repeated-header', 1),
  ],
  [
    'columns in another order below a second heading',
    file(
      heading,
      plain(20),
      'Pack volts [V],Time [s],Motor rpm',
      rows(20, (row) => `47,${row},1700`),
    ),
    segments(2),
    peak('leastVolts', 47),
  ],
  [
    'another unit below a second heading',
    file(
      heading,
      plain(20),
      'Time [s],Motor rpm,Pack volts [V]',
      's,rpm,mV',
      rows(20, (row) => `${row},1700,47000`),
    ),
    peak('leastVolts', 47),
  ],
  ['a line of text', file(heading, withRow(9, 'card slow')), repaired('text-row', 1)],
  ['a short row', file(heading, withRow(9, '1.75,1600')), repaired('short-row', 1)],
  [
    'a long row',
    file(heading, withRow(9, '1.75,1600,48.5,7')),
    repaired('extra-cells', 1),
    channels('time', 'rpm', 'volts', null),
  ],
  ['a heading too short', file('Time [s],Motor rpm', plain(40)), repaired('width', 1)],
  [
    'a last line that was cut',
    `${file(heading, plain(40))}8.0,17`,
    repaired('cut-tail', 1),
    reading('rows', 40),
  ],
  [
    'a last line without an end',
    file(heading, plain(40)).trimEnd(),
    reading('rows', 40),
    repaired('cut-tail', 0),
  ],
  [
    'a delimiter at each end of line',
    file(
      `${heading},`,
      plain(40).map((line) => `${line},`),
    ),
    reading('rows', 40),
  ],
  [
    'blank lines between',
    file(
      heading,
      plain(40).flatMap((line) => [line, '']),
    ),
    reading('rows', 40),
  ],
  [
    'remarks between',
    file(
      heading,
      plain(40).flatMap((line) => [line, '// said']),
    ),
    reading('rows', 40),
  ],
  ['a row once more', file(heading, withRow(10, plain(40)[9] ?? '')), repaired('repeated-time', 1, 'time')],
  ['an old row', file(heading, withRow(10, plain(40)[3] ?? '')), repaired('backward-time', 1, 'time')],
  ['a row from far ahead', file(heading, withRow(10, '5000,1500,48')), repaired('backward-time', 1, 'time')],
  ['time that begins anew', file(heading, plain(20), plain(20)), segments(2), repaired('reset', 1, 'time')],
  [
    'a long pause',
    file(
      heading,
      plain(20),
      rows(20, (row) => `${2000 + row / 5},1500,48`),
    ),
    segments(2),
    repaired('pause', 1, 'time'),
  ],
  ['a gap', file(heading, plain(20), plain(60).slice(40)), repaired('gap', 1, 'time'), segments(1)],
  [
    'a clock past midnight',
    file(
      'Time,Motor rpm',
      rows(40, (row) => `${row < 20 ? '23:59' : '00:00'}:${40 + (row % 20)}.5,1500`).slice(0, 20),
      rows(20, (row) => `00:00:${String(row).padStart(2, '0')}.5,1500`),
    ),
    segments(1),
    repaired('midnight', 1, 'time'),
  ],
  [
    'stamps of whole seconds',
    file(
      heading,
      rows(60, (row) => `${Math.floor(row / 5)},1500,48`),
    ),
    stepOf(0.2),
  ],
  [
    'rows that hold one channel each',
    file(
      heading,
      rows(40, (row) => (row % 2 === 0 ? `${row / 10},1500,` : `${(row - 1) / 10},,48`)),
    ),
    repaired('merged', 20),
  ],
  [
    'milliseconds without a unit',
    file(
      'Time,Motor rpm',
      rows(40, (row) => `${200 * row},1500`),
    ),
    stepOf(0.2),
  ],
  [
    'microseconds without a unit',
    file(
      'Time,Motor rpm',
      rows(40, (row) => `${200_000 * row},1500`),
    ),
    stepOf(0.2),
  ],
  [
    'milliseconds that call themselves hours',
    file(
      'Time [h],Motor rpm',
      rows(40, (row) => `${200 * row},1500`),
    ),
    stepOf(0.2),
    repaired('time-unit', 40, 'time'),
  ],
  [
    'milliseconds since 1970',
    file(
      'Timestamp,Motor rpm',
      rows(40, (row) => `${1_791_446_576_000 + 200 * row},1500`),
    ),
    reading('timeForm', 'epoch'),
    reading('start', '2026-10-08T08:02:56.000'),
  ],
  [
    'a date beside a clock',
    file(
      'Date,Time,Motor rpm',
      rows(40, (row) => `2026-04-09,12:00:${String(row).padStart(2, '0')},1500`),
    ),
    reading('start', '2026-04-09T12:00:00.000'),
  ],
  [
    'a clock that is not named',
    file(
      'Moment,Motor rpm',
      rows(40, (row) => `12:00:${String(row).padStart(2, '0')},1500`),
    ),
    reading('timeForm', 'clock'),
  ],
  ['rows without a time', file(heading, withRow(10, ',1600,48')), repaired('no-time', 1)],
  [
    'words for no value',
    file(
      heading,
      rows(40, (row) => `${row},${['nan', '--', 'N/A', '1500'][row % 4]},48`),
    ),
    repaired('unreadable', 0, 'rpm'),
  ],
  ['an error in a cell', file(heading, withRow(10, '1.9,ERR,48.5')), repaired('unreadable', 1, 'rpm')],
  [
    'infinite',
    file(
      heading,
      rows(40, (row) => `${row},inf,48`),
    ),
    peak('volts', 48),
  ],
  [
    'numbers beyond all size',
    file(heading, withRow(10, '1.9,1e400,-1e308')),
    repaired('impossible', 1, 'volts'),
  ],
  [
    'degrees Fahrenheit',
    file(
      'Time,Motor temp [°F]',
      rows(40, (row) => `${row},212`),
    ),
    peak('motorC', 100),
  ],
  [
    'units behind the numbers',
    file(
      'Time,Battery',
      rows(40, (row) => `${row},48.5 V`),
    ),
    peak('volts', 48.5),
  ],
  [
    'groups of thousands',
    file(
      'Time;Motor rpm',
      rows(40, (row) => `${row};1'500`),
    ),
    peak('rpm', 1500),
  ],
  [
    'a minus sign of print',
    file(
      'Time;Motor temp',
      rows(40, (row) => `${row};\u22125`),
    ),
    peak('motorC', -5),
  ],
  [
    'throttle as a fraction',
    file(
      'Time;Throttle;Volts',
      rows(40, (row) => `${row};0.5;48`),
    ),
    (result) => expect(result.columns[1]?.channel).toBe('throttle'),
  ],
  [
    'throttle as pulses',
    file(
      'Time;Throttle;Volts',
      rows(40, (row) => `${row};1500;48`),
    ),
    (result) => expect(result.columns[1]?.channel).toBe('throttle'),
  ],
  [
    'volts of a cell',
    file(
      'Time;Volts',
      rows(40, (row) => `${row};3.3`),
    ),
    channels('time', 'cellVolts'),
  ],
  [
    'volts of something else',
    file(
      'Time;Volts;Amps',
      rows(40, (row) => `${row};5.0;3`),
    ),
    channels('time', null, 'amps'),
  ],
  [
    'a sensor that is broken',
    file(
      'Time;Motor temp;Volts',
      rows(40, (row) => `${row};${row % 9 === 4 ? -40 : 20};48`),
    ),
    repaired('impossible', 4, 'motorC'),
  ],
  [
    'a temperature that leaps',
    file(
      'Time;Motor temp;Volts',
      rows(40, (row) => `${row};${row === 9 ? 80 : 20};48`),
    ),
    repaired('spike', 1, 'motorC'),
  ],
  [
    'rpm that drops out',
    file(
      'Time;Motor rpm;Volts',
      rows(60, (row) => `${row / 10};${row % 20 === 9 ? 0 : 1500};48`),
    ),
    repaired('dropout', 3, 'rpm'),
  ],
  [
    'a counter that overflows',
    file(
      'Time;Used mAh;Volts',
      rows(40, (row) => `${row};${(65_520 + row) % 65_536};48`),
    ),
    (result) => expect(result.reading.rows).toBe(40),
  ],
  [
    'a counter that begins anew',
    file(
      'Time;Used mAh;Volts',
      rows(40, (row) => `${row};${100 + (row % 20)};48`),
    ),
    repaired('counter-reset', 1, 'charge'),
    (result) => expect(result.facts.chargeCCounted).toBeCloseTo((19 + 119) * 3.6, 9),
  ],
  [
    'zeros of a lost link',
    file(
      'Time;Motor rpm;Volts;Amps',
      rows(60, (row) => (row > 20 && row < 40 ? `${row / 5};0;0;0` : `${row / 5};1500;48;9.${row % 7}`)),
    ),
    repaired('zero-row', 19),
  ],
  [
    'rows that freeze',
    file(
      'Time;Motor rpm;Volts;Amps',
      rows(60, (row) =>
        row > 20 && row < 40 ? `${row / 5};1500;48;9` : `${row / 5};${1500 + row};48;9.${row % 7}`,
      ),
    ),
    repaired('frozen', 18),
  ],
  [
    'two columns of one name',
    file(
      'Time,Motor rpm,Motor rpm',
      rows(40, (row) => `${row},1500,1501`),
    ),
    channels('time', 'rpm', null),
  ],
  ['a heading of nothing but blanks', file(' , , ', plain(40))],
  [
    'names in other tongues',
    file(
      'Zeit;Drehzahl;Spannung',
      rows(40, (row) => `${row};1500;48,5`),
    ),
    channels('time', 'rpm', 'volts'),
  ],
  [
    'a word that is not text',
    file(
      'Time;Motor rpm;Ereignis \ud83d\ude00',
      rows(40, (row) => `${row};1500;\ud83d\ude00`),
    ),
    reading('rows', 40),
  ],
  ['one row alone', file(heading, plain(1))],
  ['two rows', file(heading, plain(2)), reading('rows', 2)],
  [
    'time that stands still',
    file(
      heading,
      rows(40, () => '5,1500,48'),
    ),
  ],
  ['no line ends', file(heading, plain(40)).replaceAll('\n', ' ')],
  ['nothing but a heading', file(heading)],
  ['nothing but delimiters', `${',,,,\n'.repeat(40)}`],
  ['a page of the web', '<html><body><p>404, not found; sorry</p></body></html>\n'],
  ['a build', readFileSync(path.join(logFolder, '01.build.json'), 'utf8')],
]

describe('odd files', () => {
  it('are more than sixty', () => expect(odd.length).toBeGreaterThan(60))

  it.each(odd)('%s', (_, text, ...checks) => {
    const found = readText(text)
    if (checks.length === 0 && typeof found === 'string') {
      expect(found).toMatch(/^(empty|binary|one-column|no-rows|no-time|no-values)$/)
      return
    }
    const result = resultOfText(text)
    expect(oddNumbers(result)).toEqual([])
    for (const check of checks) check(result)
  })
})

/** How many files a fuzz makes: a few thousand in every run, more where the environment asks for it. */
const fuzzed = Number(process.env['PITCHLINE_FUZZED_LOGS'] ?? 2_000)

it(`${fuzzed} files spoilt at random are read or refused with a code, and never hold a number that is none`, () => {
  const originals = logNumbers.map((number) => readFileSync(path.join(logFolder, `${number}.csv`)))
  const troubles: string[] = []
  for (let seed = 0; seed < fuzzed; seed += 1) {
    const spoilt = spoiltBytes(originals[seed % originals.length] ?? new Uint8Array(), seed)
    try {
      const found = readText(spoilt)
      if (typeof found === 'string') {
        if (found === 'refused without a code') troubles.push(`${seed}: ${found}`)
      } else troubles.push(...oddNumbers(found).map((one) => `${seed}${one}`))
    } catch (thrown) {
      troubles.push(`${seed}: ${String(thrown)}`)
    }
  }
  expect(troubles).toEqual([])
}, 120_000)

/** A short piece of a log with bytes changed, taken out, doubled, or put in at random. */
function spoiltBytes(original: Uint8Array, seed: number): Uint8Array {
  const random = randomStream(seed, 3)
  const from = random() < 0.5 ? 0 : randomBelow(random, original.length)
  const bytes = [...original.subarray(from, from + 300 + randomBelow(random, 3_000))]
  const cuts = 1 + randomBelow(random, 12)
  const likely = [0, 10, 13, 34, 44, 45, 46, 58, 59, 9, 48, 57, 101, 255]
  for (let cut = 0; cut < cuts; cut += 1) {
    const at = randomBelow(random, bytes.length + 1)
    const kind = randomBelow(random, 5)
    const byte = random() < 0.6 ? (likely[randomBelow(random, likely.length)] ?? 0) : randomBelow(random, 256)
    if (kind === 0) bytes[at] = byte
    else if (kind === 1) bytes.splice(at, 1 + randomBelow(random, 60))
    else if (kind === 2) bytes.splice(at, 0, byte)
    else if (kind === 3) bytes.splice(at, 0, ...bytes.slice(at, at + randomBelow(random, 200)))
    else
      bytes.splice(
        at,
        randomBelow(random, 8),
        ...Array.from({ length: randomBelow(random, 8) }, () => randomBelow(random, 256)),
      )
  }
  return Uint8Array.from(bytes.map((byte) => byte ?? 0))
}
