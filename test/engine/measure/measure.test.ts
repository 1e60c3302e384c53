import { readdirSync, readFileSync } from 'node:fs'
import { evaluate } from 'mathjs'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { readBuild, readBuildText } from '../../../shared-engine/entries/read.ts'
import { measure, type Measurement } from '../../../shared-engine/measure/measure.ts'
import { nextReadings } from '../../../shared-engine/measure/next.ts'
import { readReadings } from '../../../shared-engine/measure/read.ts'
import { guideOf, testIds, type TestId } from '../../../shared-engine/reference/measurements.ts'
import { guidedTests } from '../../../shared-engine/measure/tests/table.ts'
import { fieldOf } from '../../../shared-engine/entries/fields.ts'
import { uncertaintyOf } from '../../../shared-engine/uncertainty/uncertainty.ts'

type Json = Record<string, unknown>

const readReadingsValue = (test: TestId, value: unknown, build: Parameters<typeof measure>[1]) =>
  readReadings(test, new TextEncoder().encode(JSON.stringify(value)), build)
const folder = new URL('../../golden/measure/', import.meta.url)
const file = (name: string) => readFileSync(new URL(name, folder), 'utf8')
const examples = readdirSync(folder)
  .filter((name) => /^\d\d\.readings\.json$/.test(name))
  .map((name) => ({ name, value: JSON.parse(file(name)) as Json & { test: TestId } }))

function measured(value: unknown, test: TestId, build: Parameters<typeof measure>[1] = null): Measurement {
  const read = readReadingsValue(test, value, build)
  if (!read.ok) throw new Error(JSON.stringify(read.mistakes))
  const result = measure(read.value, build)
  if (!result.ok) throw new Error(JSON.stringify(result.mistakes))
  return result.value
}

const readings = (test: TestId, parts: Json): Json => ({
  format: 'pitchline-readings',
  version: 1,
  test,
  ...parts,
})

const mistakesOf = (test: TestId, value: unknown) => {
  const read = readReadingsValue(test, value, null)
  return read.ok ? [] : read.mistakes.map(({ path }) => path)
}

describe('guides', () => {
  it.each(testIds)(
    '%s: results are entries of the build, and the formulas give what the guide promises',
    (test) => {
      const guide = guideOf(test)
      expect(guidedTests[test].id).toBe(test)
      for (const { path } of guide.results) expect(fieldOf(path), path).toBeDefined()
      for (const { name } of guide.given.filter((given) => given.name.includes('.')))
        expect(fieldOf(name), name).toBeDefined()
      if (guide.fitOn !== null) expect([...guide.rows]).toContain(guide.fitOn)
    },
  )
})

describe('formulas', () => {
  it('give their value again with the numbers put in, by another reader of algebra', () => {
    let count = 0
    for (const { value } of examples.filter((example) => !file(example.name).includes('"build"'))) {
      const read = readReadingsValue(value.test, value, null)
      if (!read.ok) continue
      const result = measure(read.value, null)
      if (!result.ok) continue
      for (const { value: own, formula, put } of Object.values(result.value.formulas)) {
        const again = Number(evaluate(formula, { ...put }))
        expect(Math.abs(again - own), `${value.test}: ${formula}`).toBeLessThanOrEqual(1e-9 * Math.abs(own))
        count += 1
      }
    }
    expect(count).toBeGreaterThan(40)
  })
})

