import { createHash } from 'node:crypto'
import { describe, expect, it } from 'vitest'
import { CellCutter } from '../../../shared-engine/log/text/cut.ts'
import { encodingOf } from '../../../shared-engine/log/text/encoding.ts'
import { unitInHeading } from '../../../shared-engine/log/text/heading.ts'
import { readNumber } from '../../../shared-engine/log/text/number.ts'
import { sha256, utf8Bytes } from '../../../shared-engine/log/text/sha256.ts'
import { momentText, readTime } from '../../../shared-engine/log/text/time-cell.ts'
import { wordsOf } from '../../../shared-engine/log/columns/words.ts'
import { countOf, readText, resultOfText } from './reading.ts'

describe('cells as RFC 4180 cuts them', () => {
  const cutter = new CellCutter(',')
  // section 2: 5, fields in quotes; 6, delimiters in quotes; 7, a quote in quotes is doubled; 4, blanks belong to a field
  it.each([
    ['"aaa","bbb","ccc"', ['aaa', 'bbb', 'ccc']],
    ['"aaa","b, bb","ccc"', ['aaa', 'b, bb', 'ccc']],
    ['"aaa","b""bb","ccc"', ['aaa', 'b"bb', 'ccc']],
    ['aaa, bbb ,ccc', ['aaa', ' bbb ', 'ccc']],
    ['zzz,yyy,xxx', ['zzz', 'yyy', 'xxx']],
    ['a,,', ['a', '', '']],
  ])('%s', (line, cells) => {
    expect(cutter.line(line)).toEqual(cells)
  })

  it('a quote that is never closed ends with its line', () => {
    expect(cutter.lines('1,"2\n3,4\n5,"6,7"')).toEqual([
      ['1', '2'],
      ['3', '4'],
      ['5', '6,7'],
    ])
  })

  it('many lines together give what each gives alone', () => {
    const lines = ['1,2', '', '"a","b"', 'x,"y""z"', '"open,1', 'last,9']
    expect(cutter.lines(lines.join('\n'))).toEqual(lines.map((line) => cutter.line(line)))
    expect(cutter.lines('1,2\n')).toEqual([['1', '2'], ['']])
  })

  it('blanks part in runs', () => {
    expect(new CellCutter(' ').line('  1   2 3 ')).toEqual(['1', '2', '3'])
  })
})

describe('encodings', () => {
  const log = 'Time;Motor temp °C;Volts\r\n0,1;20;48,5\r\n0,2;21;48,4\r\n0,3;21;48,4\r\n'
  const utf16 = (text: string, little: boolean, mark: boolean) => {
    const bytes = Buffer.from((mark ? '\ufeff' : '') + text, 'utf16le')
    return little ? bytes : bytes.swap16()
  }
  it.each([
    ['utf-8', Buffer.from(log)],
    ['utf-8', Buffer.from(`\ufeff${log}`)],
    ['utf-16-le', utf16(log, true, true)],
    ['utf-16-be', utf16(log, false, true)],
    ['utf-16-le', utf16(log, true, false)],
    ['utf-16-be', utf16(log, false, false)],
    ['windows-1252', Buffer.from(log, 'latin1')],
  ])('%s', (encoding, bytes) => {
    const result = resultOfText(bytes)
    expect(result.reading.encoding).toBe(encoding)
    expect(result.columns.map(({ name }) => name)).toEqual(['Time', 'Motor temp °C', 'Volts'])
    expect(result.facts.peaks['motorC']?.value).toBe(21)
  })

  it('every line end is one, and a character across two blocks stays whole', () => {
    const rows = Array.from({ length: 4000 }, (_, row) => `${row / 10};2${row % 10};48,5 °`)
    for (const end of ['\n', '\r\n', '\r']) {
      const result = resultOfText(['Time;Motor temp °C;Größe', ...rows].join(end) + end)
      expect([result.reading.rows, result.segments[0]?.firstRow]).toEqual([4000, 2])
      expect(result.columns[2]?.name).toBe('Größe')
    }
  })

  it('zeros at the end are cut and counted; control characters near the beginning are no text', () => {
    const cut = resultOfText(Buffer.concat([Buffer.from(log), Buffer.alloc(300)]))
    expect([cut.reading.rows, countOf(cut, 'cut-tail')]).toEqual([3, 1])
    expect(encodingOf(Uint8Array.of(65, 1, 66))).toBe('binary')
    expect(encodingOf(new Uint8Array())).toBe('empty')
    expect(readText('# only a remark\n')).toBe('one-column')
  })
})

