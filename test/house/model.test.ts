import { readFileSync, readdirSync, writeFileSync } from 'node:fs'
import { expect, it } from 'vitest'
import { readBuild } from '../../shared-engine/entries/read.ts'
import { check } from '../../shared-engine/check.ts'
import { modelVersion } from '../../shared-engine/constants.ts'

// The number that About shows is only worth something if it moves with the figures. The demos' figures and margins lie
// beside this test as they were when the number was last raised. Where they differ on purpose: raise `modelVersion`, then
// `PITCHLINE_MODEL=renew npx vitest run test/house/model.test.ts`. The builds and their figures are invented: demo.

interface Model {
  readonly version: number
  readonly figures: Readonly<Record<string, Readonly<Record<string, number | null>>>>
}

const file = 'test/house/model.json'

/** 0.1 %: what the docstring of `modelVersion` calls no change; better numerics stay below. */
const same = 1e-3

function now(): Model {
  const names = readdirSync('examples').filter((name) => name.endsWith('.build.json'))
  const figures = names.map((name) => {
    const read = readBuild(readFileSync(`examples/${name}`))
    if (!read.ok) throw new Error(`${name} is no build`)
    const checked = check(read.value)
    const margins = checked.limits.map(({ id, margin }) => [id, margin] as const)
    const rounded = [...Object.entries(checked.figures), ...margins].map(
      ([key, value]) => [key, value === null ? null : Number(value.toPrecision(6))] as const,
    )
    return [name, Object.fromEntries(rounded)] as const
  })
  return { version: modelVersion, figures: Object.fromEntries(figures) }
}

if (process.env['PITCHLINE_MODEL'] === 'renew') writeFileSync(file, `${JSON.stringify(now(), null, 2)}\n`)

it('the model’s number stands for these figures of the demos', () => {
  const before = JSON.parse(readFileSync(file, 'utf8')) as Model
  const { version, figures } = now()
  expect(version, 'modelVersion, and the figures that it was raised with').toBe(before.version)
  expect(Object.keys(figures)).toEqual(Object.keys(before.figures))
  const moved = Object.entries(before.figures).flatMap(([build, old]) =>
    Object.entries(old).flatMap(([key, was]) => {
      const is = figures[build]?.[key]
      const near =
        is === was || (typeof is === 'number' && was !== null && Math.abs(is - was) <= same * Math.abs(was))
      return near ? [] : [`${build}: ${key} was ${was}, is ${is}`]
    }),
  )
  expect(moved).toEqual([])
})
