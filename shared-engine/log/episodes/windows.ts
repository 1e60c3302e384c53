import type { LoadSignal } from '../derive/load-signal.ts'
import { follows } from './sampled.ts'

/** A short run of samples, by places among the rpm samples. */
export interface Window {
  readonly first: number
  readonly last: number
}

const fewestSamples = 3
const leastSeconds = 0.5
const steadyShare = 0.1

/**
 * From a sample the shortest run of at least three samples and half a second while the motor turns and the current is
 * known; null without one.
 *
 * @param first, to places, both included
 */
export function windowFrom(signal: LoadSignal, first: number, to: number): Window | null {
  const isGood = (place: number) => signal.turns(place) && !Number.isNaN(signal.x[place] ?? NaN)
  if (!isGood(first)) return null
  for (let last = first + 1; last <= to && isGood(last) && follows(signal.rpm, last); last += 1) {
    const long = signal.timeAt(last) - signal.timeAt(first) >= leastSeconds
    if (last - first + 1 >= fewestSamples && long) return { first, last }
  }
  return null
}

/** The last window from which the track carries; undefined without one. Looked for from the end: a log can be long. */
export function lastCarrying(signal: LoadSignal, from: number, to: number): Window | undefined {
  for (let first = to; first >= from; first -= 1) {
    const window = windowFrom(signal, first, to)
    if (window !== null && isCarrying(signal, window)) return window
  }
  return undefined
}

/** Sum of a series over a window. */
function sumOf(values: Float64Array, { first, last }: Window): number {
  let sum = 0
  for (let place = first; place <= last; place += 1) sum += values[place] ?? NaN
  return sum
}

/** Mean of a series over a window. */
export function meanOf(values: Float64Array, window: Window): number {
  return sumOf(values, window) / (window.last - window.first + 1)
}

/** Mean rpm over a window. */
export function meanRpm(signal: LoadSignal, { first, last }: Window): number {
  let sum = 0
  for (let place = first; place <= last; place += 1) sum += signal.rpmAt(place)
  return sum / (last - first + 1)
}

/**
 * Whether the track carries in a window: a steady rpm, and clearly more current than the threshold, in three quarters of
 * the samples too.
 */
function isCarrying(signal: LoadSignal, window: Window): boolean {
  const { first, last } = window
  const moved = Math.abs(signal.rpmAt(last) - signal.rpmAt(first))
  if (moved > steadyShare * signal.model.freeRpm) return false
  if (!(sumOf(signal.x, window) > 1.2 * sumOf(signal.threshold, window))) return false
  let above = 0
  for (let place = first; place <= last; place += 1) if (isLoaded(signal, place)) above += 1
  return above >= 0.75 * (last - first + 1)
}

/** Whether a sample's current is above the threshold. */
export function isLoaded(signal: LoadSignal, place: number): boolean {
  return (signal.x[place] ?? NaN) > (signal.threshold[place] ?? NaN)
}

/**
 * Whether the motor turns free in a window: no more current than the threshold, the machine neither driving the motor nor
 * rolling out.
 *
 * @param x the current at each sample, A
 */
export function isFree(signal: LoadSignal, window: Window, x: Float64Array): boolean {
  if (!(sumOf(x, window) <= sumOf(signal.threshold, window))) return false
  const free = meanOf(signal.free, window)
  if (free >= 2 * signal.coarseness && meanOf(x, window) < 0.4 * free) return false
  const { first, last } = window
  const falling = (signal.rpmAt(first) - signal.rpmAt(last)) / (signal.timeAt(last) - signal.timeAt(first))
  return falling < 0.5 * signal.rates.rollingOut(signal.rpmAt(first))
}
