import { readFileSync } from 'node:fs'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { newBuild } from '../../../shared-engine/assume/start.ts'
import { crosses, labelBox, overlap } from '../../../shared-engine/draw/labels.ts'
import { cruiseRange } from '../../../shared-engine/draw/plots/cruise-range.ts'
import { marginBands } from '../../../shared-engine/draw/plots/margin-band.ts'
import { overlay } from '../../../shared-engine/draw/plots/overlay.ts'
import { smallMultiples } from '../../../shared-engine/draw/plots/small-multiples.ts'
import { pixelAlong, readoutAt } from '../../../shared-engine/draw/readout.ts'
import type { Box, PlotReading, Readout, Scene, Shape, TextShape } from '../../../shared-engine/draw/scene.ts'
import { textWidth } from '../../../shared-engine/draw/text-width.ts'
import { completeBuild, cruiseCurve, readStoredBuildText } from '../../../shared-engine/index.ts'
import { machineOf } from '../../../shared-engine/machine/machine.ts'
import { oddIn } from '../../fixtures/text/odd.ts'
import { lightSnowBuild } from '../../fixtures/build/light-snow.ts'

// Words of plots whose data no kept drawing has: many rows, long names, values on both sides of zero.

const flat = (shapes: readonly Shape[]): Shape[] =>
  shapes.flatMap((shape) => (shape.shape === 'group' ? flat(shape.shapes) : [shape]))
/** Words that are placed where there is room; the rest stand at the axes. */
const labelsOf = ({ shapes }: Scene): TextShape[] =>
  flat(shapes).filter((shape): shape is TextShape => shape.shape === 'text' && shape.rim === true)
const boxOf = ({ text, at, anchor = 'start' }: TextShape): Box => labelBox(text, { ...at, anchor })

function readingOf(scene: Scene): PlotReading {
  if (scene.plot === null) throw new Error('no plot')
  return scene.plot
}

/** Hundredths: nothing here is finer. */
const share = (min: number, max: number) =>
  fc.integer({ min: Math.round(100 * min), max: Math.round(100 * max) }).map((hundredths) => hundredths / 100)

describe('how sure each margin is', () => {
  const row = fc
    .tuple(
      share(-3, 1),
      share(0, 1.5),
      share(0, 1),
      fc.string({ minLength: 3, maxLength: 30, unit: 'grapheme-ascii' }),
    )
    .map(([low, width, probabilityOver, label]) => ({
      id: 'motor.free-rpm' as const,
      label,
      low,
      middle: low + width / 2,
      high: low + width,
      probabilityOver,
    }))

  it('says the chance of each limit in its own row, in one column, clear of every bar', () => {
    fc.assert(
      fc.property(
        fc.array(row, { minLength: 1, maxLength: 20 }),
        fc.integer({ min: 480, max: 1100 }),
        (rows, width) => {
          const scene = marginBands(rows, { system: 'metric', size: { width, height: 0 } })
          const [panel] = readingOf(scene).panels
          if (panel === undefined) throw new Error('no panel')
          const notes = labelsOf(scene)
          expect(notes).toHaveLength(rows.length)
          expect(new Set(notes.map(({ at }) => at.x)).size).toBe(1)
          notes.forEach((note, index) => {
            const middle = pixelAlong(panel.y, -index, panel.frame.y0, panel.frame.y1)
            expect(Math.abs(note.at.y - 4.5 - middle)).toBeLessThan(1)
          })
          const bars = flat(scene.shapes).flatMap((shape) => (shape.shape === 'hatch' ? [shape.box] : []))
          for (const note of notes) expect(bars.filter((bar) => overlap(boxOf(note), bar))).toEqual([])
        },
      ),
      { numRuns: 60 },
    )
  })
})

