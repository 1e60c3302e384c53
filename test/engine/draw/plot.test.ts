import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { plot } from '../../../shared-engine/draw/plot.ts'
import type { PanelDescription, PlotDescription } from '../../../shared-engine/draw/plot.ts'
import {
  cursorOfX,
  pixelAlong,
  readoutAt,
  seriesAt,
  valueAlong,
  xOfCursor,
} from '../../../shared-engine/draw/readout.ts'
import { plotScale } from '../../../shared-engine/draw/scale.ts'
import type { PlotReading, Scene } from '../../../shared-engine/draw/scene.ts'
import { hatchPath, sceneSvg } from '../../../shared-engine/draw/svg.ts'
import { plotTable, tableCsv } from '../../../shared-engine/draw/table.ts'

const described = (change: Partial<PlotDescription> = {}): PlotDescription => ({
  name: 'trial',
  title: 'Trial',
  summary: 'A trial.',
  system: 'metric',
  size: { width: 400, height: 240 },
  x: { label: 'Ground speed', kind: 'speed' },
  panels: [
    {
      y: { label: 'Force', kind: 'force' },
      marks: [
        { mark: 'curve', label: 'Thrust', role: 'series1', xs: [0, 5, 10, 15], ys: [400, null, 200, 0] },
      ],
    },
  ],
  ...change,
})

/** The panel that trials start from. */
const panel: PanelDescription = described().panels[0] ?? { y: { label: '', kind: 'none' }, marks: [] }

function reading(scene: Scene): PlotReading {
  if (scene.plot === null) throw new Error('no plot')
  return scene.plot
}

describe('readout', () => {
  // Demo data: a speed that can be held up to 10 m/s and none beyond; a second curve that begins at 12.
  const xs = [0, 5, 10, 15]
  const held = { mark: 'curve', label: 'Range', role: 'series1', xs, ys: [null, 20, 26, null] } as const
  const late = { mark: 'curve', label: 'Late', role: 'series2', xs: [12, 15], ys: [1, 2] } as const
  const scene = plot(described({ panels: [{ ...panel, marks: [held, late] }] }))

  it('has a value at the last point of a curve, though the cursor stands half a dot past it', () => {
    const { x, frame } = reading(scene)
    const dot = (x.high - x.low) / (frame.x1 - frame.x0)
    for (const miss of [-0.45, 0, 1e-9, 0.45])
      expect(readoutAt(reading(scene), 10 + miss * dot).entries[0]?.value).toBeCloseTo(26, 0)
    expect(readoutAt(reading(scene), 5 - 0.45 * dot).entries[0]?.value).toBe(20)
    expect(readoutAt(reading(scene), 10 + 3 * dot).sentence).toContain('Range none')
  })

  it('says a short time in minutes, though the axis reaches hours', () => {
    const times = { mark: 'curve', label: 'Time', role: 'series1', xs: [0, 10], ys: [20_000, 540] } as const
    const long = plot(described({ panels: [{ y: { label: 'Time', kind: 'duration' }, marks: [times] }] }))
    expect(readoutAt(reading(long), 10).sentence).toContain('Time 9.00\u202Fmin')
    expect(readoutAt(reading(long), 0).sentence).toContain('Time 5.56\u202Fh')
  })

  it('says nothing of a curve that has not begun', () => {
    expect(readoutAt(reading(scene), 10).sentence).not.toContain('Late')
    expect(readoutAt(reading(scene), 13).sentence).toContain('Late')
  })
})

