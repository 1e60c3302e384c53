import { readdirSync, readFileSync } from 'node:fs'
import path from 'node:path'
import { describe, expect, test } from 'vitest'
import { plotTable } from '../../../shared-engine/draw/table.ts'
import { readingsPlot } from '../../../shared-engine/draw/plots/readings.ts'
import { measureJob } from '../../../shared-engine/jobs/measure.ts'
import { instrumentPresets, presetsFor } from '../../../shared-engine/measure/instruments.ts'
import { measure } from '../../../shared-engine/measure/measure.ts'
import { testsTelling } from '../../../shared-engine/measure/tells.ts'
import { plottedReadings } from '../../../shared-engine/measure/plotted.ts'
import { readReadings } from '../../../shared-engine/measure/read.ts'
import { givenNames } from '../../../shared-engine/measure/readings-schema.ts'
import { readingLabel } from '../../../shared-engine/measure/words.ts'
import { completeBuild, readStoredBuildText } from '../../../shared-engine/index.ts'
import {
  guideOf,
  isTestId,
  testIds,
  withoutInstrument,
} from '../../../shared-engine/reference/measurements.ts'

const folder = path.join(import.meta.dirname, '../../golden/measure')
const files = readdirSync(folder).filter((file) => file.endsWith('.readings.json'))
const look = { system: 'metric', size: { width: 600, height: 220 } } as const

function namesRead(test: (typeof testIds)[number]): readonly string[] {
  const { rows, optionalColumns, lists, optionalLists } = guideOf(test)
  return [...rows, ...optionalColumns, ...lists, ...optionalLists]
}

describe('the form of a guided test', () => {
  test('has words for every reading, number given, result and figure; none shows its raw key', () => {
    const names = testIds.flatMap((id) => [
      ...namesRead(id),
      ...givenNames(guideOf(id)),
      ...guideOf(id).figures.map(({ name }) => name),
    ])
    expect(names.filter((name) => readingLabel(name) === name)).toEqual([])
  })

  test('offers an instrument for every reading that is taken with one', () => {
    const names = testIds.flatMap(namesRead).filter((name) => !withoutInstrument(name))
    expect(names.filter((name) => presetsFor(name).length === 0)).toEqual([])
    for (const { label, instrument } of instrumentPresets)
      expect(Math.max(...Object.values(instrument)), label).toBeGreaterThan(0)
  })
})

describe('a guessed entry', () => {
  test.each(['hut-hauler', 'quick-sled-puller', 'culvert-crawler'])(
    'of %s can be replaced by a measurement, each and every one',
    (name) => {
      const read = readStoredBuildText(readFileSync(`examples/${name}.build.json`, 'utf8'))
      if (!read.ok) throw new Error(name)
      const guessed = Object.entries(read.value.origins ?? {}).filter(
        ([, origin]) => origin === 'guessed' || origin === 'assumed',
      )
      expect(guessed.length).toBeGreaterThan(0)
      expect(guessed.filter(([path]) => testsTelling(path).length === 0)).toEqual([])
    },
  )

  test('of how teeth share is told by the loop’s stiffness, from which it is then computed', () => {
    expect(testsTelling('track.sharePercent')).toEqual(['loop-stiffness'])
    expect(testsTelling('vehicle.loadKg')).toEqual(['load'])
    expect(testsTelling('name')).toEqual([])
  })

  test('a load weighed three times has the mean, and the scatter of the mean as its error', () => {
    const readings = {
      format: 'pitchline-readings',
      version: 1,
      test: 'load',
      lists: { kg: [30.1, 30.3, 30.2] },
      instruments: { kg: {} },
    }
    const read = readReadings('load', new TextEncoder().encode(JSON.stringify(readings)), null)
    if (!read.ok) throw new Error(JSON.stringify(read.mistakes))
    const measurement = measure(read.value, null)
    if (!measurement.ok) throw new Error('not measured')
    const [result] = measurement.value.results
    expect(result?.path).toBe('vehicle.loadKg')
    expect(result?.value).toBeCloseTo(30.2, 9)
    // ISO/IEC Guide 98-3, 4.2.3: s/√n; the readings' standard deviation is 0.1.
    expect(result?.standardUncertainty).toBeCloseTo(0.1 / Math.sqrt(3), 9)
  })
})

