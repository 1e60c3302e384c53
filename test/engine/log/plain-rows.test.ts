import { describe, expect, it } from 'vitest'
import { PlainRow } from '../../../shared-engine/log/text/plain-row.ts'
import { plainNumber } from '../../../shared-engine/log/text/number.ts'
import { TextReader } from '../../../shared-engine/log/text/reader.ts'
import { oddLayouts } from './odd-layouts.ts'
import { oddValues } from './odd-values.ts'

// Rows of plain numbers are read from the bytes, all others are cut into cells. In UTF-16 every row is cut: a text says the
// same in both.

/** All that was read of a text. */
function readingOf(bytes: Uint8Array) {
  const reader = new TextReader(bytes, {})
  for (let block = 0; block < reader.blocks; block += 1) reader.read(block)
  const text = reader.result()
  if (!('grid' in text)) return text
  const { grid, dialect, headerRow, fingerprint, repairs } = text
  const rows = Array.from({ length: grid.count }, (_, row) => row)
  return {
    dialect,
    headerRow,
    fingerprint,
    repairs: repairs.list(),
    breaks: grid.breaks,
    lines: [...grid.lines.subarray(0, grid.count)],
    columns: grid.columns.map((column) => ({
      name: column.name,
      unit: column.unit,
      cellUnit: column.cellUnit,
      values: [...column.values.subarray(0, grid.count)],
      times: rows.map((row) => [column.formAt(row), column.secondsAt(row)]),
    })),
  }
}

const narrow = (text: string) => readingOf(Buffer.from(text))
const wide = (text: string) => readingOf(Buffer.from(`\ufeff${text}`, 'utf16le'))

const head = 'Time [s],Motor rpm,Pack volts [V]\n'
const row = (at: number) => `${(at / 10).toFixed(1)},${1000 + at},${48 - (at % 7) / 10}`
const rows = (count: number, change: (line: string, at: number) => string = (line) => line) =>
  Array.from({ length: count }, (_, at) => change(row(at), at))
const every = (step: number, other: string) => (line: string, at: number) => (at % step === 3 ? other : line)

const texts: readonly (readonly [string, string])[] = [
  ['plain', head + rows(3000).join('\n') + '\n'],
  ['without a line end at the end', head + rows(3000).join('\n')],
  ['cut in its last row', (head + rows(3000).join('\n')).slice(0, -9)],
  ['CR LF', (head + rows(3000).join('\n') + '\n').replaceAll('\n', '\r\n')],
  ['CR alone', (head + rows(3000).join('\n') + '\n').replaceAll('\n', '\r')],
  [
    'all line ends',
    head + rows(900).join('\n') + '\r\n' + rows(900).join('\r\n') + '\r' + rows(900).join('\r'),
  ],
  ['empty cells', head + rows(2000, every(5, '7,,48')).join('\n') + '\n'],
  ['rows of nothing', head + rows(2000, every(9, ',,')).join('\n') + '\n'],
  ['a cell missing', head + rows(2000, every(7, '8,1200')).join('\n') + '\n'],
  ['a cell too many', head + rows(2000, every(11, '8,1200,48,5')).join('\n') + '\n'],
  ['a delimiter at the end', head + rows(2000, (line) => `${line},`).join('\n') + '\n'],
  ['blanks about cells', head + rows(2000, (line) => line.replaceAll(',', ', ')).join('\n') + '\n'],
  ['signs', head + rows(2000, every(3, '+9,-1300,-0')).join('\n') + '\n'],
  ['marks without digits', head + rows(2000, every(4, '9.,.5,.')).join('\n') + '\n'],
  ['exponents', head + rows(2000, every(4, '9,1.3e3,4.8E1')).join('\n') + '\n'],
  ['long numbers', head + rows(2000, every(4, '9,9007199254740993,48.000000000000001')).join('\n') + '\n'],
  [
    'longer numbers',
    head + rows(2000, every(4, '9,1234567890123456789,4.123456789012345678')).join('\n') + '\n',
  ],
  ['words', head + rows(2000, every(4, '9,nan,n/a')).join('\n') + '\n'],
  ['remarks', head + rows(2000, every(6, '# 1,2,3')).join('\n') + '\n'],
  ['quotes', head + rows(2000, every(6, '"9","1,300",48')).join('\n') + '\n'],
  ['a quote left open', head + rows(2000, every(60, '9,"1300,48')).join('\n') + '\n'],
  ['the heading again', head + rows(2000, every(500, head.trim())).join('\n') + '\n'],
  [
    'another heading',
    head + rows(1000).join('\n') + '\nPack volts [V],Time [s],Motor rpm\n48,101,900\n49,102,901\n',
  ],
  ['units again', head + rows(1000).join('\n') + '\ns,rpm,mV\n101,900,48000\n102,901,48000\n'],
  ['a cell of degrees', head + rows(2000, every(6, '9,1300,48 °')).join('\n') + '\n'],
  ['clock times', head + rows(2000, (_, at) => `12:00:${at % 60},900,48`).join('\n') + '\n'],
  [
    'a comma in numbers',
    'Time [s];rpm;V\n' + rows(2000, (l) => l.replaceAll(',', ';').replaceAll('.', ',')).join('\n'),
  ],
  ['tabs', (head + rows(2000).join('\n')).replaceAll(',', '\t')],
  ['blanks for delimiters', 'Time rpm V\n' + rows(2000).join('\n').replaceAll(',', '  ')],
  ['no heading', rows(2000).join('\n') + '\n'],
  [
    'one row longer than a block',
    head + rows(50).join('\n') + `\n${'9,'.repeat(20_000)}\n` + rows(50).join('\n'),
  ],
  ['empty lines', head + rows(900).join('\n\n') + '\n\n\n'],
]

describe('rows of plain numbers, read where they stand, are what the cells of the same text are', () => {
  it.each([...texts, ...oddLayouts, ...oddValues].filter(([, text]) => typeof text === 'string'))(
    '%s',
    (_, text) => expect(narrow(text as string)).toEqual(wide(text as string)),
  )

  it.each([
    '0',
    '-0',
    '+1.50',
    '.5',
    '5.',
    '9007199254740992',
    '9007199254740993',
    '0.1',
    '123456789.123456789',
  ])('%s is the number that a cell of it is', (cell) => {
    const reader = new PlainRow(',', '.')
    const bytes = Buffer.from(`${cell},1\n`)
    const [value, plain] = [plainNumber(cell, 46), reader.read(bytes, 0, bytes.length, 2)]
    expect(plain).toBe(value === Infinity ? -1 : bytes.length)
    if (plain >= 0) expect(reader.values[0]).toBe(value)
  })
})
