import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { check } from '../../../shared-engine/check.ts'
import { flowWeather } from '../../../shared-engine/draw/plots/flow-weather.ts'
import { slopeSketch } from '../../../shared-engine/draw/plots/slope-sketch.ts'
import { sketchedProfileOf } from '../../../shared-engine/drive/profile.ts'
import { plainRow } from '../../../shared-engine/drive/rows.ts'
import { completeBuild, readStoredBuildText } from '../../../shared-engine/entries/read.ts'
import { flowForWeather } from '../../../shared-engine/explain/flow-weather.ts'
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
})

test('slopes are sketched from the rows alone: 100 s at 2 m/s up 10 % are 200 m of way and 19.9 m of height', () => {
  const sketch = sketchedProfileOf([plainRow('speed', 2, 100, 0.1), plainRow('brake', 1, 10, 0.1)], 0, NaN)
  expect(sketch.metres).toEqual([0, 200, 200])
  // Pythagoras: rise over the hypotenuse of 1 and 0.1.
  expect(sketch.heights[1]).toBeCloseTo(200 * Math.sin(Math.atan(0.1)), 9)
  expect(slopeSketch(sketch, look).summary).toContain('200')
})
