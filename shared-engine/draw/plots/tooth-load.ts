import type { Mark } from '../marks/kinds.ts'
import { plot } from '../plot.ts'
import type { Scene } from '../scene.ts'
import type { QuantityKind } from '../../units/kinds.ts'
import { cursorOver, said, seriesCurve } from './plot-look.ts'
import type { PlotLook } from './plot-look.ts'
import { sameCursor } from '../readout.ts'
import type { LimitId } from '../../limits/id.ts'

/** What is loaded and what it bears: "Tooth shear", Pa, the limit's id. */
interface LoadSubject {
  readonly label: string
  readonly kind: QuantityKind
  /** null where nothing is entered to hold it against. */
  readonly allowed: number | null
  /** null where nothing of the ledger holds it. */
  readonly limit: LimitId | null
}

interface LoadCurve {
  /** "Jam at full throttle". */
  readonly label: string
  readonly values: readonly (number | null)[]
  /** x at which the allowed value is passed; null where never. */
  readonly passedAt?: number | null
}

interface LoadOverThrottle {
  readonly subject: LoadSubject
  /** 0 to 1, rising. */
  readonly throttle: readonly number[]
  readonly cases: readonly LoadCurve[]
}

interface LoadOverSpeed {
  readonly subject: LoadSubject
  /** m/s, rising; `groundSpeed` the ground speed at each, for the shared cursor. */
  readonly beltSpeed: readonly number[]
  readonly groundSpeed: readonly number[]
  readonly curves: readonly LoadCurve[]
}

function allowedRule(subject: LoadSubject, over: boolean, look: PlotLook): Mark[] {
  if (subject.allowed === null) return []
  return [
    {
      mark: 'rule',
      axis: 'y',
      value: subject.allowed,
      label: `Allowed ${said(subject.allowed, subject.kind, look)}`,
      role: over ? 'over' : 'quiet',
      beyond: 'above',
      ...shownBy(subject),
    },
  ]
}

/** The limit that a mark shows, where there is one. */
function shownBy({ limit }: LoadSubject): { readonly limit?: LimitId } {
  return limit === null ? {} : { limit }
}

/** First part of a scene's name; the force itself is held by no limit. */
function nameOf({ limit }: LoadSubject): string {
  return (limit ?? 'track.tooth-force').replaceAll('.', '-')
}

function greatest(values: readonly (number | null)[]): number {
  return values.reduce<number>((most, value) => Math.max(most, value ?? 0), 0)
}

function isOver({ allowed }: LoadSubject, curves: readonly LoadCurve[]): boolean {
  return allowed !== null && curves.some((curve) => greatest(curve.values) > allowed)
}

function passings(subject: LoadSubject, curves: readonly LoadCurve[], look: PlotLook): Mark[] {
  const { allowed } = subject
  if (allowed === null) return []
  return curves.flatMap((curve): Mark[] =>
    curve.passedAt === null || curve.passedAt === undefined
      ? []
      : [
          {
            mark: 'point',
            x: curve.passedAt,
            y: allowed,
            label: `passed at ${said(curve.passedAt, 'fraction', look)}`,
            role: 'over',
            marker: 'diamond',
            ...shownBy(subject),
          },
        ],
  )
}

function throttleSummary({ subject, cases }: LoadOverThrottle, look: PlotLook): string {
  const each = cases.map((one) => {
    const most = `${one.label} reaches ${said(greatest(one.values), subject.kind, look)}`
    const passed = one.passedAt ?? null
    return passed === null
      ? most
      : `${most} and passes the limit at ${said(passed, 'fraction', look)} throttle`
  })
  const allowed = subject.allowed === null ? '' : `, allowed ${said(subject.allowed, subject.kind, look)}`
  return `${subject.label}${allowed}: ${each.join('; ')}.`
}

/** A load of the track over throttle in each case, against what is allowed, and the throttle at which that is passed. */
export function toothLoadOverThrottle(data: LoadOverThrottle, look: PlotLook): Scene {
  const { subject, throttle, cases } = data
  const marks: Mark[] = [
    ...allowedRule(subject, isOver(subject, cases), look),
    ...cases.map((one, index) => seriesCurve(index, one.label, throttle, one.values)),
    ...passings(subject, cases, look),
  ]
  return plot({
    name: `${nameOf(subject)}-over-throttle`,
    title: `${subject.label} over throttle`,
    summary: throttleSummary(data, look),
    ...look,
    sureTo: look.figures,
    x: { label: 'Throttle', kind: 'fraction', low: 0, high: 1 },
    panels: [{ y: { label: subject.label, kind: subject.kind }, marks }],
    cursor: sameCursor('throttle', 0, 1),
  })
}

/** A load of the track at full throttle over belt speed: what the motor could do, what the ground lets through. */
export function toothLoadOverSpeed(data: LoadOverSpeed, look: PlotLook): Scene {
  const { subject, beltSpeed, curves } = data
  const most = Math.max(...curves.map((one) => greatest(one.values)))
  const allowed =
    subject.allowed === null ? '' : ` against ${said(subject.allowed, subject.kind, look)} allowed`
  return plot({
    name: `${nameOf(subject)}-over-speed`,
    title: `${subject.label} over belt speed`,
    summary: `${subject.label} at full throttle: at most ${said(most, subject.kind, look)}${allowed}.`,
    ...look,
    sureTo: look.figures,
    x: { label: 'Belt speed', kind: 'speed' },
    panels: [
      {
        y: { label: subject.label, kind: subject.kind },
        marks: [
          ...allowedRule(subject, isOver(subject, curves), look),
          ...curves.map((one, index) => seriesCurve(index, one.label, beltSpeed, one.values)),
        ],
      },
    ],
    cursor: cursorOver('groundSpeed', beltSpeed, data.groundSpeed),
  })
}