describe('outside examples', () => {
  it('a free run logged by students, 2012: 960 rpm/V', () => {
    const volts = [9, 10, 11, 12, 13]
    const rpm = [8640, 9600, 10560, 11520, 12480]
    const rows = volts.map((one, at) => ({ volts: one, rpm: rpm[at] }))
    expect(measured(readings('kv', { rows }), 'kv').results[0]?.value).toBeCloseTo(960, 6)
  })

  it('the same run’s amps grow straight, so that most of the current does not grow with speed', () => {
    const volts = [9, 10, 11, 12, 13]
    const rows = [0.6, 0.64, 0.685, 0.73, 0.78].map((amps, at) => ({
      volts: volts[at],
      amps,
      rpm: [8640, 9600, 10560, 11520, 12480][at],
    }))
    const { results } = measured(readings('free-run', { rows }), 'free-run')
    // By hand: slope 0.045 A for 960 rpm, mean 0.687 A at 10,560 rpm.
    expect(results.find(({ name }) => name === 'noLoadAmps')?.value).toBeCloseTo(0.777, 9)
    expect(results.find(({ name }) => name === 'viscous')?.value).toBeCloseTo((100 * 0.045 * 13) / 0.777, 6)
  })

  it('Hughes, Electrical and Electronic Technology, example 3.25: resistance by temperature', () => {
    // 10 V: 1.0 A at 20 °C, 0.95 A at 33.4 °C as printed there, copper with 0.00428 at 0 °C, 0.00394 at 20 °C.
    const hot = measured(
      readings('winding-resistance', {
        rows: [1, 2, 3].map((n) => ({ amps: 0.95 * n, volts: 10 * n })),
        lists: { windingCelsius: [33.4] },
      }),
      'winding-resistance',
    )
    // IEC 60028's 0.00393 against 0.00394: 2e-4.
    expect(Math.abs((hot.results[0]?.value ?? NaN) / 10_000 - 1)).toBeLessThan(5e-4)
  })

  it('a belt maker’s page: 0.11 kg/m, 0.17 m, 624 N at 221 Hz', () => {
    const { results } = measured(
      readings('span-frequency', {
        lists: { hertz: [221, 221, 221], spanMm: [170] },
        given: { 'track.massGPerM': 110 },
      }),
      'span-frequency',
    )
    // Printed to 1 Hz, which counts twice, and to 1 N.
    expect(Math.abs((results[0]?.value ?? NaN) / 624 - 1)).toBeLessThan(2 * (0.5 / 221) + 0.5 / 624)
  })

  it.each([
    [10, 2, 0.1, 1.6],
    [60, 12, 0.1, 0.267],
  ])(
    'Fox and McDonald, problem 1.44: flow over %d s, half widths in squares',
    (seconds, kg, ofTime, percent) => {
      const instruments = { kg: { plusMinus: 0.025 }, seconds: { plusMinus: ofTime } }
      const lists = { kg: [kg, kg, kg], seconds: [seconds, seconds, seconds] }
      const { results } = measured(readings('flow', { lists, instruments }), 'flow')
      // A uniform half width is √3 standard uncertainties.
      const found =
        (100 * Math.sqrt(3) * (results[0]?.standardUncertainty ?? NaN)) / (results[0]?.value ?? NaN)
      expect(found).toBeCloseTo(percent, 2)
    },
  )
})

describe('mistakes in readings', () => {
  const good = readings('weigh', { lists: { frontKg: [8], rearKg: [9], spanMm: [640] } })

  it('are none in good ones', () => expect(mistakesOf('weigh', good)).toEqual([]))

  it('are all listed at once, each by its path', () => {
    const bad = {
      ...good,
      colour: 'red',
      lists: { frontKg: ['8'], rearKg: [null, -9], spanMm: 640, tailKg: [1] },
      instruments: { frontKg: { percent: -1, maker: 'x' }, wheel: {} },
      given: { rearAheadMm: '20', 'vehicle.massKg': 3 },
    }
    expect(new Set(mistakesOf('weigh', bad))).toEqual(
      new Set([
        'colour',
        'lists.frontKg.0',
        'lists.rearKg.0',
        'lists.rearKg.1',
        'lists.spanMm',
        'lists.tailKg',
        'instruments.frontKg.percent',
        'instruments.frontKg.maker',
        'instruments.wheel',
        'given.rearAheadMm',
        'given.vehicle.massKg',
      ]),
    )
  })

  it('name what neither readings nor build have, beside the others', () => {
    expect(mistakesOf('grip', readings('grip', { lists: { pullKg: [-1] } }))).toEqual([
      'lists.pullKg.0',
      'given.vehicle.massKg',
    ])
  })

  it('name a column that only some rows have', () => {
    const rows = [
      { volts: 9, rpm: 1, amps: 1 },
      { volts: 10, rpm: 2 },
    ]
    expect(mistakesOf('kv', readings('kv', { rows }))).toEqual([
      'rows.1.amps',
      'given.motor.resistanceMilliohm',
    ])
  })

  it('name another test than the one asked for, and nothing else', () => {
    expect(mistakesOf('kv', good)).toEqual(['test'])
  })

  it('are found in bytes that are no JSON, or have a key twice', () => {
    const read = (text: string) => readReadings('weigh', new TextEncoder().encode(text), null)
    expect(read('{').ok).toBe(false)
    const twice = read(JSON.stringify(good).replace('"version":1', '"version":1,"version":1'))
    expect(!twice.ok && twice.mistakes.map(({ path }) => path)).toEqual(['version'])
  })
})

