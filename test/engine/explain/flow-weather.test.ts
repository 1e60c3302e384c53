import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { check } from '../../../shared-engine/check.ts'
import { flowWeather } from '../../../shared-engine/draw/plots/flow-weather.ts'
import { slopeSketch } from '../../../shared-engine/draw/plots/slope-sketch.ts'
import { sketchedProfileOf } from '../../../shared-engine/drive/profile.ts'
import { plainRow } from '../../../shared-engine/drive/rows.ts'
import { completeBuild, readStoredBuildText } from '../../../shared-engine/entries/read.ts'
import { flowForWeather, flowWords } from '../../../shared-engine/explain/flow-weather.ts'
import { fromEngine } from '../../../shared-engine/units/convert.ts'

function demo(id: string) {
  const read = readStoredBuildText(
    readFileSync(new URL(`../../../examples/${id}.build.json`, import.meta.url), 'utf8'),
  )
  if (!read.ok) throw new Error(`${id} is no build`)
  return completeBuild(read.value)
}
const look = { system: 'metric', size: { width: 620, height: 240 } } as const

describe('the pump and the weather', () => {
  const build = demo('hut-hauler')
  const found = flowForWeather(build)
  if (found === null) throw new Error('the hauler has a circuit')

  test('warmer air never needs less flow, and none is given where the coolant freezes', () => {
    found.air.forEach((celsius, at) => {
      if (celsius <= found.freezes) expect(found.flow[at]).toBeNull()
      const [before, here] = [found.flow[at - 1], found.flow[at]]
      if (typeof before === 'number' && typeof here === 'number')
        expect(here).toBeGreaterThanOrEqual(before * (1 - 1e-9))
    })
    expect(found.flow.some((flow) => flow !== null)).toBe(true)
  })

  test('is enough, and a third of it is not where it is more than a trickle', () => {
    const { cooling } = build
    if (cooling === undefined) throw new Error('the hauler has a circuit')
    found.air.forEach((airTemperatureC, at) => {
      const flow = found.flow[at]
      if (flow === null || flow === undefined) return
      const worst = (flowLPerMin: number) => {
        const ground = { ...build.ground, airTemperatureC }
        const { limits } = check({ ...build, ground, cooling: { ...cooling, flowLPerMin } })
        const kept = /^(motor\.temperature|controller\.temperature|cooling\.(warming|boiling))$/
        return Math.min(...limits.filter(({ id }) => kept.test(id)).map(({ margin }) => margin ?? -1))
      }
      const litres = fromEngine(flow, 'flow')
      expect(worst(litres)).toBeGreaterThanOrEqual(0)
      if (litres > 0.05) expect(worst(litres / 3)).toBeLessThan(0)
    })
  })

  test('is drawn with its sentence; without a circuit there is nothing to say', () => {
    expect(flowWeather(found, look).summary).toMatch(/^At .* this coolant freezes\.$/)
    expect(flowForWeather(demo('quick-sled-puller'))).toBeNull()
  })

  test('is said of the build’s own air, of January and of July', () => {
    const air = [-20, -10, 0, 10, 20, 30, 40]
    const weather = (airToday: number, freezes: number, flow: (number | null)[]) =>
      flowWords({ air, flow, today: 1, freezes, airToday }, (value) => `${value}`)
    expect(weather(10, -16, [null, 1, 2, 3, 4, 5, 6])).toBe(
      'At 10 3 is enough for this drive. At -10 1, at 30 5. Below -16 this coolant freezes.',
    )
    // In winter its own air stands for it; in a heat that no pump meets it is said.
    expect(weather(-8, -16, [null, 1, 2, 3, 4, null, null])).toBe(
      'At -8 2 is enough for this drive. At 30 none of a small pump is. Below -16 this coolant freezes.',
    )
    // Water freezes in January, and has no flow then.
    expect(weather(-5, 0, [null, null, null, 3, 4, 5, 6])).toBe(
      'At -5 this coolant freezes. At 30 5. Below 0 this coolant freezes.',
    )
  })
})

test('slopes are sketched from the rows alone: 100 s at 2 m/s up 10 % are 200 m of way and 19.9 m of height', () => {
  const sketch = sketchedProfileOf([plainRow('speed', 2, 100, 0.1), plainRow('brake', 1, 10, 0.1)], 0, NaN)
  expect(sketch.metres).toEqual([0, 200, 200])
  // Pythagoras: rise over the hypotenuse of 1 and 0.1.
  expect(sketch.heights[1]).toBeCloseTo(200 * Math.sin(Math.atan(0.1)), 9)
  expect(slopeSketch(sketch, look).summary).toContain('200')
})
