import { describe, expect, it } from 'vitest'
import type { LogResult } from '../../../shared-engine/log/result.ts'
import { resultOfText } from './reading.ts'

// Layouts of recorders that the reader was not written for, invented: what was put in comes out, without a correction.

const rows = Array.from({ length: 60 }, (_, at) => ({
  t: at / 5,
  rpm: 1_500 + Math.round(700 * Math.sin(at / 8)),
  volts: 50 - at / 100,
  amps: 12 + (at % 7) / 10,
  celsius: 35 + at / 10,
}))
type Row = (typeof rows)[number]

const comma = (value: number, digits: number) => value.toFixed(digits).replace('.', ',')
const two = (value: number) => String(Math.floor(value)).padStart(2, '0')
const clock = (seconds: number) =>
  `${two(seconds / 3600)}:${two((seconds / 60) % 60)}:${(seconds % 60).toFixed(3).padStart(6, '0')}`
const fahrenheit = (celsius: number) => ((celsius * 9) / 5 + 32).toFixed(2)
const table = (heading: string, line: (row: Row) => string, ends = '\n') =>
  [heading, ...rows.map(line)].join(ends) + ends

const layouts: Readonly<Record<string, string>> = {
  'a date with a zone under a name of its own': table(
    'datetime,Motor RPM,Voltage [V],Input Current [A],Temp Motor [degF]',
    (row) =>
      `2026-01-17T${clock(50_000 + row.t)}+01:00,${row.rpm},${row.volts.toFixed(2)},${row.amps.toFixed(1)},${fahrenheit(row.celsius)}`,
  ),
  'a date with a time under no name': table(
    'recorded,Motor RPM,Voltage [V],Input Current [A],Temp Motor [degF]',
    (row) =>
      `17.01.2026 ${clock(50_000 + row.t)},${row.rpm},${row.volts.toFixed(2)},${row.amps.toFixed(1)},${fahrenheit(row.celsius)}`,
  ),
  'another language, decimal commas, turns a minute in its own words': table(
    'Temps (s);Régime moteur (tr/min);Tension batterie (V);Courant batterie (A);Temp moteur (°C)',
    (row) =>
      `${comma(row.t, 1)};${row.rpm};${comma(row.volts, 2)};${comma(row.amps, 1)};${comma(row.celsius, 2)}`,
    '\r\n',
  ),
  'milliseconds since 1970, thousandths, a comma at the end': table(
    'timestamp_ms,motor_rpm,battery_voltage_mV,battery_current_mA,motor_temp_f,',
    (row) =>
      `${1_764_370_000_000 + 1_000 * row.t},${row.rpm},${Math.round(1_000 * row.volts)},${Math.round(1_000 * row.amps)},${fahrenheit(row.celsius)},`,
  ),
  'short names, a letter for each quantity': table(
    'ts,n_rpm,v_bat,i_bat,t_mot',
    (row) =>
      `${1_764_370_000_000 + 1_000 * row.t},${row.rpm},${row.volts.toFixed(2)},${row.amps.toFixed(1)},${row.celsius.toFixed(2)}`,
  ),
  'units in the cells alone, names that say no quantity': table(
    'Time; RPM; Battery; Drawn; Motor',
    (row) =>
      `${row.t.toFixed(1)} s; ${row.rpm} rpm; ${row.volts.toFixed(2)} V; ${row.amps.toFixed(1)} A; ${row.celsius.toFixed(2)} °C`,
  ),
  'minutes and seconds, thousands of turns, thousandths, kelvin': table(
    'Min:Sec|kRPM|Pack [V]|Current [mA]|Temp [K]',
    (row) =>
      `${clock(row.t).slice(3)}|${(row.rpm / 1_000).toFixed(3)}|${row.volts.toFixed(2)}|${Math.round(1_000 * row.amps)}|${(row.celsius + 273.15).toFixed(2)}`,
  ),
  'from a spreadsheet: its delimiter named, groups of three, commas in names': table(
    'sep=,\nTime,"RPM, motor","Voltage, pack","Current, pack","Temperature, motor"',
    (row) =>
      `"${comma(row.t, 1)}","${Math.floor(row.rpm / 1_000) > 0 ? `${Math.floor(row.rpm / 1_000)}.${String(row.rpm % 1_000).padStart(3, '0')}` : row.rpm}","${comma(row.volts, 2)}","${comma(row.amps, 1)}","${comma(row.celsius, 2)}"`,
  ),
  'microseconds that did not begin at zero, remarks between': table(
    '# run 3\n# micros, rpm, pack, amps, motor\nmicros,motor_rpm,pack_volts,pack_amps,motor_temp',
    (row) =>
      `${row.t % 5 === 0 ? '# mark\n' : ''}${4_000_000_000 + Math.round(1e6 * row.t)},${row.rpm},${row.volts.toFixed(2)},${row.amps.toFixed(1)},${row.celsius.toFixed(2)}`,
  ),
  'two rows of headings and quotes': table(
    '"Elapsed","Motor speed","Pack ""main"" voltage","Pack current","Motor temperature"\n"s","rpm","V","A","degF"',
    (row) =>
      `"${row.t.toFixed(1)}","${row.rpm}","${row.volts.toFixed(2)}","${row.amps.toFixed(1)}","${fahrenheit(row.celsius)}"`,
  ),
}

const peakOf = ({ facts }: LogResult, name: string) => facts.peaks[name]?.value ?? NaN

describe.each(Object.entries(layouts))('%s', (_, text) => {
  it('is read as it was written, with nothing repaired', () => {
    const found = resultOfText(text)
    expect(found.columns.flatMap(({ channel }) => channel ?? [])).toEqual([
      'time',
      'rpm',
      'volts',
      'amps',
      'motorC',
    ])
    expect(found.repairs).toEqual([])
    expect(found.facts.seconds).toBeCloseTo(11.8, 6)
    expect(peakOf(found, 'rpm')).toBe(Math.max(...rows.map(({ rpm }) => rpm)))
    expect(peakOf(found, 'volts')).toBeCloseTo(50, 6)
    expect(peakOf(found, 'amps')).toBeCloseTo(12.6, 6)
    expect(peakOf(found, 'motorC')).toBeCloseTo(40.9, 2)
  })
})