describe('numbers', () => {
  it.each([
    ['1.5', '.', 1.5],
    ['-1.5e3', '.', -1500],
    ['\u22122', '.', -2],
    ['1,234.5', '.', 1234.5],
    ['1.234,5', ',', 1234.5],
    ["1'234", '.', 1234],
    ['1\u202f234\u202f567,25', ',', 1234567.25],
    ['.5', '.', 0.5],
    ['5.', '.', 5],
    ['12.5 V', '.', 12.5],
    ['45°C', '.', 45],
  ] as const)('%s with %s is %d', (text, mark, value) => {
    expect(readNumber(text, mark).value).toBe(value)
  })
  it.each(['nan', 'N/A', '--', 'Infinity', '1e999', 'null'])('%s is missing', (text) => {
    expect(readNumber(text, '.').value).toBeNaN()
  })
  it.each(['1.2.3', '12 apples', 'e5', '1,23', '0x10'])('%s is no number', (text) => {
    expect(readNumber(text, '.').value).toBe(Infinity)
  })
})

describe('times', () => {
  // seconds since 1970 as Date gives them: the language's own reading of ISO 8601
  it.each([
    '2026-08-29T12:28:45.95Z',
    '2000-02-29T00:00:00Z',
    '1969-12-31T23:59:59Z',
    '2026-04-10T09:06:11.62+01:00',
  ])('%s', (text) => {
    const time = readTime(text)
    expect(time?.form).toBe('moment')
    expect(time?.seconds).toBeCloseTo(Date.parse(text) / 1000, 6)
    expect(`${momentText(time?.seconds ?? NaN)}Z`).toBe(new Date(text).toISOString())
  })
  it.each([
    ['9.4.2026 23:59:38.82', '2026-04-09T23:59:38.820'],
    ['04/27/2026 1:02:03 pm', '2026-04-27T13:02:03.000'],
    ['27/04/2026 01:02:03', '2026-04-27T01:02:03.000'],
  ])('%s is %s', (text, moment) => {
    expect(momentText(readTime(text)?.seconds ?? NaN)).toBe(moment)
  })
  it.each([
    ['23:59:45.61', 86385.61],
    ['1:30', 90],
    ['12:00:00 am', 0],
  ])('the clock %s is %d s', (text, seconds) => {
    expect(readTime(text)).toEqual({ form: 'clock', seconds })
  })
  it.each(['2026-02-29 00:00:00', '25:61:00', '12.5', '2026-13-01'])('%s is no time', (text) => {
    expect(readTime(text)).toBeNull()
  })
})

it('digests are those of FIPS 180-4, and of another implementation at every length about a block', () => {
  expect(sha256(utf8Bytes('abc'))).toBe('ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad')
  for (let length = 0; length < 140; length += 1) {
    const text = 'é'.repeat(length)
    expect(sha256(utf8Bytes(text))).toBe(createHash('sha256').update(text).digest('hex'))
  }
})

describe('headings', () => {
  it.each([
    ['Pack current [A]', 'a'],
    ['Speed_km/h', 'km/h'],
    ['motor_rpm 1/min', '1/min'],
    ['Temp (℃)', '°c'],
    ['t µs', 'μs'],
    ['eRPM', 'erpm'],
    ['Rudder', undefined],
  ])('%s is in %s', (heading, unit) => {
    expect(unitInHeading(heading)?.key).toBe(unit)
  })
  it('are split into words as people write them together', () => {
    expect(wordsOf('MotorRPM')).toEqual(['motorrpm', 'motor', 'rpm'])
    expect(wordsOf('ESCTemp_max')).toEqual(['esctemp', 'max', 'esc', 'temp'])
  })
})