describe('scale', () => {
  it('puts ticks on round numbers of the shown unit', () => {
    const wish = { kind: 'speed', extent: [0, 15], pixels: [0, 400], ticks: 5, round: false } as const
    // 15 m/s = 54 km/h = 33.55 mph (NIST SP 811, exact factors).
    expect(plotScale({ ...wish, system: 'metric' }).ticks.map((tick) => tick.text)).toEqual([
      '0',
      '10',
      '20',
      '30',
      '40',
      '50',
    ])
    expect(plotScale({ ...wish, system: 'imperial' }).ticks.map((tick) => tick.text)).toEqual([
      '0',
      '5',
      '10',
      '15',
      '20',
      '25',
      '30',
    ])
  })

  it('puts every tick where its value belongs', () => {
    const scale = plotScale({
      kind: 'temperature',
      system: 'imperial',
      extent: [-10, 120],
      pixels: [300, 20],
      ticks: 5,
      round: true,
    })
    for (const { value, text } of scale.ticks) {
      // °F of the tick's value in °C; 1e-9: closed form.
      expect(Math.abs((value * 9) / 5 + 32 - Number(text.replace('−', '-')))).toBeLessThan(1e-9)
      expect(scale.pixelOf(value)).toBeCloseTo(
        300 + ((value - scale.low) / (scale.high - scale.low)) * -280,
        9,
      )
    }
  })

  it('spans something even where all values are one', () => {
    for (const value of [0, 7, -3]) {
      const scale = plotScale({
        kind: 'force',
        system: 'metric',
        extent: [value, value],
        pixels: [0, 100],
        ticks: 4,
        round: true,
      })
      expect(scale.high).toBeGreaterThan(scale.low)
      expect(Number.isFinite(scale.pixelOf(value))).toBe(true)
    }
  })
})

describe('plot', () => {
  it('keeps a gap a gap: in the line, in the read-out and in the table', () => {
    const scene = plot(described())
    const readout = readoutAt(reading(scene), 5)
    expect(readout.entries.map((entry) => entry.text)).toEqual(['none'])
    expect(readout.sentence).toContain('none')
    expect(plotTable(reading(scene)).rows[1]).toEqual([18, null])
    expect(sceneSvg(scene).match(/d="M[^"]*L[^"]*"/)?.[0]).not.toContain('NaN')
    expect(seriesAt({ xs: [0, 5, 10], ys: [400, null, 200] }, 2)).toBeNull()
  })

  it('reads off what it draws', () => {
    const plotted = reading(plot(described()))
    const entry = readoutAt(plotted, 12.5).entries[0]
    expect(entry?.value).toBe(100)
    const { frame, y } = plotted.panels[0] ?? { frame: plotted.frame, y: plotted.x }
    expect(entry?.place?.y).toBeCloseTo(
      frame.y0 + ((100 - y.low) / (y.high - y.low)) * (frame.y1 - frame.y0),
      9,
    )
  })

  it('finds its way from value to pixel and back', () => {
    const { x, frame } = reading(plot(described()))
    fc.assert(
      fc.property(fc.double({ min: 0, max: 15, noNaN: true }), (value) => {
        const back = valueAlong(x, pixelAlong(x, value, frame.x0, frame.x1), frame.x0, frame.x1)
        expect(Math.abs(back - value)).toBeLessThan(1e-9)
      }),
    )
  })

  it('shares its cursor both ways', () => {
    const cursor = { name: 'groundSpeed', at: [0, 10_000, 30_000], value: [0, 5, 12] } as const
    fc.assert(
      fc.property(fc.double({ min: 0, max: 30_000, noNaN: true }), (x) => {
        const there = cursorOfX(cursor, x)
        expect(there).not.toBeNull()
        expect(Math.abs((xOfCursor(cursor, there ?? 0) ?? 0) - x)).toBeLessThan(1e-6)
      }),
    )
    expect(xOfCursor(cursor, 99)).toBe(30_000)
    expect(xOfCursor({ ...cursor, name: 'none' }, 3)).toBeNull()
  })

  it('names a far limit at the edge instead of squashing the curve under it', () => {
    const rule = (value: number) =>
      ({
        mark: 'rule',
        axis: 'y',
        value,
        label: 'Allowed',
        role: 'over',
        beyond: 'above',
        limit: 'track.tension',
      }) as const
    const drawn = (value: number) =>
      plot(described({ panels: [{ ...panel, marks: [...panel.marks, rule(value)] }] }))
    expect(sceneSvg(drawn(500))).not.toContain('↑')
    expect(reading(drawn(500)).limits.map(({ limit }) => limit)).toEqual(['track.tension'])
    expect(sceneSvg(drawn(5000))).toContain('Allowed ↑')
    expect(reading(drawn(5000)).panels[0]?.y.high).toBeLessThan(700)
  })

  it('breaks its axis where amounts do not start at zero, and not where they do', () => {
    const marks = [{ mark: 'curve', label: 'Pack', role: 'series1', xs: [0, 1], ys: [44, 48] }] as const
    const volts = { label: 'Pack', kind: 'volts', fromZero: false } as const
    expect(sceneSvg(plot(described({ panels: [{ y: volts, marks }] })))).toContain('l8 -4')
    expect(sceneSvg(plot(described({ panels: [panel] })))).not.toContain('l8 -4')
  })
})

