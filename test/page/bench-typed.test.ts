import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { pastedReadings } from '../../shared-engine/measure/typed-readings.ts'
import { readStoredBuildText, writeBuild } from '../../shared-engine/index.ts'
import { BenchWork } from '../../src-renderer/bench/bench-work.svelte.ts'
import { workspaceWith } from './states.ts'

// The manners that every place for typing keeps, kept by the tables of readings. 1 lb = 0.45359237 kg and 1 in = 25.4 mm
// exactly: NIST SP 811, appendix B.

function benchOf(test: 'kv' | 'grip' | 'loop-stiffness' | 'coast-down' = 'loop-stiffness') {
  const { workspace } = workspaceWith([BenchWork])
  const bench = workspace.of(BenchWork)
  bench.choose(test)
  return { workspace, session: workspace.session, bench }
}

describe('a reading', () => {
  it('is shown as it was typed, with its unit, also when the build is opened again', () => {
    const { bench, session } = benchOf()
    bench.typed('rows.0.kg', '18 lb')
    bench.settle('rows.0.kg')
    bench.typed('rows.0.lengthMm', '500')
    bench.settle('rows.0.lengthMm')
    expect(bench.kept?.rows).toEqual([{ kg: 8.16466266, lengthMm: 500 }])
    const again = readStoredBuildText(writeBuild(session.stored))
    if (!again.ok) throw new Error('not read')
    session.open(again.value, true)
    expect([bench.textAt('rows.0.kg'), bench.textAt('rows.0.lengthMm')]).toEqual(['18 lb', '500'])
  })

  it('is shown as the number where the file was changed beside what was typed', () => {
    const { bench, session } = benchOf()
    bench.typed('rows.0.kg', '18 lb')
    bench.settle('rows.0.kg')
    const stored = session.stored
    const readings = {
      ...stored.readings,
      'loop-stiffness': { ...stored.readings?.['loop-stiffness'], rows: [{ kg: 9 }] },
    }
    session.open({ ...stored, readings }, true)
    expect(bench.textAt('rows.0.kg')).toBe('9')
  })

  it('left blank is not there, and 0 is', () => {
    const { bench } = benchOf()
    bench.typed('rows.0.kg', '0')
    bench.typed('rows.1.kg', '5')
    bench.typed('rows.1.kg', '')
    expect(bench.kept?.rows).toEqual([{ kg: 0 }])
  })

  it.each([
    ['rows.0.kg', '5', '1,234', 'Not kept: 5 stays.'],
    ['rows.0.kg', '', 'five', 'Not kept: the place counts as empty.'],
    ['instruments.percent.kg', '0.5', 'half', 'Not kept: 0.5 stays.'],
    ['instruments.resolution.kg', '0.05', '-1', 'Not kept: 0.05 stays.'],
  ])('at %s that is none is said, with what counts instead', (place, before, text, said) => {
    const { bench } = benchOf()
    if (before !== '') bench.typed(place, before)
    const kept = bench.kept
    bench.typed(place, text)
    expect(bench.wrongAt(place)).toContain(said)
    expect([bench.textAt(place), bench.kept]).toEqual([text, kept])
    // It waits for its person: another test opened in between, or the field left, loses nothing.
    bench.settle(place)
    bench.choose('grip')
    expect(bench.wrongPlaces).toEqual([])
    bench.choose('loop-stiffness')
    expect([bench.textAt(place), bench.wrongPlaces]).toEqual([text, [place]])
  })

  it('that could be two numbers is asked about', () => {
    const { bench } = benchOf()
    bench.typed('rows.0.kg', '1,234')
    expect(bench.wrongAt('rows.0.kg')).toMatch(/1\.234/)
    expect(bench.wrongAt('rows.0.kg')).toMatch(/1234/)
  })
})

