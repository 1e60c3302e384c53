import { fieldOf, groups } from '../entries/fields.ts'
import { keysOf, patternOf, valueAt } from '../entries/path.ts'
import type { Evaluated } from '../figures/evaluated.ts'
import { constants } from '../constants.ts'
import { figureOf, type FigureName } from '../figures/table.ts'
import { finiteOrNull } from '../numeric/finite.ts'
import { toEngine } from '../units/convert.ts'
import type { QuantityKind } from '../units/kinds.ts'
import { evaluateExpression } from './expression/evaluate.ts'
import { parseExpression } from './expression/parse.ts'
import type { WorkingStep, WorkingSymbol } from './working.ts'

const kindOfConstant = {
  gravity: 'acceleration',
  copperTemperatureCoefficient: 'temperatureCoefficient',
  copperResistivity: 'resistivity',
  airGasConstant: 'specificHeat',
  standardPressure: 'pressure',
  zeroCelsius: 'temperatureDifference',
  horsepower: 'watts',
  shearOfYield: 'none',
} as const satisfies Partial<Record<keyof typeof constants, QuantityKind>>

/** How a quantity stands in a working: its kind and its name in words. */
export type Told = readonly [kind: QuantityKind, name: string]

/**
 * A working while it is written. What is put in and what is found are the engine's own numbers; a step's number comes
 * of its algebra alone, and test/engine/explain holds the last one to the engine's. A symbol or step that is there
 * already is not written twice, so that groups of steps can be put together freely.
 */
export class Draft {
  readonly checked: Evaluated
  readonly symbols: WorkingSymbol[] = []
  readonly steps: WorkingStep[] = []
  readonly sources: string[] = []
  readonly assumptions: string[] = []
  readonly #values = new Map<string, number>()

  constructor(checked: Evaluated) {
    this.checked = checked
  }

  /** Whether a symbol is known. */
  has(symbol: string): boolean {
    return this.#values.has(symbol)
  }

  /** Value of a symbol that is known. */
  of(symbol: string): number {
    const value = this.#values.get(symbol)
    if (value === undefined) throw new Error(`no symbol ${symbol} yet`)
    return value
  }

  /** An entry of the build that holds a number. @returns its value in the engine's unit */
  entry(symbol: string, path: string): number {
    const field = fieldOf(path)
    const entered = valueAt(this.checked.build, keysOf(path))
    if (field === undefined || typeof entered !== 'number') throw new Error(`no number at ${path}`)
    return this.#put(symbol, [field.kind, labelOf(path)], toEngine(entered, field.kind), path)
  }

  /** A row of a reference table, chosen by an entry of the build. */
  row(symbol: string, path: string, told: Told, value: number): number {
    return this.#put(symbol, told, value, path)
  }

  /** Another figure, which has a working of its own. */
  figure(symbol: string, name: FigureName): number {
    const figure = figureOf(name)
    if (figure === undefined) throw new Error(`no figure ${name}`)
    const value = this.checked.figures[name] ?? NaN
    return this.#put(symbol, [figure.kind, figure.label], value, `figure:${name}`)
  }

  /** A physical constant; its source joins the working's. */
  constant(symbol: string, name: keyof typeof kindOfConstant): number {
    const { value, name: words, source } = constants[name]
    this.source(source)
    return this.#put(symbol, [kindOfConstant[name], words], value)
  }

  /** A number that neither the build nor a figure holds: a rule's own. */
  given(symbol: string, told: Told, value: number): number {
    return this.#put(symbol, told, value)
  }

  #put(symbol: string, [kind, name]: Told, value: number, from?: string): number {
    const known = this.#values.get(symbol)
    if (known !== undefined && !Object.is(known, value)) throw new Error(`two values of ${symbol}`)
    if (known === undefined) {
      const shown = finiteOrNull(value)
      this.symbols.push({ symbol, name, value: shown, kind, ...(from === undefined ? {} : { from }) })
      this.#values.set(symbol, value)
    }
    return value
  }

  /** A line of algebra. @returns what it gives with the symbols so far put in */
  step(symbol: string, told: Told, expression: string, words?: string): number {
    const value = evaluateExpression(parseExpression(expression), (name) => this.of(name))
    return this.#write(symbol, told, expression, value, words)
  }

  /** A root, an integral or a choice: words say what is solved. */
  found(symbol: string, told: Told, words: string, value: number): number {
    return this.#write(symbol, told, null, value, words)
  }

  #write(
    symbol: string,
    [kind, name]: Told,
    expression: string | null,
    value: number,
    words?: string,
  ): number {
    const known = this.#values.get(symbol)
    if (known !== undefined) {
      const same = this.steps.some((step) => step.symbol === symbol && step.expression === expression)
      if (!same) throw new Error(`${symbol} stands for something else already`)
      return known
    }
    const shown = finiteOrNull(value + 0)
    this.steps.push({
      symbol,
      name,
      expression,
      value: shown,
      kind,
      ...(words === undefined ? {} : { words }),
    })
    this.#values.set(symbol, value)
    return value
  }

  /** A standard or book, or the words "common practice, no source". */
  source(text: string): void {
    if (!this.sources.some((told) => told.includes(text))) this.sources.push(text)
  }

  /** An engineering assumption with no source. */
  assume(text: string): void {
    if (!this.assumptions.includes(text)) this.assumptions.push(text)
  }
}

/** One item of a list, in words. */
const itemWords: Readonly<Record<string, string>> = {
  stages: 'stage',
  accessories: 'accessory',
  wires: 'wire',
  stepDowns: 'step-down',
}

/** What an entry is called, with the number of its list item. */
export function labelOf(path: string): string {
  const label = fieldOf(path)?.label ?? groups[patternOf(path)]?.label ?? path
  const item = /^(stages|accessories|wires|stepDowns)\.(\d+)/.exec(path)
  if (item === null) return label
  return `${label}, ${itemWords[item[1] ?? ''] ?? 'item'} ${Number(item[2]) + 1}`
}
