import { describe, expect, it } from 'vitest'
import type { ColumnsChoice } from '../../../shared-engine/log/columns/choice.ts'
import { demoBuild, readText, resultOfText } from './reading.ts'

// Recorders that make it hard, invented (demo): what was put in comes out after at most two corrections, and a number that
// may be another is never taken in silence.

const rows = Array.from({ length: 150 }, (_, at) => ({
  t: at / 5,
  rpm: 1_500 + Math.round(700 * Math.sin(at / 8)),
  volts: 50 - at / 100,
  amps: 12 + (at % 7) / 10,
  celsius: 35 + at / 10,
}))
type Row = (typeof rows)[number]

const polePairs = (demoBuild.motor.poleCount ?? NaN) / 2
const cells = demoBuild.pack.series
const comma = (value: number, digits: number) => value.toFixed(digits).replace('.', ',')
const two = (value: number) => String(Math.floor(value)).padStart(2, '0')
const clock = (seconds: number) => {
  const now = seconds % 86_400
  return `${two(now / 3600)}:${two((now / 60) % 60)}:${(now % 60).toFixed(3).padStart(6, '0')}`
}
const fahrenheit = (celsius: number) => (celsius * 9) / 5 + 32
const table = (heading: string, line: (row: Row) => string, ends = '\n') =>
  [heading, ...rows.map(line)].join(ends) + ends
const plain = ({ rpm, volts, amps, celsius }: Row) =>
  `${rpm},${volts.toFixed(2)},${amps.toFixed(1)},${celsius.toFixed(1)}`

interface Recorder {
  readonly text: string | Uint8Array
  /** At most two; none where left out. */
  readonly corrections?: ColumnsChoice
  /** What has to be said of it before it is corrected. */
  readonly said?: RegExp
}

const prose = Array.from({ length: 30 }, (_, at) => {
  const lines = [
    'Recorder of the hut’s workshop',
    '',
    'Serial: 0042',
    'Pack: 16 in series, 58 V',
    'Note: track changed',
  ]
  return lines[at % lines.length] ?? ''
})

