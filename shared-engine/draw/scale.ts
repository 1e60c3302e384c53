import { scaleLinear } from 'd3-scale'
import { assertUnit, fromEngine, toEngine } from '../units/convert.ts'
import { displayUnit } from '../units/display.ts'
import type { QuantityKind, UnitSystem } from '../units/kinds.ts'

interface Tick {
  /** SI. */
  readonly value: number
  readonly text: string
}

/** From a quantity in SI to px, with ticks that are round in the unit shown. */
export interface PlotScale {
  readonly kind: QuantityKind
  readonly unit: string
  readonly low: number
  readonly high: number
  readonly ticks: readonly Tick[]
  pixelOf(value: number): number
}

interface ScaleWish {
  readonly kind: QuantityKind
  readonly system: UnitSystem
  /** Least and greatest value to be seen, SI. */
  readonly extent: readonly [number, number]
  /** px of low and high. */
  readonly pixels: readonly [number, number]
  /** About how many ticks. */
  readonly ticks: number
  /** Widen both ends to round values. */
  readonly round: boolean
}

/** Least span of an axis as a share of its values: what differs by less is one value, and its ticks would need more digits. */
const leastSpan = 1e-3

/** An extent that spans something: a single value gets room around it. */
function spanning([low, high]: readonly [number, number]): [number, number] {
  const least = leastSpan * Math.max(Math.abs(low), Math.abs(high))
  if (high - low > least) return [low, high]
  if (high > low) return [(low + high - least) / 2, (low + high + least) / 2]
  const room = Math.abs(low) > 0 ? Math.abs(low) * 0.5 : 1
  return low >= 0 && low - room < 0 ? [0, low + room] : [low - room, low + room]
}

/**
 * Round ends, except below zero where the data only just get there: a curve that ends slightly under the zero line
 * would otherwise be given a whole empty tick below it.
 */
function roundedDomain(round: readonly number[], domain: readonly number[]): number[] {
  const [low = 0, high = 1] = domain
  const [roundLow = low, roundHigh = high] = round
  const justBelowZero = low < 0 && low > -0.3 * (high - low) && roundLow < low
  return [justBelowZero ? low : roundLow, roundHigh]
}

/** A linear scale of one quantity. */
export function plotScale(wish: ScaleWish): PlotScale {
  const { kind, system, pixels } = wish
  const [least, greatest] = spanning(wish.extent)
  const unit = assertUnit(
    kind,
    displayUnit(kind, system, Math.max(Math.abs(least), Math.abs(greatest))),
  ).symbol
  const domain = [fromEngine(least, kind, unit), fromEngine(greatest, kind, unit)]
  const scale = scaleLinear().domain(domain).range(pixels)
  if (wish.round) scale.domain(roundedDomain(scale.copy().nice(wish.ticks).domain(), domain))
  const textOf = scale.tickFormat(wish.ticks)
  const ticks = scale
    .ticks(wish.ticks)
    .map((value) => ({ value: toEngine(value, kind, unit), text: textOf(value) }))
  const [low = 0, high = 1] = scale.domain()
  // Units are straight lines of SI, so px are too: no conversion for each point of a curve.
  const [from, to] = [toEngine(low, kind, unit), toEngine(high, kind, unit)]
  const [start, end] = pixels
  const slope = (end - start) / (to - from)
  return {
    kind,
    unit,
    low: from,
    high: to,
    ticks,
    pixelOf: (value) => start + (value - from) * slope,
  }
}

/** "Ground speed, km/h"; the label alone for plain numbers. */
export function axisTitle(label: string, unit: string): string {
  return unit === '' ? label : `${label}, ${unit}`
}
