import { expect, it } from 'vitest'
import { rpmToSpeed } from '../../../shared-engine/draw/plots/rpm-to-speed.ts'
import { thrustAgainstSpeed } from '../../../shared-engine/draw/plots/thrust-against-speed.ts'
import type { Scene, Shape } from '../../../shared-engine/draw/scene.ts'
import { speedStates, topState } from '../../drawings/demo-data.ts'

const look = { system: 'metric', size: { width: 620, height: 300 } } as const

const textsIn = (shapes: readonly Shape[]): string[] =>
  shapes.flatMap((shape) =>
    shape.shape === 'text' ? [shape.text] : shape.shape === 'group' ? textsIn(shape.shapes) : [],
  )
const texts = (scene: Scene) => textsIn(scene.shapes).map((text) => text.replaceAll('\u202F', ' '))
const series = (scene: Scene) => scene.plot?.panels.flatMap((panel) => panel.series) ?? []

it('the curves before a change stand behind the present ones, with their own values and top speed', () => {
  const states = speedStates.map((state) => ({ ...state, thrust: 0.8 * state.thrust }))
  const top = topState === null ? null : { ...topState, groundSpeed: 10 }
  const plain = thrustAgainstSpeed({ states: speedStates, top: topState }, look)
  const ghosted = thrustAgainstSpeed(
    { states: speedStates, top: topState, former: { states, top }, loggedSpeed: 5 },
    look,
  )
  const labels = (scene: Scene) => series(scene).map(({ label }) => label)
  expect(labels(ghosted)).toEqual([...labels(plain), 'Resistance before', 'Thrust before'])
  const of = (label: string) => series(ghosted).find((one) => one.label === label)?.ys ?? []
  expect(of('Thrust before').length).toBeGreaterThan(10)
  of('Thrust before').forEach((value, index) =>
    expect(value).toBeCloseTo(0.8 * (of('Thrust')[index] ?? NaN), 9),
  )
  // 10 m/s and 5 m/s: times 3.6 by the definition of km/h.
  expect(texts(ghosted)).toContain('Before 36.0 km/h')
  expect(texts(ghosted)).toContain('Log: 18.00 km/h')
  expect(texts(plain).join()).not.toMatch(/Before|Log/)
})

it('the rpm of a log is a flag on the line, read as what the gearing makes of it', () => {
  const data = {
    speedOfRpm: (rpm: number) => rpm / 1000,
    ratedRpm: 30_000,
    loadedRpm: 20_000,
    freeRpm: 25_000,
  }
  const flagged = rpmToSpeed({ ...data, loggedRpm: 10_000 }, look)
  expect(texts(flagged)).toContain('Log: 10,000 rpm, 36.0 km/h')
  expect(flagged.summary).toContain('A log shows')
  const plain = rpmToSpeed(data, look)
  expect(texts(plain).join()).not.toContain('Log')
})
