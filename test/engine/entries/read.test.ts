import fc from 'fast-check'
import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import {
  completeBuild,
  readBuild,
  readBuildText,
  readBuildValue,
  readStoredBuild,
  readStoredBuildText,
  readStoredBuildValue,
} from '../../../shared-engine/entries/read.ts'
import { sentenceOf } from '../../../shared-engine/mistakes/catalogue.ts'
import type { Result } from '../../../shared-engine/mistakes/mistake.ts'
import { anyBuild } from '../../fixtures/build/any.ts'
import { fullBuild, plainBuild, soilBuild } from '../../fixtures/build/plain.ts'

const bytesOf = (text: string) => new TextEncoder().encode(text)
const sentences = (read: Result<unknown>) => (read.ok ? [] : read.mistakes.map(sentenceOf))
const told = (text: string) => sentences(readBuildText(text))
const toldOf = (build: object) => sentences(readBuildValue(build))

describe('a build that is in order', () => {
  const golden = new URL('../../golden/', import.meta.url)
  const names = readdirSync(golden).filter((name) => name.endsWith('.build.json'))

  it.each(names)('golden %s is read', (name) => {
    expect(sentences(readBuild(readFileSync(new URL(name, golden))))).toEqual([])
  })

  it('twenty of them', () => {
    expect(names).toHaveLength(20)
  })

  it('keeps what was stored and fills in defaults beside it', () => {
    const stored = readStoredBuildValue(plainBuild())
    expect(stored).toEqual({ ok: true, value: plainBuild() })
    const build = completeBuild(plainBuild())
    expect(build.controller).toEqual({
      resistanceMilliohm: 0,
      throttleCapPercent: 100,
      deadTimeNs: 0,
      diodeVolts: 0.9,
      commutation: 'block',
      busEsrMilliohm: 0,
      brakeAmps: 0,
    })
    expect(build.service.packTemperatureC).toBe(15) // that of the air
    expect(build.service.factor).toBe(1.5)
    expect(build.motor.magnet).toBe('ndfeb')
    expect(build).toMatchObject({ notes: '', stages: [], accessories: [], tolerances: {}, origins: {} })
    expect(build.cooling).toBeUndefined()
    expect(readBuildValue(plainBuild())).toEqual({ ok: true, value: build })
  })

  it('is the same from bytes, with and without a byte-order mark, text and value', () => {
    const text = JSON.stringify(fullBuild())
    const once = readStoredBuildValue(fullBuild())
    expect(once.ok).toBe(true)
    expect(readStoredBuildText(text)).toEqual(once)
    expect(readStoredBuildText(`\uFEFF${text}`)).toEqual(once)
    expect(readStoredBuild(bytesOf(text))).toEqual(once)
    expect(readStoredBuild(new Uint8Array([0xef, 0xbb, 0xbf, ...bytesOf(text)]))).toEqual(once)
  })

  it('completing is idempotent: a completed build reads as itself', () => {
    fc.assert(
      fc.property(anyBuild, (stored) => {
        const build = completeBuild(stored)
        expect(readBuildValue(build)).toEqual({ ok: true, value: build })
      }),
    )
  })
})

describe('a file that is no build', () => {
  it.each([
    ['', 'the file is empty; a build, readings and channels are JSON in braces.'],
    [' \n\t', 'the file is empty; a build, readings and channels are JSON in braces.'],
    ['{"name": NaN}', 'the file is not JSON: line 1, column 10.'],
    ['{\n  "name": "x",\n  oops\n}', 'the file is not JSON: line 3, column 3.'],
    ['{"name": "x"', 'the file is not JSON: it ends too early.'],
    ['{"a": [1, 2}', 'the file is not JSON: line 1, column 12.'],
    ['{"a": 1,}', 'the file is not JSON: line 1, column 9.'],
    ['{"a": 01}', 'the file is not JSON: line 1, column 7.'],
    ['{"a": "\\x"}', 'the file is not JSON: line 1, column 7.'],
    ['{"a": 1} 2', 'the file is not JSON: line 1, column 10.'],
    ['[1, 2]', 'the file is a list of 2, not a group of entries; allowed: keys and values in braces.'],
    ['"text"', 'the file is "text", not a group of entries; allowed: keys and values in braces.'],
    ['null', 'the file is null, not a group of entries; allowed: keys and values in braces.'],
    ['{}', 'format is missing; allowed: "pitchline-build".'],
    ['{"format": "other"}', 'format is "other": this is not a build file; allowed: "pitchline-build".'],
    ['{"format": "pitchline-build"}', 'version is missing; allowed: a whole number, 1 to 2.'],
    [
      '{"format": "pitchline-build", "version": 3}',
      'version is 3: the file is from a newer Pitchline than this one; allowed: up to 2.',
    ],
    [
      '{"format": "pitchline-build", "version": 0}',
      'version is 0, out of range; allowed: a whole number, 1 to 2.',
    ],
    [
      '{"format": "pitchline-build", "version": 1.5}',
      'version is 1.5, out of range; allowed: a whole number, 1 to 2.',
    ],
    [
      '{"format": "pitchline-build", "version": "1"}',
      'version is "1", not a number; allowed: a whole number, 1 to 2.',
    ],
  ])('%j: %s', (text, sentence) => {
    expect(told(text)).toEqual([sentence])
  })

  it('that is not UTF-8', () => {
    expect(sentences(readBuild(new Uint8Array([0x7b, 0xff, 0x7d])))).toEqual(['the file is not UTF-8 text.'])
  })

  it('that is larger than a mebibyte, to the byte', () => {
    const text = JSON.stringify(plainBuild())
    const padded = (size: number) => bytesOf(text.padEnd(size))
    expect(readBuild(padded(1_048_576)).ok).toBe(true)
    expect(sentences(readBuild(padded(1_048_577)))).toEqual([
      'the file is too large: 1.0 MiB; allowed: at most 1 MiB.',
    ])
  })

  it('that is nested deeper than any build', () => {
    const deep = 'the file is nested too deeply; allowed: at most 16 levels.'
    expect(told('['.repeat(100_000))).toEqual([deep])
    expect(told(`${'{"a":'.repeat(17)}1${'}'.repeat(17)}`)).toEqual([deep])
    const circle: Record<string, unknown> = plainBuild() as never
    circle['self'] = circle
    expect(toldOf(circle)).toEqual([deep])
  })
})

