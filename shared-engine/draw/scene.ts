import type { QuantityKind } from '../units/kinds.ts'
import type { Role } from './role.ts'
import type { LimitId } from '../limits/id.ts'

/** A point on the drawing, px, y downwards. */
export interface Point {
  readonly x: number
  readonly y: number
}

export interface Box extends Point {
  readonly width: number
  readonly height: number
}

/** How a line is drawn. */
export interface Stroke {
  readonly role: Role
  /** px; 1 unless said. */
  readonly width?: number
  /** px on, px off, …; solid unless said. */
  readonly dash?: readonly number[]
}

interface ShapeCommon {
  /** Found again by the page: a part's or a wheel's name. Unique in its scene. */
  readonly id?: string
  /** The limit this shape shows: choosing the limit highlights it. */
  readonly limit?: LimitId
}

/** Any outline; `d` as in SVG. */
interface PathShape extends ShapeCommon {
  readonly shape: 'path'
  readonly d: string
  readonly fill?: Role
  /** 0 to 1. */
  readonly fillOpacity?: number
  readonly stroke?: Stroke
}

interface LineShape extends ShapeCommon {
  readonly shape: 'line'
  readonly from: Point
  readonly to: Point
  readonly stroke: Stroke
}

interface PolygonShape extends ShapeCommon {
  readonly shape: 'polygon'
  readonly points: readonly Point[]
  readonly fill?: Role
  readonly fillOpacity?: number
  readonly stroke?: Stroke
}

interface CircleShape extends ShapeCommon {
  readonly shape: 'circle'
  readonly centre: Point
  readonly radius: number
  readonly fill?: Role
  readonly stroke?: Stroke
}

export interface TextShape extends ShapeCommon {
  readonly shape: 'text'
  readonly at: Point
  readonly text: string
  /** px; one of 11, 13, 15, 20, 28. */
  readonly size: number
  readonly role: Role
  readonly anchor?: 'start' | 'middle' | 'end'
  readonly weight?: 'regular' | 'strong'
  /** Degrees clockwise about `at`. */
  readonly turn?: number
  /** A paper-coloured rim that keeps text readable where it crosses a line. */
  readonly rim?: boolean
}

/** A box of slanting hairlines: what lies beyond a limit. */
interface HatchShape extends ShapeCommon {
  readonly shape: 'hatch'
  readonly box: Box
  readonly role: Role
  /** px between lines. */
  readonly spacing: number
}

/** Shapes moved together: turned about the origin first, then shifted. */
export interface GroupShape extends ShapeCommon {
  readonly shape: 'group'
  readonly shift?: Point
  /** Degrees clockwise. */
  readonly turn?: number
  /** Shapes are cut off outside this box (in the group's own px). */
  readonly clip?: Box
  readonly shapes: readonly Shape[]
}

export type Shape = PathShape | LineShape | PolygonShape | CircleShape | TextShape | HatchShape | GroupShape

/** A drawing as data: the page shows it, the sheet prints it, tests compare it. Serialisable. */
export interface Scene {
  /** Name for files and element ids: `thrust-against-speed`. */
  readonly name: string
  readonly title: string
  /** One sentence that says what the drawing shows, with its numbers: for screen readers and captions. */
  readonly summary: string
  readonly width: number
  readonly height: number
  readonly shapes: readonly Shape[]
  /** How to read values off; null for drawings that are no plot. */
  readonly plot: PlotReading | null
}

/** Which cursor a plot follows; all plots with the same name share one value. */
export type CursorName = 'groundSpeed' | 'throttle' | 'seconds' | 'logSeconds' | 'none'

export interface Axis {
  /** "Ground speed". */
  readonly label: string
  readonly kind: QuantityKind
  /** Values at the frame's left and right, or bottom and top edge, SI. */
  readonly low: number
  readonly high: number
  /** Unit in use: "km/h". */
  readonly unit: string
  /** Label with that unit: "Ground speed, km/h". */
  readonly title: string
}

/** The rectangle that data is drawn in, px: x0 left, x1 right, y0 bottom, y1 top. */
export interface Frame {
  readonly x0: number
  readonly x1: number
  readonly y0: number
  readonly y1: number
}

/** One series as it can be read: SI values over SI x, `null` where there is none. */
export interface SeriesReading {
  readonly label: string
  readonly role: Role
  readonly kind: QuantityKind
  readonly xs: readonly number[]
  readonly ys: readonly (number | null)[]
}

/** One frame of a plot; panels stand under each other on one x axis. */
export interface PanelReading {
  readonly frame: Frame
  readonly y: Axis
  readonly series: readonly SeriesReading[]
}

/** Between a plot's x and the value of the cursor it shares (piecewise linear, both rising). */
export interface CursorMap {
  readonly name: CursorName
  readonly at: readonly number[]
  readonly value: readonly number[]
}

export interface PlotReading {
  readonly x: Axis
  /** Around all panels. */
  readonly frame: Frame
  readonly panels: readonly PanelReading[]
  readonly cursor: CursorMap
  /** Significant figures of what is read off, where the curves are known no better; absent: as many as are shown. */
  readonly sureTo?: 2 | 3 | undefined
  /** x values, SI and rising, that the keyboard steps through. */
  readonly stops: readonly number[]
  /** Places of limits: the choice of one in the ledger brings its place into view. */
  readonly limits: readonly LimitPlace[]
}

export interface LimitPlace {
  readonly limit: LimitId
  readonly box: Box
}

/** The plot's numbers, as a person would put them in a table; units stand in the headings. */
export interface Table {
  readonly columns: readonly TableColumn[]
  /** In the shown unit; null where there is no value. */
  readonly rows: readonly (readonly (number | string | null)[])[]
}

interface TableColumn {
  readonly label: string
  /** "km/h"; empty for a number without unit. */
  readonly unit: string
}

/** What the plot says at one x. */
export interface Readout {
  /** "23.4 km/h". */
  readonly at: string
  readonly entries: readonly ReadoutEntry[]
  /** All of it as a sentence for the live region. */
  readonly sentence: string
}

export interface ReadoutEntry {
  readonly label: string
  readonly role: Role
  /** SI; null in a gap. */
  readonly value: number | null
  /** "412 N", or "none". */
  readonly text: string
  /** Where it is drawn, px; null in a gap. */
  readonly place: Point | null
}
