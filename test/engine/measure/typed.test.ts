import { describe, expect, test } from 'vitest'
import { pastedTable, typedNumber } from '../../../shared-engine/measure/typed.ts'
import { pastedReadings, typedReading, typedReadings } from '../../../shared-engine/measure/typed-readings.ts'

describe('numbers of a bench form', () => {
  test.each([
    ['12.5', 12.5],
    ['12,5', 12.5],
    [' −3 ', -3],
    ['.5', 0.5],
    ['3.', 3],
    ['1e3', 1000],
  ])('%s is read', (text, value) => {
    expect(typedNumber(text)).toBe(value)
  })

  test.each(['', 'a', '1,234,5', '1e999', '3 V', '--2', '0x10', 'NaN'])('%s is none', (text) => {
    expect(typedNumber(text)).toBeNull()
  })

  test('a pasted table is cut at tabs, else semicolons, else blanks; empty lines are left out, empty cells stay', () => {
    expect(pastedTable('3.9\t560\r\n\r\n7.8\t1150\n')).toEqual([
      ['3.9', '560'],
      ['7.8', '1150'],
    ])
    expect(pastedTable('1\t\t3')).toEqual([['1', '', '3']])
    expect(pastedTable('1;2')).toEqual([['1', '2']])
    expect(pastedTable(' 1  2 \n3 4')).toEqual([
      ['1', '2'],
      ['3', '4'],
    ])
  })
  test('commas part cells only where they can be no decimal ones', () => {
    expect(pastedTable('3.9,560\n7.8,1150')).toEqual([
      ['3.9', '560'],
      ['7.8', '1150'],
    ])
    expect(pastedTable('3, 560\n7, 1150')).toEqual([
      ['3', '560'],
      ['7', '1150'],
    ])
    expect(pastedTable('3,9 560')).toEqual([['3,9', '560']])
    expect(pastedTable('3,9')).toEqual([['3,9']])
  })
})

describe('a reading with its unit', () => {
  // 1 lb = 0.45359237 kg and 1 in = 25.4 mm exactly: NIST SP 811, appendix B.
  test.each([
    ['pullKg', '18 lb', 8.16466266],
    ['pullKg', '8,2', 8.2],
    ['pullKg', '12+4', 16],
    ['rearAheadMm', '−3', -3],
    ['spanMm', '12 in', 304.8],
    ['celsius', '50 °F', 10],
    ['celsius', '-40 °F', -40],
    ['rpm', '31 400', 31400],
    ['dischargedMah', '2.1 Ah', 2100],
    ['metresPerSecond', '18 km/h', 5],
    ['plusVolts', '12 mV', 0.012],
    ['motor.resistanceMilliohm', '0.0095 Ohm', 9.5],
    ['fromPercent', '90 %', 90],
    ['densityKgPerL', '1.07', 1.07],
    ['direction', '-1', -1],
  ])('%s: %s is kept in its own unit', (name, text, value) => {
    const read = typedReading(name, text)
    expect(read.ok && read.value).toBeCloseTo(value, 12)
  })

  test.each([
    ['pullKg', '8.2 V', 'entry-wrong-unit'],
    ['pullKg', '1,234', 'entry-ambiguous'],
    ['pullKg', '8.2 ± 0.1', 'entry-not-understood'],
    ['rpm', 'NaN', 'entry-not-understood'],
    ['rpm', '1e400', 'entry-not-understood'],
    ['lever', '4 kg', 'entry-wrong-unit'],
  ])('%s: %s is refused with what is allowed', (name, text, code) => {
    const read = typedReading(name, text)
    expect(read.ok ? null : read.mistakes[0]?.code).toBe(code)
    expect(read.ok ? '' : read.mistakes[0]?.allowed).not.toBe('')
  })

  test('a list has a unit behind each of its numbers, or one behind the last for all; mixed ones are refused whole', () => {
    const listOf = (text: string) => {
      const read = typedReadings('pullKg', text)
      return read.ok ? read.value : null
    }
    expect(listOf('8.2  8,3;8.25')).toEqual([8.2, 8.3, 8.25])
    expect(listOf('')).toEqual([])
    expect(listOf('8.2 kg 830 g')).toEqual([8.2, 0.83])
    expect(listOf('10 20 lb')).toEqual([4.5359237, 9.0718474])
    expect(listOf('10 lb 20')).toBeNull()
    expect(listOf('10 lb 20 lb 30')).toBeNull()
    expect(listOf('8.2 or so')).toBeNull()
  })
})

describe('a table from a spreadsheet', () => {
  const valuesOf = (text: string, names: readonly string[]) =>
    pastedReadings(text, names).cells.map(({ row, name, value }) => `${row} ${name} ${value}`)

  test('has its headings taken off, and their units hold for what stands below', () => {
    const cells = ['0 volts 3.9', '0 rpm 560', '1 volts 7.8005', '1 rpm 1150']
    expect(valuesOf('Volts (mV);rpm\n3900;560\n7800,5;1150\n', ['volts', 'rpm'])).toEqual(cells)
    expect(valuesOf('Volts [V]\trpm\r\n3,9\t560\r\n7,8005\t1150', ['volts', 'rpm'])).toEqual(cells)
    expect(valuesOf('3.9 560\n7.8005 1150', ['volts', 'rpm'])).toEqual(cells)
  })

  test('with decimal commas has three decimals read, and a point before three digits asked about', () => {
    expect(valuesOf('3,9\t560\n7,800\t1.150', ['volts', 'rpm'])).toEqual([
      '0 volts 3.9',
      '0 rpm 560',
      '1 volts 7.8',
      '1 rpm null',
    ])
  })

  test('has what is no number kept as text, empty cells passed over and columns too many named', () => {
    expect(valuesOf('1\t\n\tx\t5', ['volts', 'rpm'])).toEqual(['0 volts 1', '1 rpm null'])
    expect(pastedReadings('1\t\n\tx\t5', ['volts', 'rpm'])).toMatchObject({ rows: 2, leftOut: ['column 3'] })
    expect(pastedReadings('1\t2\t\n3\t4\t', ['volts', 'rpm']).leftOut).toEqual([])
  })

  test.each([
    ['Speed, rpm\tVolts\n560\t3.9', []],
    ['rpm\tV\n560\t3.9', []],
    ['electrical (rpm)\tread off (mV)\n560\t3900', []],
    ['Row\tVolts\tSpeed\n1\t3.9\t560', ['Row']],
  ])('has its columns go where their headings say: %j', (text, leftOut) => {
    const pasted = pastedReadings(text, ['volts', 'rpm'])
    expect(pasted.leftOut).toEqual(leftOut)
    expect(pasted.cells.map(({ name, value }) => `${name} ${value}`).toSorted()).toEqual([
      'rpm 560',
      'volts 3.9',
    ])
  })

  test('has its columns stay in their order where two headings say the same, or none says anything', () => {
    expect(valuesOf('V\tV\n3.9\t560', ['volts', 'rpm'])).toEqual(['0 volts 3.9', '0 rpm 560'])
    expect(valuesOf('first\tsecond\n3.9\t560', ['volts', 'rpm'])).toEqual(['0 volts 3.9', '0 rpm 560'])
  })
})