describe('mistakes in a build', () => {
  it('keys that stand twice are refused by name, however they are spelt, and only within one group', () => {
    const text = JSON.stringify(plainBuild())
      .replace('"series":6', '"series":6,"s\\u0065ries":7')
      .replace('{"format"', '{"version":1,"format"')
    expect(told(text)).toEqual([
      'version stands in the file more than once; keep one.',
      'pack.series stands in the file more than once; keep one.',
    ])
    expect(readBuildText(JSON.stringify(fullBuild())).ok).toBe(true)
  })

  it('keys that reach into objects are refused by name', () => {
    const text = JSON.stringify(plainBuild()).replace('{"format"', '{"__proto__":{"version":2},"format"')
    expect(told(text)).toEqual(['__proto__ is a key that no file may have; take it out.'])
    expect(told(text.replace('"chemistry"', '"constructor":1,"chemistry"'))).toEqual([
      '__proto__ is a key that no file may have; take it out.',
      'pack.constructor is a key that no file may have; take it out.',
    ])
    expect(
      told(JSON.stringify(plainBuild()).replace('{"format"', '{"origins":{"__proto__":"measured"},"format"')),
    ).toEqual(['origins.__proto__ is a key that no file may have; take it out.'])
    expect(({} as Record<string, unknown>)['version']).toBeUndefined()
  })

  it('numbers beyond what a number holds are refused with path and range', () => {
    const text = JSON.stringify(plainBuild()).replace('"series":6', '"series":1e999')
    expect(told(text)).toEqual([
      'pack.series is Infinity, out of range; allowed: a whole number, 1 to 60 cells.',
    ])
    expect(toldOf({ ...plainBuild(), vehicle: { massKg: NaN } })).toEqual([
      'vehicle.massKg is NaN, not a number; allowed: 0.05 to 20,000 kg.',
    ])
  })

  it('null is never a number, nor a default', () => {
    expect(toldOf({ ...plainBuild(), service: { factor: null } })).toEqual([
      'service.factor is null, not a number; allowed: 1 to 5.',
    ])
    expect(toldOf({ ...plainBuild(), service: null })).toEqual([
      'service is null, not a group of entries; allowed: keys and values in braces.',
    ])
  })

  it('unknown keys are refused by name and path; those of another kind say where they belong', () => {
    const ground = { ...plainBuild().ground, soil: {} }
    expect(toldOf({ ...plainBuild(), extra: 1, ground })).toEqual([
      'ground.soil is not an entry of a build; allowed: only the entries of a build.',
      'extra is not an entry of a build; allowed: only the entries of a build.',
    ])
    expect(toldOf({ ...plainBuild(), stages: [{ kind: 'fixed', ratio: 2, moduleMm: 1 }] })).toEqual([
      'stages.0.moduleMm is not an entry of a build; allowed: only where kind is gear.',
    ])
    expect(toldOf({ ...soilBuild(), ground: { ...soilBuild().ground, gripCoefficient: 1 } })).toEqual([
      'ground.gripCoefficient is not an entry of a build; allowed: only where model is coefficient.',
    ])
  })

  it('all of them at once, and each once', () => {
    const full = fullBuild()
    const broken = {
      ...full,
      name: 'x'.repeat(121),
      colour: 'red',
      pack: { ...full.pack, series: 61, capacityMah: '20000' },
      motor: { ...full.motor, poleCount: 13, noLoadAmps: undefined },
      stages: [
        { kind: 'worm', ratio: 900, oil: 1 },
        { kind: 'chain', driverTeeth: 12, drivenTeeth: 24, size: '07Z' },
      ],
      vehicle: [],
      ground: { model: 'soil' },
      accessories: 4,
      tolerances: { 'pack.series': { plusMinus: -1, shape: 'round' } },
      origins: { 'vehicle.colour': 'heard' },
    }
    expect(toldOf(broken).map((sentence) => sentence.split(';')[0])).toEqual([
      'name is too long: "xxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxx…"',
      'pack.series is 61, out of range',
      'pack.capacityMah is "20000", not a number',
      'motor.noLoadAmps is missing',
      'stages.0.kind is "worm", not one of the choices',
      'stages.0.ratio is 900, out of range',
      'stages.0.oil is not an entry of a build',
      'stages.1.size is "07Z", which is not in its table',
      'vehicle is an empty list, not a group of entries',
      'ground.soil is missing',
      'accessories is 4, not a list',
      'tolerances.pack.series.plusMinus is −1, out of range'.replace('−', '-'),
      'tolerances.pack.series.shape is "round", not one of the choices',
      'origins.vehicle.colour is "heard", not one of the choices',
      'colour is not an entry of a build',
      'motor.poleCount is 13 poles',
      'vehicle.contactLengthMm is missing',
      'vehicle.contactWidthMm is missing',
    ])
  })
})
