import type { Machine } from '../machine/parts.ts'
import type { Evaluation } from '../cases/evaluation.ts'
import { BalanceFigures, balanceFigures, setBalanceFigures } from './balance.ts'
import { BurstFigures, burstFigures, setBurstFigures } from './bursts.ts'
import { CruiseFigures, cruiseFigures, setCruiseFigures } from './cruise.ts'
import { ForceFigures, forceFigures, setForceFigures } from './force.ts'
import { HeatFigures, heatFigures, setHeatFigures } from './heat.ts'
import { JamFigures, jamFigures, setJamFigures } from './jam.ts'
import { MotorFigures, motorFigures, setMotorFigures } from './motor.ts'
import { PackFigures, packFigures, setPackFigures } from './pack.ts'
import { PatternFigures, patternFigures, setPatternFigures } from './pattern.ts'
import { RunFigures, runFigures, setRunFigures } from './run.ts'
import { SpeedFigures, setSpeedFigures, speedFigures } from './speed.ts'
import { setStopFigures, StopFigures, stopFigures } from './stop.ts'
import { setWiringFigures, WiringFigures, wiringFigures } from './wiring.ts'
import { setTrackFigures, TrackFigures, trackFigures } from './track.ts'

const all = [
  ...motorFigures,
  ...packFigures,
  ...speedFigures,
  ...runFigures,
  ...forceFigures,
  ...balanceFigures,
  ...jamFigures,
  ...trackFigures,
  ...patternFigures,
  ...burstFigures,
  ...stopFigures,
  ...heatFigures,
  ...wiringFigures,
  ...cruiseFigures,
]

/** A figure of the table, its name one of the known ones. */
export type NamedFigure = (typeof all)[number]

export type FigureName = NamedFigure['name']

/** Every figure of `check`, by subject. */
export const figureTable: readonly NamedFigure[] = all

const byName: ReadonlyMap<string, NamedFigure> = new Map(figureTable.map((figure) => [figure.name, figure]))

/** The figure of a name; undefined where there is none. */
export function figureOf(name: string): NamedFigure | undefined {
  return byName.get(name)
}

/** All figures of one evaluation as plain numbers, NaN where one does not exist; filled again and again. */
export class FigureValues {
  readonly motor = new MotorFigures()
  readonly pack = new PackFigures()
  readonly speed = new SpeedFigures()
  readonly run = new RunFigures()
  readonly force = new ForceFigures()
  readonly balance = new BalanceFigures()
  readonly jam = new JamFigures()
  readonly track = new TrackFigures()
  readonly pattern = new PatternFigures()
  readonly bursts = new BurstFigures()
  readonly stops = new StopFigures()
  readonly heat = new HeatFigures()
  readonly wiring = new WiringFigures()
  readonly cruise = new CruiseFigures()
}

/** Fills all figures of one evaluation. */
export function setFigures(values: FigureValues, e: Evaluation, machine: Machine): void {
  setMotorFigures(values.motor, e, machine)
  setPackFigures(values.pack, e, machine)
  setSpeedFigures(values.speed, e)
  setRunFigures(values.run, e, machine)
  setForceFigures(values.force, e, machine)
  setBalanceFigures(values.balance, e, machine)
  setJamFigures(values.jam, e, machine)
  setTrackFigures(values.track, e, machine)
  setPatternFigures(values.pattern, e, machine)
  setBurstFigures(values.bursts, e, machine)
  setStopFigures(values.stops, e, machine)
  setHeatFigures(values.heat, e, machine)
  setWiringFigures(values.wiring, e)
  setCruiseFigures(values.cruise, e, machine)
}

export type Figures = Readonly<Record<FigureName, number | null>>

/** Where each figure stands among the values of the subjects. */
const places = placesOf(new FigureValues())

function placesOf(values: FigureValues): readonly (readonly [FigureName, keyof FigureValues])[] {
  const subjects = Object.keys(values) as (keyof FigureValues)[]
  return figureTable.map(({ name }) => {
    const subject = subjects.find((one) => name in values[one])
    if (subject === undefined) throw new Error(`nothing sets ${name}`)
    return [name, subject]
  })
}

/** All figures of one evaluation; null where a number does not exist. */
export function figuresOf(e: Evaluation, machine: Machine): Figures {
  const values = new FigureValues()
  setFigures(values, e, machine)
  // One by one: to spread so many groups into one object takes longer than to work all of them out.
  const figures = {} as Record<FigureName, number | null>
  for (const [name, subject] of places) {
    const value = (values[subject] as Partial<Record<FigureName, number>>)[name] ?? NaN
    figures[name] = Number.isFinite(value) ? value : null
  }
  return figures
}
