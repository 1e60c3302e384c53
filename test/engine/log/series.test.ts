import { expect, it } from 'vitest'
import { extremeIn, extremesOf } from '../../../shared-engine/log/extremes.ts'
import type { LogSeries } from '../../../shared-engine/log/series.ts'
import { shownOf } from '../../../shared-engine/log/shown.ts'
import { randomStream } from '../../../shared-engine/numeric/random.ts'

// A long series on a screen: the least and the greatest of each column stay, wherever they stand and however near one looks,
// and a gap stays a gap.

function seriesOf(seconds: ArrayLike<number>, values: ArrayLike<number>, within = 0): LogSeries {
  const [times, all] = [new Float64Array(seconds), new Float64Array(values)]
  const gaps: number[] = []
  all.forEach((value, place) => Number.isNaN(value) && gaps.push(place))
  return {
    id: 'rpm',
    segment: 1,
    seconds: times,
    values: all,
    gaps: new Uint32Array(gaps),
    least: extremesOf(all, -1),
    greatest: extremesOf(all, 1),
    within,
    range: null,
  }
}

it('the pyramid finds the least and the greatest of any stretch, as looking at each value does', () => {
  const random = randomStream(11, 1)
  const values = Float64Array.from({ length: 5_000 }, (_, at) =>
    at % 97 === 0 || (at > 3_000 && at < 3_100) ? NaN : Math.round(1e6 * random()),
  )
  const [least, greatest] = [extremesOf(values, -1), extremesOf(values, 1)]
  for (let turn = 0; turn < 500; turn += 1) {
    const from = Math.floor(random() * 5_000)
    const to = from + Math.floor(random() * (5_001 - from))
    const known = [...values.subarray(from, to)].filter((value) => !Number.isNaN(value))
    const at = (place: number) => (place < 0 ? null : values[place])
    expect(at(extremeIn(values, greatest, 1, from, to))).toBe(known.length === 0 ? null : Math.max(...known))
    expect(at(extremeIn(values, least, -1, from, to))).toBe(known.length === 0 ? null : Math.min(...known))
  }
})

it('a stretch of a million values takes a few dozen looks, wherever it begins and ends', () => {
  // Seconds would say more of the machine than of the pyramid: what is looked at is counted.
  const values = Float64Array.from({ length: 1_000_000 }, (_, at) => (at * 7919) % 10_007)
  const greatest = extremesOf(values, 1)
  let looks = 0
  const counted = new Proxy(values, {
    get: (list, key) => {
      looks += 1
      return Reflect.get(list, key) as unknown
    },
  })
  const random = randomStream(12, 1)
  for (let turn = 0; turn < 200; turn += 1) {
    const from = Math.floor(random() * 1_000_000)
    const to = from + Math.floor(random() * (1_000_001 - from))
    looks = 0
    extremeIn(counted, greatest, 1, from, to)
    // At either end less than a block of 16 on each of the four levels below the last, of 32 at most.
    expect(looks).toBeLessThanOrEqual(2 * 15 * 4 + 32)
  }
})

const rows = 1_000_000
/** A thousand seconds, parted from 400 to 410. */
const million = (() => {
  const seconds = Float64Array.from({ length: rows }, (_, row) => row / 1000)
  const values = Float64Array.from({ length: rows }, (_, row) => (row % 7) - 3)
  values[123_456] = 99
  values[777_777] = -99
  const parted = (list: Float64Array, between: number) => {
    const all = new Float64Array(rows - 9_999 + 1)
    all.set(list.subarray(0, 400_001))
    all[400_001] = between
    all.set(list.subarray(410_000), 400_002)
    return all
  }
  return seriesOf(parted(seconds, 405), parted(values, NaN))
})()

it('a peak of one sample in a million stays and so does a gap, at two points a column; near to, every sample is there', () => {
  const series = million
  const far = shownOf(series, { from: 0, to: 1000 }, 1000)
  expect(far.seconds.length).toBeLessThanOrEqual(2_010)
  expect(far.seconds[far.values.indexOf(99)]).toBeCloseTo(123.456, 9)
  expect(far.seconds[far.values.indexOf(-99)]).toBeCloseTo(777.777, 9)
  expect(far.values.filter((value) => value === null)).toHaveLength(1)
  expect(far.seconds[far.values.indexOf(null)]).toBe(405)
  expect(far.seconds.every((time, at) => at === 0 || time > (far.seconds[at - 1] ?? NaN))).toBe(true)
  const near = shownOf(series, { from: 123.4, to: 123.5 }, 1000)
  expect(near.seconds[near.values.indexOf(99)]).toBeCloseTo(123.456, 9)
  // 100 samples, and one either side so that the line reaches the edges
  expect(near.seconds.length).toBeGreaterThanOrEqual(101)
  expect(near.seconds.length).toBeLessThanOrEqual(103)
  expect(near.seconds[0]).toBeLessThan(123.4)
  expect(near.seconds.at(-1)).toBeGreaterThanOrEqual(123.5)
})

it('moved along by less than a column, the same points are shown', () => {
  const one = shownOf(million, { from: 100, to: 300 }, 640)
  const other = shownOf(million, { from: 100.0625, to: 300.0625 }, 640)
  const inside = ({ seconds }: typeof one) => seconds.filter((time) => time > 101 && time < 299)
  expect(inside(other)).toEqual(inside(one))
})

it('what one step of the reading leaves open is a band: the least and the greatest of each column, not below zero', () => {
  const few = shownOf(seriesOf([0, 1, 2], [1, NaN, 3], 2), { from: 0, to: 2 }, 100)
  expect(few).toEqual({
    seconds: [0, 1, 2],
    values: [1, null, 3],
    band: { seconds: [0, 1, 2], low: [0, null, 1], high: [3, null, 5] },
  })
  const all = Array.from({ length: 100_000 }, (_, at) => at)
  const low = Float64Array.from(all, (at) => (at === 50_003 ? -7 : 4))
  const high = Float64Array.from(all, (at) => (at === 50_007 ? 70 : 6))
  const ranged: LogSeries = {
    ...seriesOf(
      all,
      all.map(() => 5),
    ),
    range: { low, high, least: extremesOf(low, -1), greatest: extremesOf(high, 1) },
  }
  const { band } = shownOf(ranged, { from: 0, to: 99_999 }, 800)
  expect(Math.min(...(band?.low ?? []).map(Number))).toBe(-7)
  expect(Math.max(...(band?.high ?? []).map(Number))).toBe(70)
  expect(band?.seconds.length).toBeLessThanOrEqual(802)
})
