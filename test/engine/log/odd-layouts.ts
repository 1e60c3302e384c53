import {
  channels,
  file,
  heading,
  peak,
  plain,
  reading,
  repaired,
  rows,
  segments,
  swapped,
  withRow,
  type OddFile,
} from './odd-file.ts'

/** Layouts: delimiters, headings, rows of other kinds. */
export const oddLayouts: readonly OddFile[] = [
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
]