describe('one entry varied', () => {
  const xs = Array.from({ length: 25 }, (_, index) => 10 + index / 2)
  const swept = fc.tuple(
    fc.array(share(10.5, 21.5), { maxLength: 5 }),
    share(-1, 0.5),
    share(-0.4, 0.4),
    fc.integer({ min: 0, max: 24 }),
    fc.integer({ min: 280, max: 520 }),
  )

  it('names each crossing by a number at its own line, in no sentence, and no line strikes its words out', () => {
    fc.assert(
      fc.property(swept, ([crossings, from, slope, now, width]) => {
        const ys = xs.map((x) => Math.round(1000 * (from + slope * (x - 10) * 0.2)) / 1000)
        const [scene] = smallMultiples(
          {
            x: { label: 'Sprocket teeth', kind: 'count' },
            xs,
            today: xs[now] ?? null,
            figures: [
              {
                name: 'worstMargin',
                label: 'Worst margin',
                kind: 'fraction',
                ys,
                today: ys[now] ?? null,
                crossings: crossings
                  .toSorted((a, b) => a - b)
                  .map((at, place) => ({
                    at,
                    label: String(place + 1),
                    means: 'Motor temperature over from here',
                    limit: 'motor.temperature' as const,
                  })),
              },
            ],
          },
          { system: 'metric', size: { width, height: 180 } },
        )
        if (scene === undefined) throw new Error('no scene')
        const { x, panels } = readingOf(scene)
        const [panel] = panels
        if (panel === undefined) throw new Error('no panel')
        const { frame, y } = panel
        const labels = labelsOf(scene)
        const sorted = crossings.toSorted((a, b) => a - b)
        const numbers = labels.filter(({ text }) => /^\d$/.test(text))
        expect(numbers).toHaveLength(crossings.length)
        for (const number of numbers) {
          const line = pixelAlong(x, sorted[Number(number.text) - 1] ?? NaN, frame.x0, frame.x1)
          const box = boxOf(number)
          expect(Math.min(Math.abs(box.x - line), Math.abs(box.x + box.width - line))).toBeLessThan(9)
        }
        // Whatever else stands in it is short: the sentences stand once, above all plots.
        for (const { text } of labels) expect(text.length).toBeLessThan(16)
        const boxes = labels.map(boxOf)
        if (y.low < 0 && y.high > 0) {
          const zero = pixelAlong(y, 0, frame.y0, frame.y1)
          const struck = boxes.filter((box) =>
            crosses(box, { x: frame.x0, y: zero }, { x: frame.x1, y: zero }),
          )
          expect(struck).toEqual([])
        }
      }),
      { numRuns: 150 },
    )
  })
})

describe('the curves of several builds', () => {
  const word = fc.constantFrom(
    'Newt',
    'the',
    'culvert',
    'crawler',
    'Ibex',
    'hut',
    'hauler,',
    'twelve',
    'teeth',
  )
  const name = fc.array(word, { minLength: 1, maxLength: 6 }).map((words) => words.join(' '))
  const build = fc.record({ name, reach: share(1, 20), pull: share(20, 900) })

  it('are named in full within the frame, however long their names are', () => {
    fc.assert(
      fc.property(
        fc.array(build, { minLength: 1, maxLength: 4 }),
        fc.integer({ min: 420, max: 900 }),
        (builds, width) => {
          const names = builds.map(({ name: own }, at) => `${'ABCD'[at] ?? ''} ${own}`)
          const scene = overlay(
            {
              name: 'overlay-thrust',
              title: 'Thrust against speed, each build',
              x: { label: 'Ground speed', kind: 'speed' },
              y: { label: 'Thrust', kind: 'force' },
              builds: builds.map(({ reach, pull }, at) => ({
                name: names[at] ?? '',
                xs: [0, 0.5 * reach, 0.9 * reach, reach],
                ys: [pull, pull, 0.95 * pull, 0],
              })),
            },
            { system: 'metric', size: { width, height: 280 } },
          )
          const { frame } = readingOf(scene)
          const labels = labelsOf(scene)
          expect(labels.map(({ text }) => text).toSorted()).toEqual(names.toSorted())
          for (const label of labels) {
            if (textWidth(label.text, 13) > frame.x1 - frame.x0 - 4) continue
            const { x, width: wide } = boxOf(label)
            expect(x, label.text).toBeGreaterThanOrEqual(frame.x0)
            expect(x + wide, label.text).toBeLessThanOrEqual(frame.x1 + 2)
          }
        },
      ),
      { numRuns: 100 },
    )
  })
})

describe('range over cruising speed', () => {
  const demo = (id: string) => {
    const read = readStoredBuildText(readFileSync(`examples/${id}.build.json`, 'utf8'))
    if (!read.ok) throw new Error(`${id} is no build`)
    return read.value
  }

  it.each([
    ['quick-sled-puller', demo('quick-sled-puller')],
    ['hut-hauler', demo('hut-hauler')],
    ['culvert-crawler', demo('culvert-crawler')],
    ['a light snow machine', lightSnowBuild()],
    ['a new build', newBuild()],
  ])('says at its own best speed how far, how long and with what current: %s', (_, stored) => {
    const curve = cruiseCurve(machineOf(completeBuild(stored)))
    const scene = cruiseRange(curve, { system: 'metric', size: { width: 620, height: 380 } })
    if (curve.best === null) throw new Error('no best speed')
    const plot = readingOf(scene)
    const dot = (plot.x.high - plot.x.low) / (plot.frame.x1 - plot.frame.x0)
    // A cursor stands on a dot: half of one beside the place that is meant.
    const [{ entries, sentence }, ...beside] = [0, -0.45, 0.45].map((miss) =>
      readoutAt(plot, (curve.best?.speed ?? NaN) + miss * dot),
    ) as [Readout, ...Readout[]]
    expect(entries.map(({ label }) => label)).toEqual(['Range', 'Time', 'Pack'])
    for (const one of [sentence, ...beside.map((read) => read.sentence)]) expect(one).not.toContain('none')
    expect(entries[0]?.value).toBeCloseTo(curve.best.metres, -1)
    // One unit for one way, in the sentence, on the drawing and at the cursor.
    for (const words of [scene.summary, sentence, ...labelsOf(scene).map(({ text }) => text)])
      expect(oddIn(words), words).toEqual([])
  })
})