describe('a number given beside readings', () => {
  it('has its tolerance typed in its unit, in another one or in % of it', () => {
    const { bench } = benchOf()
    bench.typed('given.track.pitchMm', '1 in')
    expect(bench.kept?.given['track.pitchMm']).toBe(25.4)
    for (const [text, spread] of [
      ['0.5', { plusMinus: 0.5 }],
      ['1/16 in', { plusMinus: 1.5875 }],
      ['2 %', { plusMinusPercent: 2 }],
    ] as const) {
      bench.typed('spread.track.pitchMm', text)
      expect(bench.kept?.given['track.pitchMm']).toEqual({ value: 25.4, ...spread })
      bench.settle('spread.track.pitchMm')
      expect(bench.textAt('spread.track.pitchMm')).toBe(text)
    }
    bench.typed('given.track.pitchMm', '30')
    expect(bench.kept?.given['track.pitchMm']).toEqual({ value: 30, plusMinusPercent: 2 })
    bench.typed('spread.track.pitchMm', 'much')
    expect(bench.wrongAt('spread.track.pitchMm')).toContain('stays.')
  })

  it('has a degree of difference, not of the scale, behind a temperature', () => {
    const { bench } = benchOf('kv')
    bench.typed('given.magnetCelsius', '68 °F')
    bench.typed('spread.magnetCelsius', '9 °F')
    expect(bench.kept?.given['magnetCelsius']).toEqual({ value: 20, plusMinus: 5 })
  })
})

describe('undo', () => {
  const places = ['rows.0.kg', 'rows.0.lengthMm', 'rows.2.kg', 'instruments.percent.kg']
  const deeds = fc.array(
    fc.oneof(
      fc.record({
        do: fc.constant('type' as const),
        place: fc.constantFrom(...places),
        text: fc.constantFrom('1', '2 lb', '3,5', 'x', ''),
        leave: fc.boolean(),
      }),
      fc.record({
        do: fc.constantFrom('paste' as const, 'remove' as const, 'undo' as const, 'all' as const),
      }),
    ),
    { maxLength: 30 },
  )

  it('takes back whatever was done to readings, to the very start; redo comes to the very end', () => {
    fc.assert(
      fc.property(deeds, (list) => {
        const { bench, session } = benchOf()
        const start = session.stored
        for (const deed of list) {
          if (deed.do === 'type') {
            bench.typed(deed.place, deed.text)
            if (deed.leave) bench.settle(deed.place)
          }
          if (deed.do === 'paste') bench.paste(0, pastedReadings('kg\tmm\n1\t5\n2\t6', ['kg', 'lengthMm']))
          if (deed.do === 'remove' && (bench.kept?.rows.length ?? 0) > 0) bench.removeRow(0)
          if (deed.do === 'undo') session.history.undo()
          if (deed.do === 'all') bench.removeReadings()
          // What is shown and is a number is what is worked with.
          for (const place of places) {
            const text = bench.textAt(place)
            if (bench.wrongAt(place) !== '' || !place.startsWith('rows.')) continue
            const [, row = '', name = ''] = place.split('.')
            const value = bench.kept?.rows[Number(row)]?.[name]
            const shown =
              { '': undefined, '2 lb': 0.90718474, '3,5': 3.5 }[text] ??
              (text === '' ? undefined : Number(text))
            expect(value).toBe(shown)
          }
        }
        while (session.history.redoName !== null) session.history.redo()
        const end = session.stored
        while (session.history.undoName !== null) session.history.undo()
        expect(session.stored).toBe(start)
        while (session.history.redoName !== null) session.history.redo()
        expect(session.stored).toBe(end)
      }),
      { numRuns: 60, seed: 14 },
    )
  })

  it('is a step for each row taken out, and one for what was typed into one place', () => {
    const { bench, session } = benchOf()
    bench.paste(0, pastedReadings('1\t5\n2\t6\n3\t7', ['kg', 'lengthMm']))
    bench.typed('rows.0.kg', '4')
    bench.typed('rows.0.kg', '45')
    bench.typed('rows.0.lengthMm', '9')
    bench.removeRow(0)
    bench.removeRow(0)
    const names: (string | null)[] = []
    while (session.history.undoName !== null) {
      names.push(session.history.undoName.replace(/ readings: .*/, ''))
      session.history.undo()
    }
    expect(names).toEqual(['remove a row of', 'remove a row of', 'change', 'change', 'paste'])
  })

  it('keeps what is no number, and what was typed with a unit, at its own row when one above is taken out', () => {
    const { bench } = benchOf()
    bench.paste(0, pastedReadings('1\t5\n2\t6\n3\t7', ['kg', 'lengthMm']))
    bench.typed('rows.2.kg', '3 lb')
    bench.typed('rows.1.lengthMm', 'long')
    bench.settle('rows.2.kg')
    bench.removeRow(0)
    expect([bench.textAt('rows.1.kg'), bench.textAt('rows.0.lengthMm')]).toEqual(['3 lb', 'long'])
    expect(bench.wrongAt('rows.0.lengthMm')).toContain('6 stays.')
  })
})
