import { describe, expect, it } from 'vitest'
import { cruiseRange } from '../../../shared-engine/draw/plots/cruise-range.ts'
import { currentPowerEfficiency } from '../../../shared-engine/draw/plots/current-power-efficiency.ts'
import { logOverTime } from '../../../shared-engine/draw/plots/log-over-time.ts'
import { loopTension } from '../../../shared-engine/draw/plots/loop-tension.ts'
import { overlay } from '../../../shared-engine/draw/plots/overlay.ts'
import { patternOverTime } from '../../../shared-engine/draw/plots/pattern-over-time.ts'
import type { PlotLook } from '../../../shared-engine/draw/plots/plot-look.ts'
import { rpmToSpeed } from '../../../shared-engine/draw/plots/rpm-to-speed.ts'
import { runFromRest } from '../../../shared-engine/draw/plots/run-from-rest.ts'
import { smallMultiples } from '../../../shared-engine/draw/plots/small-multiples.ts'
import { thrustAgainstSpeed } from '../../../shared-engine/draw/plots/thrust-against-speed.ts'
import { toothLoadOverSpeed, toothLoadOverThrottle } from '../../../shared-engine/draw/plots/tooth-load.ts'
import { warmUp } from '../../../shared-engine/draw/plots/warm-up.ts'
import { readoutAt } from '../../../shared-engine/draw/readout.ts'
import type { Scene } from '../../../shared-engine/draw/scene.ts'
import * as demo from '../../drawings/demo-data.ts'

/** Every plot of what is computed, from demo data. */
const computed: Readonly<Record<string, (look: PlotLook) => Scene | undefined>> = {
  thrust: (look) => thrustAgainstSpeed({ states: demo.speedStates, top: demo.topState }, look),
  'rpm to speed': (look) =>
    rpmToSpeed(
      { speedOfRpm: (rpm) => rpm * 0.000385, ratedRpm: 31000, loadedRpm: 31400, freeRpm: 35600 },
      look,
    ),
  currents: (look) => currentPowerEfficiency({ states: demo.speedStates, topSpeed: 12.1 }, look),
  run: (look) => runFromRest(demo.run, look),
  'tooth over throttle': (look) =>
    toothLoadOverThrottle({ subject: demo.shear, throttle: demo.throttle, cases: demo.toothCases }, look),
  'tooth over speed': (look) =>
    toothLoadOverSpeed(
      {
        subject: demo.shear,
        beltSpeed: demo.beltSpeed,
        groundSpeed: demo.groundSpeed,
        curves: demo.overSpeed,
      },
      look,
    ),
  tension: (look) => loopTension(demo.tension, look),
  'warm-up': (look) => warmUp(demo.warmUpData, look),
  cruise: (look) => cruiseRange(demo.cruise, look),
  pattern: (look) => patternOverTime(demo.pattern, look),
  sweep: (look) => smallMultiples(demo.sweep, look)[0],
  overlay: (look) => overlay(demo.compared, look),
}

/** What is read off a plot at every place where the keyboard stops. */
function readOff(scene: Scene | undefined): readonly { kind: string; text: string }[] {
  const plot = scene?.plot
  if (plot === null || plot === undefined) throw new Error('no plot')
  const kinds = new Map(plot.panels.flatMap(({ series }) => series.map(({ label, kind }) => [label, kind])))
  return plot.stops.flatMap((x) =>
    readoutAt(plot, x).entries.flatMap(({ label, text }) =>
      text === 'none' ? [] : [{ kind: kinds.get(label) ?? '', text }],
    ),
  )
}

/** Significant figures of a number as it is written; the noughts that end a whole number count for nothing. */
function figuresIn(text: string): number {
  const number = /[\d.,]+/.exec(text)?.[0].replaceAll(',', '') ?? ''
  const digits = number.replace('.', '').replace(/^0+/, '')
  return number.includes('.') ? digits.length : digits.replace(/0+$/, '').length
}

const look = { system: 'metric', size: { width: 620, height: 430 } } as const

describe('what is read off at the cursor', () => {
  // ISO/IEC Guide 98-3, 7.2.6: a value ends where its uncertainty begins.
  it.each(Object.entries(computed))('has as many figures as the entries deserve: %s', (_, draw) => {
    for (const figures of [2, 3] as const) {
      const read = readOff(draw({ ...look, figures }))
      expect(read.length).toBeGreaterThan(3)
      // Whole counts stay whole; of a temperature two figures would hide ten degrees.
      const most = (kind: string) => (kind === 'temperature' ? 3 : figures)
      expect(
        read.filter(({ kind, text }) => kind !== 'count' && figuresIn(text) > most(kind)),
        `${figures}`,
      ).toEqual([])
    }
    // Without that it says more somewhere, or nothing was tried.
    expect(readOff(draw(look)).some(({ text }) => figuresIn(text) > 2)).toBe(true)
  })

  it('is what was measured where a log is shown, whatever the build rests on', () => {
    expect(readOff(logOverTime(demo.log, { ...look, figures: 2 }))).toEqual(
      readOff(logOverTime(demo.log, look)),
    )
  })
})