const recorders: Readonly<Record<string, Recorder>> = {
  'thirty lines of prose, milliseconds since it was switched on, a summary at the end': {
    text: `${prose.join('\n')}\n${table(
      'Zeit seit Start [ms];Drehzahl [1/min];Batteriespannung [V];Batteriestrom [A];Motortemperatur [°C]',
      ({ t, rpm, volts, amps, celsius }) =>
        `${Math.round(812_345 + 1_000 * t)};${rpm};${comma(volts, 2)};${comma(amps, 1)};${comma(celsius, 1)}`,
    )}\nZusammenfassung\nDauer 30 s\n`,
  },
  'a clock over midnight, electrical rpm, volts of one cell, tenths of an ampere, Fahrenheit': {
    text: table(
      'Uhrzeit;ERPM;Zellspannung [V];Strom [dA];Temp Motor [°F]',
      ({ t, rpm, volts, amps, celsius }) =>
        `${clock(86_390 + t).replace('.', ',')};${rpm * polePairs};${comma(volts / cells, 5)};${Math.round(10 * amps)};${comma(fahrenheit(celsius), 2)}`,
      '\r\n',
    ),
    said: /“Strom \[dA\]” says dA/,
    corrections: { columns: { 'Strom [dA]': { factor: 0.1 } } },
  },
  'capitals and underscores, a factor in the heading': {
    text: table(
      'TIME_MS,ERPM,VBAT,CURR_X10,MOTOR_TEMP_F',
      ({ t, rpm, volts, amps, celsius }) =>
        `${Math.round(51_234 + 1_000 * t)},${rpm * polePairs},${volts.toFixed(2)},${Math.round(10 * amps)},${fahrenheit(celsius).toFixed(2)}`,
    ),
    said: /“CURR_X10” says X10/,
    corrections: { columns: { CURR_X10: { factor: 0.1 } } },
  },
  'tabs, decimal commas, kelvin': {
    text: table(
      'Tiempo (s)\tRevoluciones (rpm)\tTensión batería (V)\tCorriente batería (A)\tTemperatura motor (K)',
      ({ t, rpm, volts, amps, celsius }) =>
        `${comma(t, 1)}\t${rpm}\t${comma(volts, 2)}\t${comma(amps, 1)}\t${comma(celsius + 273.15, 2)}`,
    ),
  },
  'columns of a fixed width, headings in two lines over units and a ruled line': {
    text: table(
      '   Time   Motor    Pack    Pack   Motor\n           speed   volts    amps    temp\n    [s]    [rpm]     [V]     [A]    [°C]\n-------  -------  ------  ------  ------',
      ({ t, rpm, volts, amps, celsius }) =>
        [t.toFixed(1), String(rpm), volts.toFixed(2), amps.toFixed(1), celsius.toFixed(1)]
          .map((cell, at) => cell.padStart(at === 0 ? 7 : 9))
          .join(''),
    ),
  },
  'no names at all': {
    text: rows.map((row) => `${row.t.toFixed(1)},${plain(row)}`).join('\n'),
    // One file of columns, or five choices in the window, once for all files of this shape.
    corrections: {
      columns: {
        1: { channel: 'time' },
        2: { channel: 'rpm' },
        3: { channel: 'volts' },
        4: { channel: 'amps' },
        5: { channel: 'motorC' },
      },
    },
  },
  'a row of units below, a mean at the end': {
    text: `${table(
      'Tempo;Giri motore;Tensione pacco;Corrente pacco;Temp. motore\n[s];[giri/min];[V];[A];[°C]',
      ({ t, rpm, volts, amps, celsius }) =>
        `${comma(t, 1)};${rpm};${comma(volts, 2)};${comma(amps, 1)};${comma(celsius, 1)}`,
    )}Media;1500;49,2;12,3;42\n`,
  },
  'day and time of day apart, thousandths of volts and amperes': {
    text: table(
      'Date,Time of day,Motor RPM,Batt mV,Batt mA,T mot',
      ({ t, rpm, volts, amps, celsius }) =>
        `17/01/2026,${clock(50_000 + t)},${rpm},${Math.round(1_000 * volts)},${Math.round(1_000 * amps)},${celsius.toFixed(1)}`,
    ),
  },
  minutes: {
    text: table(
      'Elapsed (min),Motor speed (rpm),Pack (V),Pack (A),Winding (°C)',
      (row) => `${(row.t / 60).toFixed(8)},${plain(row)}`,
    ),
  },
  'whole seconds, their thousandths in a column of their own': {
    text: table(
      'sec,msec,rpm,vbat,ibat,tmot',
      (row) => `${Math.floor(row.t) + 100},${Math.round(1_000 * (row.t % 1))},${plain(row)}`,
    ),
  },
  'the frequency of the motor in Hz, the link in place of the pack': {
    text: table(
      't [s];Motor frequency [Hz];DC link [V];DC current [A];Stator temp [°C]',
      ({ t, rpm, volts, amps, celsius }) =>
        `${t.toFixed(1)};${((rpm * polePairs) / 60).toFixed(4)};${volts.toFixed(2)};${amps.toFixed(1)};${celsius.toFixed(1)}`,
    ),
    said: /the log has no rpm/,
    corrections: {
      columns: {
        'Motor frequency [Hz]': { channel: 'erpm', factor: 60 },
        'DC link [V]': { channel: 'volts' },
      },
    },
  },
  'radians a second': {
    text: table(
      't/s|omega rad/s|U/V|I/A|theta/K',
      ({ t, rpm, volts, amps, celsius }) =>
        `${t.toFixed(1)}|${((rpm * Math.PI) / 30).toFixed(4)}|${volts.toFixed(2)}|${amps.toFixed(1)}|${(celsius + 273.15).toFixed(2)}`,
    ),
    said: /the log has no rpm/,
    corrections: { columns: { 'omega rad/s': { channel: 'rpm', factor: 30 / Math.PI } } },
  },
  'two bytes a letter, names with dots above': {
    text: new Uint8Array(
      Buffer.from(
        `\ufeff${table(
          'Tid (s)\tVarvtal (varv/min)\tSpänning (V)\tStröm (A)\tMotortemp (°C)',
          ({ t, rpm, volts, amps, celsius }) =>
            `${comma(t, 1)}\t${rpm}\t${comma(volts, 2)}\t${comma(amps, 1)}\t${comma(celsius, 1)}`,
        )}`,
        'utf16le',
      ),
    ),
  },
  'amps that are drawn below zero': {
    text: table(
      'Time [s],Motor rpm,Pack volts [V],Pack current [A],Motor temp [°C]',
      ({ t, rpm, volts, amps, celsius }) =>
        `${t.toFixed(1)},${rpm},${volts.toFixed(2)},${(-amps).toFixed(1)},${celsius.toFixed(1)}`,
    ),
    said: /The pack’s amps are below zero in 150 of 150 samples/,
    corrections: { columns: { 'Pack current [A]': { factor: -1 } } },
  },
  'a counter of milliseconds that goes round, under a name of its own': {
    text: table(
      'ticks,n_mot,u_batt,i_batt,temp',
      (row) => `${Math.round(4_294_960_000 + 1_000 * row.t)},${plain(row)}`,
    ),
    corrections: { columns: { ticks: { channel: 'time', unit: 'ms' }, n_mot: { channel: 'rpm' } } },
  },
}

describe.each(Object.entries(recorders))('%s', (_, { text, corrections = {}, said }) => {
  it('is read as it was written, after at most two corrections', () => {
    const { columns, facts, notes } = resultOfText(text, corrections)
    expect(columns.flatMap(({ channel }) => channel ?? []).filter((id) => id !== 'date')).toEqual(
      expect.arrayContaining(['time', expect.stringMatching(/^e?rpm$/), 'amps', 'motorC']),
    )
    const most = (of: (row: Row) => number) => Math.max(...rows.map(of))
    const peakOf = (name: string) => facts.peaks[name]?.value ?? NaN
    expect(facts.rows).toBe(rows.length)
    expect(facts.seconds).toBeCloseTo(29.8, 3)
    expect(peakOf('rpm')).toBeCloseTo(
      most(({ rpm }) => rpm),
      1,
    )
    expect(peakOf('amps')).toBeCloseTo(
      most(({ amps }) => amps),
      6,
    )
    expect(peakOf('motorC')).toBeCloseTo(
      most(({ celsius }) => celsius),
      1,
    )
    const volts = columns.some(({ channel }) => channel === 'volts')
    const least = Math.min(...rows.map((row) => row.volts))
    expect(volts ? peakOf('leastVolts') : peakOf('leastCellVolts') * cells).toBeCloseTo(least, 3)
    if (said !== undefined) expect(notes.filter((note) => said.test(note))).toEqual([])
  })

  it('says before that what it could not know', () => {
    const found = readText(text)
    if (said !== undefined)
      expect(typeof found === 'string' ? [] : found.notes).toContainEqual(expect.stringMatching(said))
    else if (Object.keys(corrections).length > 0) expect(found).toBe('no-time')
    else
      expect(
        typeof found === 'string' ? found : found.notes.filter((note) => /no unit|below zero/.test(note)),
      ).toEqual([])
  })
})