describe('readings as a plot', () => {
  test('every example of readings with rows is drawn; where something was fitted, it passes among them', () => {
    let fitted = 0
    for (const file of files) {
      const bytes = readFileSync(path.join(folder, file))
      const { test: id } = JSON.parse(bytes.toString()) as { test: string }
      if (!isTestId(id)) throw new Error(file)
      const read = readReadings(id, bytes, null)
      if (!read.ok || read.value.columns.size === 0) continue
      const plotted = plottedReadings(read.value, null)
      if (plotted === null) continue
      const scene = readingsPlot(plotted, look)
      expect(scene.plot?.panels.length, file).toBe(1)
      // The table holds each reading, those taken at the same place too.
      const rows = scene.plot === null || scene.plot === undefined ? [] : plotTable(scene.plot).rows
      const byXy = (one: readonly unknown[], other: readonly unknown[]) =>
        Number(one[0]) - Number(other[0]) || Number(one[1]) - Number(other[1])
      const sorted = (pairs: readonly (readonly unknown[])[]) => pairs.toSorted(byXy)
      const to7 = (value: number) => Number(value.toPrecision(7)) + 0
      expect(sorted(rows.map((row) => [row[0], row.at(-1)])), file).toEqual(
        sorted(plotted.xs.map((x, at) => [to7(x), to7(plotted.ys[at] ?? NaN)])),
      )
      if (plotted.fitted === undefined) continue
      fitted += 1
      // Least squares with an offset leave residuals whose mean is zero.
      const mean = (values: readonly number[]) =>
        values.reduce((sum, value) => sum + value, 0) / values.length
      const scale = Math.max(...plotted.ys.map(Math.abs))
      expect(Math.abs(mean(plotted.fitted) - mean(plotted.ys)) / scale, file).toBeLessThan(1e-6)
    }
    expect(fitted).toBeGreaterThan(10)
  })

  test('one reading is too few to draw, and the plot says so', () => {
    const scene = readingsPlot(null, look)
    expect(scene.plot).toBeNull()
    expect(scene.summary).toMatch(/two readings/i)
  })
})

describe('a guided test as a job', () => {
  const build = completeBuild(demo())
  const run = (readings: unknown) => {
    const input = { test: 'weigh', readings, build } as const
    const worker = measureJob.startWorker(input)
    worker.work(0, measureJob.sizeOf(input))
    return worker.take().part
  }
  const whole = {
    format: 'pitchline-readings',
    version: 1,
    test: 'weigh',
    lists: { frontKg: [8.2, 8.3], rearKg: [9.9, 9.8], spanMm: [640] },
    instruments: {},
    given: {},
  }

  test('gives results and a drawing', () => {
    const found = run(whole)
    expect(found?.ok).toBe(true)
    if (found?.ok !== true) return
    expect(found.value.measurement.results[0]?.value).toBeCloseTo(8.25 + 9.85, 12)
    expect(found.value.plotted?.ys).toEqual([8.2, 8.3])
  })

  test('names what is missing instead of throwing', () => {
    const found = run({ ...whole, lists: { frontKg: [8.2], rearKg: [], spanMm: [] } })
    expect(found?.ok === true ? found.value.measurement.verdict : 'retake').toBe('retake')
    const wrong = run({ ...whole, lists: { frontKg: ['heavy'] } })
    expect(wrong?.ok === false && wrong.mistakes.map((mistake) => mistake.path)).toContain('lists.frontKg.0')
  })
})

function demo() {
  const read = readStoredBuildText(
    readFileSync(path.join(import.meta.dirname, '../../../examples/quick-sled-puller.build.json'), 'utf8'),
  )
  if (!read.ok) throw new Error('the demo build cannot be read')
  return read.value
}