describe('table', () => {
  it('gives as CSV the numbers it shows, in the unit of their heading', () => {
    const csv = tableCsv(plotTable(reading(plot(described({ system: 'imperial' })))))
    const [heading, ...rows] = csv.trimEnd().split('\r\n')
    expect(heading).toBe('Ground speed (mph),Thrust (lbf)')
    // 10 m/s = 22.36936 mph, 200 N = 44.96179 lbf (NIST SP 811, exact factors); 1e-5: the table keeps seven figures.
    const [speed, force] = (rows[2] ?? '').split(',').map(Number)
    expect(Math.abs((speed ?? 0) - 22.36936)).toBeLessThan(1e-5)
    expect(Math.abs((force ?? 0) - 44.96179)).toBeLessThan(1e-5)
    expect(rows[1]).toMatch(/^11\.18468,$/)
  })

  it('keeps commas, quotes and line ends inside their cell', () => {
    // RFC 4180, section 2, rules 5 to 7.
    const columns = [
      { label: 'name', unit: '' },
      { label: 'x', unit: 'm' },
    ]
    const rows = [
      ['a, "b"\nc', 1.5],
      ['plain', null],
    ]
    expect(tableCsv({ columns, rows })).toBe('name,x (m)\r\n"a, ""b""\nc",1.5\r\nplain,\r\n')
  })

  it.each([
    [',', '","'],
    ['"', '""""'],
    ['\n', '"\n"'],
  ])('quotes a cell for %j alone', (text, cell) => {
    // RFC 4180, section 2, rules 6 and 7.
    expect(tableCsv({ columns: [{ label: 'x', unit: '' }], rows: [[text]] })).toBe(`x\r\n${cell}\r\n`)
  })

  it.each([
    ['=1+1', "'=1+1"],
    ['+SUM(A1)', "'+SUM(A1)"],
    ['-2+3', "'-2+3"],
    ['@now', "'@now"],
    ['=HYPERLINK("x","y")', `"'=HYPERLINK(""x"",""y"")"`],
    ['\t=1', "'\uFFFD=1"],
    ['bell\u0007', 'bell\uFFFD'],
    ['-5', '-5'],
    ['+1.5e3', '+1.5e3'],
    [-5, '-5'],
    ['Hut – round', 'Hut – round'],
  ])('a text such as %j cannot run as a formula, a number stays one', (text, cell) => {
    // OWASP, CSV Injection: cells that begin with =, +, -, @, tab or carriage return get a single quote before them.
    const columns = [{ label: '=label', unit: '' }]
    expect(tableCsv({ columns, rows: [[text]] })).toBe(`'=label\r\n${cell}\r\n`)
  })
})

describe('svg', () => {
  it('keeps every hatch line inside its box', () => {
    const side = fc.double({ min: 0.5, max: 300, noNaN: true })
    fc.assert(
      fc.property(side, side, side, side, (x, y, width, height) => {
        const numbers = [...hatchPath({ x, y, width, height }, 4).matchAll(/[ML](-?[\d.]+) (-?[\d.]+)/g)]
        for (const [, px = '', py = ''] of numbers) {
          // 0.011: coordinates are written to two decimals.
          expect(Number(px)).toBeGreaterThanOrEqual(x - 0.011)
          expect(Number(px)).toBeLessThanOrEqual(x + width + 0.011)
          expect(Number(py)).toBeGreaterThanOrEqual(y - 0.011)
          expect(Number(py)).toBeLessThanOrEqual(y + height + 0.011)
        }
      }),
    )
  })

  it('writes names that contain markup as text', () => {
    const scene = plot(described({ title: '<script>"&' }))
    expect(sceneSvg(scene)).toContain('<title>&lt;script&gt;&quot;&amp;</title>')
    expect(sceneSvg(scene)).not.toContain('<script')
  })
})
