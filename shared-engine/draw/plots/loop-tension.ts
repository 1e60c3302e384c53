import type { Mark } from '../marks/kinds.ts'
import { plot } from '../plot.ts'
import type { Scene } from '../scene.ts'
import { cursorOver, said, seriesCurve } from './plot-look.ts'
import type { PlotLook } from './plot-look.ts'

/** Tension of one loop at full throttle over belt speed, in its parts, N. */
export interface LoopTension {
  /** m/s, rising. */
  readonly beltSpeed: readonly number[]
  readonly groundSpeed: readonly number[]
  readonly total: readonly (number | null)[]
  /** The slack side's. */
  readonly slack: readonly (number | null)[]
  readonly pretension: number
  /** The part from the loop's own mass going round. */
  readonly centrifugal: readonly (number | null)[]
  readonly breaking: number | null
  readonly burstSpeed: number | null
  /** Where the loop leaves its wheels running free; null where it never does, or nobody knows. */
  readonly liftOffSpeed: number | null
  /** Worst-case belt speed, airborne. */
  readonly freeBeltSpeed: number | null
}

function limitsOf(data: LoopTension, look: PlotLook): Mark[] {
  const { breaking, burstSpeed, freeBeltSpeed, liftOffSpeed } = data
  const rules: Mark[] = []
  if (breaking !== null) {
    rules.push({
      mark: 'rule',
      axis: 'y',
      value: breaking,
      label: `Breaks at ${said(breaking, 'force', look)}`,
      role: 'over',
      beyond: 'above',
      limit: 'track.tension',
    })
  }
  if (burstSpeed !== null) {
    const label = `Bursts at ${said(burstSpeed, 'speed', look)}`
    const limit = 'track.burst-speed'
    rules.push({ mark: 'rule', axis: 'x', value: burstSpeed, label, role: 'over', beyond: 'above', limit })
  }
  if (liftOffSpeed !== null) {
    const label = `Leaves its wheels at ${said(liftOffSpeed, 'speed', look)}`
    const limit = 'track.lift-off-free'
    rules.push({ mark: 'rule', axis: 'x', value: liftOffSpeed, label, role: 'over', dash: [2, 3], limit })
  }
  if (freeBeltSpeed !== null) {
    const label = `Fastest, airborne ${said(freeBeltSpeed, 'speed', look)}`
    rules.push({ mark: 'rule', axis: 'x', value: freeBeltSpeed, label, role: 'quiet', dash: [2, 3] })
  }
  return rules
}

/** Loop tension over belt speed with its pretension and centrifugal part, and where the loop would tear. */
export function loopTension(data: LoopTension, look: PlotLook): Scene {
  const { beltSpeed, pretension, centrifugal, total, slack, breaking, burstSpeed, liftOffSpeed } = data
  const own = centrifugal.map((part) => (part === null ? null : part + pretension))
  const most = Math.max(0, ...total.map((value) => value ?? 0))
  const against =
    breaking === null ? 'no breaking tension is entered' : `it breaks at ${said(breaking, 'force', look)}`
  const burst =
    burstSpeed === null ? '' : `; its own mass would tear it at ${said(burstSpeed, 'speed', look)}`
  const lifts =
    liftOffSpeed === null ? '' : `; running free it leaves its wheels at ${said(liftOffSpeed, 'speed', look)}`
  return plot({
    name: 'loop-tension',
    title: 'Loop tension over belt speed',
    summary: `Tension of one loop: at most ${said(most, 'force', look)}; ${against}${burst}${lifts}.`,
    ...look,
    sureTo: look.figures,
    x: { label: 'Belt speed', kind: 'speed' },
    panels: [
      {
        y: { label: 'Tension of one loop', kind: 'force' },
        marks: [
          ...limitsOf(data, look),
          { mark: 'area', label: 'Centrifugal', role: 'series2', xs: beltSpeed, ys: own, base: pretension },
          seriesCurve(0, 'Tension', beltSpeed, total),
          seriesCurve(1, 'Slack side', beltSpeed, slack),
          seriesCurve(
            2,
            'Pretension',
            beltSpeed,
            beltSpeed.map(() => pretension),
          ),
        ],
      },
    ],
    cursor: cursorOver('groundSpeed', beltSpeed, data.groundSpeed),
  })
}
