import { writeFileSync } from 'node:fs'
import path from 'node:path'
import { describe, expect, it } from 'vitest'
import { pitchline, root, temporaryFolder, untidyLines } from './command.ts'

const folder = temporaryFolder()
const golden = (name: string) => path.join(root, 'test/golden/measure', name)

describe('pitchline measure', () => {
  it('prints steps, cautions, formula, result and what to do next, as the README says', () => {
    const { code, out, err } = pitchline(['measure', 'weigh', 'examples/sled.readings.json'])
    expect([code, err]).toEqual([0, ''])
    const places = [
      'Steps',
      'Take care',
      'vehicle.massKg = 18.15 ± 0.13 kg: good',
      '= F + R',
      'What makes it uncertain',
      'What to do next',
      'origin measured',
    ].map((part) => out.indexOf(part))
    expect(places.every((place) => place >= 0)).toBe(true)
    expect(places).toEqual([...places].sort((one, other) => one - other))
    expect(untidyLines(out)).toEqual([])
  })

  it('gives the same as JSON, reading entries from a build', () => {
    const words = [
      'measure',
      'coast-down',
      golden('28.readings.json'),
      '--build',
      golden('28.build.json'),
      '--json',
    ]
    const { code, out } = pitchline(words)
    expect(code).toBe(0)
    const found = JSON.parse(out) as { format: string; version: number; results: { path: string }[] }
    expect([found.format, found.version]).toEqual(['pitchline-measurement', 1])
    expect(found.results.map((result) => result.path)).toEqual([
      'ground.rollingCoefficient',
      'vehicle.dragCoefficient',
    ])
  })

  it('exits with 2 where readings have to be taken again', () => {
    const { code, out } = pitchline(['measure', 'kv', golden('65.readings.json')])
    expect(code).toBe(2)
    expect(out).toContain('rows: too few')
  })

  it('offers no value of readings that no bench has, and says of one that it cannot weigh that it cannot', () => {
    // Squares of these would be more than a number holds: the line through them came out as 0 ± 0, good.
    const rows = [1, 2, 3].map((one) => ({
      amps: one * 1e200,
      plusVolts: 0.02 * one,
      minusVolts: 0.01 * one,
    }))
    const file = path.join(folder(), 'odd.json')
    const write = (more: object) =>
      writeFileSync(file, JSON.stringify({ format: 'pitchline-readings', version: 1, ...more }))
    write({ test: 'wiring-drop', rows })
    const huge = pitchline(['measure', 'wiring-drop', file])
    expect([huge.code, huge.out]).toEqual([1, ''])
    expect(huge.err).toContain('rows.0.amps: a number up to 1e12, found 1e+200.')
    write({
      test: 'weigh',
      lists: { frontKg: [8.25], rearKg: [9.9], spanMm: [640] },
      given: { rearAheadMm: -20 },
    })
    const once = pitchline(['measure', 'weigh', file])
    expect(once.out).toContain('vehicle.cgAheadMm = 270.909 mm, how sure is not known: weak')
    expect(once.out).not.toContain('± 0')
  })

  it('exits with 1 and a line for each mistake', () => {
    const file = path.join(folder(), 'bad.json')
    writeFileSync(
      file,
      '{"format":"pitchline-readings","version":1,"test":"kv","rows":[{"volts":-1,"rpm":null}],"x":1}',
    )
    const { code, out, err } = pitchline(['measure', 'kv', file])
    expect([code, out]).toEqual([1, ''])
    expect(err.trimEnd().split('\n')).toEqual([
      `${file}: rows.0.volts: a number of 0 or more, found -1.`,
      `${file}: rows.0.rpm: a number of 0 or more, found null.`,
      `${file}: x: format, version, test, name, notes, rows, lists, instruments, given, found 1.`,
    ])
    expect(pitchline(['measure', 'speed', file]).err).toContain('winding-resistance')
  })
})
