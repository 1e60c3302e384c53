import { readFileSync } from 'node:fs'
import path from 'node:path'
import { expect } from 'vitest'
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
  stepOf,
  withRow,
  type OddFile,
} from './odd-file.ts'
import { logFolder } from './reading.ts'

/** Times, units and values, and files that are no logs. */
export const oddValues: readonly OddFile[] = [
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
    'rows that hold one channel each, a date beside the clock',
    file(
      'Date,Time,Motor rpm,Pack volts [V]',
      rows(40, (row) => `2026-04-09,12:00:${Math.floor(20 + row / 2)}.5,${row % 2 === 0 ? '1500,' : ',48'}`),
    ),
    repaired('merged', 20),
    repaired('coarse-time', 0, 'time'),
  ],
  [
    'a servo pulse a tenth on is in that tenth',
    file(
      'Time [s],Motor rpm,Throttle',
      rows(40, (row) => `${row / 5},1500,1200`),
    ),
    ({ facts }) => expect(facts.shares).toEqual([0, 0, 1, 0, 0, 0, 0, 0, 0, 0]),
  ],
  [
    // Exactly: a hair above would be past a limit of 60 °C.
    'whole degrees Fahrenheit of whole degrees Celsius',
    file(
      'Time [s],Motor rpm,Motor temp [°F]',
      rows(40, (row) => `${row / 5},1500,${row < 20 ? 131 : 140}`),
    ),
    ({ facts }) => expect(facts.peaks['motorC']?.value).toBe(60),
  ],
  [
    'volts that never say anything else, whatever the current',
    file(
      'Time [s],Pack volts [V],Pack amps [A]',
      rows(40, (row) => `${row / 5},48,${3 * row}`),
    ),
    repaired('stuck', 39, 'volts'),
  ],
  [
    'rows alike between the seldom rpm of a machine that stands',
    file(
      'Time [s],Motor rpm,Pack volts [V],Motor temp [°C],ESC temp [°C]',
      rows(60, (row) => `${row / 5},${row % 15 === 0 ? 0 : ''},48,20,21`),
    ),
    repaired('frozen', 0),
  ],
  [
    'rows alike between the seldom rpm of a machine that drives',
    file(
      'Time [s],Motor rpm,Pack volts [V],Motor temp [°C],ESC temp [°C]',
      rows(60, (row) => `${row / 5},${row % 15 === 0 ? 1500 + row : ''},48,20,21`),
    ),
    repaired('frozen', 52),
  ],
  [
    'columns that are headed and never filled: the current by sag, the shares by it, the rpm of the one that has some',
    file(
      'Time [s],Motor rpm,Electrical rpm,Pack volts [V],Pack amps [A],Throttle [%],Duty [%]',
      rows(
        60,
        (row) => `${row / 5},nan,${row < 20 ? 0 : 10_000},${row < 20 ? 50 : `49.${row % 5}`},nan,,nan`,
      ),
    ),
    ({ rpmScale, facts, judged }) => {
      expect(rpmScale?.source).toBe('erpm')
      expect(rpmScale?.evidence).toBeGreaterThan(0.1)
      expect(facts.ampsFrom).toBe('sag')
      expect(facts.most?.motorAmps?.value).toBeGreaterThan(1)
      expect(facts.sharesBy).toBe('amps')
      expect(judged.cutOff).toBe(false)
    },
  ],
  [
    'an rpm that is headed and never filled: no speed, and from nothing',
    file(
      'Time [s],Motor rpm,Pack volts [V]',
      rows(40, (row) => `${row / 5},,48.${row % 5}`),
    ),
    ({ facts, judged }) => {
      expect([facts.topSpeedMps, facts.topSpeedFrom, facts.ampsFrom, facts.distanceM]).toEqual([
        null,
        null,
        null,
        null,
      ])
      expect(judged).toEqual({ loadLost: false, stall: false, cutOff: false })
    },
  ],
  [
    'volts that never say anything else, with little current',
    file(
      'Time [s],Pack volts [V],Pack amps [A]',
      rows(40, (row) => `${row / 5},48,${row / 10}`),
    ),
    repaired('stuck', 0, 'volts'),
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
    'an rpm that runs over its sixteen bits, two’s complement with a sign',
    file(
      'Time,Motor rpm,Volts',
      rows(60, (row) => `${row / 10},${32_470 + 10 * row - (row >= 30 ? 65_536 : 0)},48`),
    ),
    repaired('signed-wrap', 30, 'rpm'),
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
