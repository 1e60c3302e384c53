import type { Machine } from '../build/machine-parts.ts'
import type { Evaluation } from '../cases/evaluation.ts'
import type { Figure } from './figure.ts'
import { forceFigures, trackFigures } from './force.ts'
import { cruiseFigures, heatFigures } from './heat.ts'
import { motorFigures } from './motor.ts'
import { packFigures } from './pack.ts'
import { speedFigures } from './speed.ts'

const all = [
  ...motorFigures,
  ...packFigures,
  ...speedFigures,
  ...forceFigures,
  ...trackFigures,
  ...heatFigures,
  ...cruiseFigures,
] as const

export type FigureName = (typeof all)[number]['name']

/** A figure of the table, its name one of the known ones. */
export type NamedFigure = Figure & { readonly name: FigureName }

/** Every figure of `check`, by subject. */
export const figureTable: readonly NamedFigure[] = all

const byName: ReadonlyMap<string, NamedFigure> = new Map(figureTable.map((figure) => [figure.name, figure]))

/** The figure of a name; undefined where there is none. */
export function figureOf(name: string): NamedFigure | undefined {
  return byName.get(name)
}

export type Figures = Readonly<Record<FigureName, number | null>>

/** All figures of one evaluation; null where a number does not exist. */
export function figuresOf(e: Evaluation, machine: Machine): Figures {
  const entries = figureTable.map((figure) => {
    const value = figure.value(e, machine)
    return [figure.name, Number.isFinite(value) ? value : null] as const
  })
  // every name of the table is a key, which fromEntries can't tell the compiler
  return Object.fromEntries(entries) as Record<FigureName, number | null>
}