it('whatever numbers are read, nothing crashes and nothing is NaN', () => {
  const number = fc.oneof(
    fc.double({ noNaN: true, noDefaultInfinity: true }),
    fc.constantFrom(0, 1, -1, 1e-300, 1e300, 5, 100),
    fc.double({ min: 0, max: 100, noNaN: true }),
  )
  const altered = fc
    .constantFrom(...examples.filter(({ value }) => value.test !== 'warm-up'))
    .chain(({ value }) =>
      fc.record({
        value: fc.constant(value),
        numbers: fc.array(number, { minLength: 1, maxLength: 12 }),
        keep: fc.nat(9),
      }),
    )
  fc.assert(
    fc.property(altered, ({ value, numbers, keep }) => {
      let at = 0
      const changed = JSON.parse(JSON.stringify(value), (key, inner: unknown) => {
        if (typeof inner !== 'number' || key === 'version' || key === 'run' || key === 'direction')
          return inner
        at += 1
        return at % 10 < keep ? inner : numbers[at % numbers.length]
      }) as unknown
      const read = readReadingsValue(value.test, changed, null)
      const result = read.ok ? measure(read.value, null) : read
      if (!result.ok) {
        expect(result.mistakes.length).toBeGreaterThan(0)
        return
      }
      const { results, figures } = result.value
      for (const one of [...results, ...Object.values(figures)]) {
        const all = [one.value, one.standardUncertainty, one.plusMinus, one.coverageFactor]
        expect(all.every((part) => part === null || Number.isFinite(part))).toBe(true)
      }
    }),
    { numRuns: 150 },
  )
})

describe('what to measure next', () => {
  const demo = readFileSync(new URL('../../../examples/hut-hauler.build.json', import.meta.url))

  it('lists tests of the entries that widen the worst limit, the one that narrows it most first', () => {
    const read = readBuild(demo)
    if (!read.ok) throw new Error('demo')
    const tolerances = {
      'track.pitchMm': { plusMinusPercent: 2, shape: 'uniform' as const },
      'motor.kvRpmPerVolt': { plusMinusPercent: 10, shape: 'normal' as const },
      'vehicle.massKg': { plusMinusPercent: 5, shape: 'normal' as const },
    }
    const uncertainty = uncertaintyOf({ ...read.value, tolerances }, { samples: 500, seed: 3 })
    const next = nextReadings(uncertainty)
    expect(next.length).toBeGreaterThan(0)
    expect(next[0]?.path).toBe(uncertainty.limits[0]?.measureFirst)
    const widths = next.map(({ bandIfHalved }) => bandIfHalved)
    expect(widths).toEqual([...widths].sort((one, other) => one - other))
    for (const { test, path } of next)
      expect(guideOf(test).results.map((result) => result.path)).toContain(path)
  })

  it('lists nothing without tolerances and origins', () => {
    const read = readBuildText(demo.toString())
    if (!read.ok) throw new Error('demo')
    expect(
      nextReadings(uncertaintyOf({ ...read.value, tolerances: {}, origins: {} }, { samples: 20 })),
    ).toEqual([])
  })
})
