import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { check } from '../../../shared-engine/check.ts'
import { frontLift } from '../../../shared-engine/draw/plots/front-lift.ts'
import { jamForce, jamSpan } from '../../../shared-engine/draw/plots/jam.ts'
import { completeBuild, readStoredBuildText } from '../../../shared-engine/entries/read.ts'
import { jamCurveOf, jamOverSpan } from '../../../shared-engine/explain/jam-curve.ts'
import { liftCurveOf } from '../../../shared-engine/explain/lift-curve.ts'
import { mishapsOf } from '../../../shared-engine/explain/mishaps.ts'
import { withEntry } from '../../../shared-engine/entries/edit.ts'

function demo(id: string) {
  const read = readStoredBuildText(
    readFileSync(new URL(`../../../examples/${id}.build.json`, import.meta.url), 'utf8'),
  )
  if (!read.ok) throw new Error(`${id} is no build`)
  return read.value
}
const stored = demo('quick-sled-puller')
const checked = check(completeBuild(stored))
const look = { system: 'metric', size: { width: 620, height: 260 } } as const

describe('the force of a jam', () => {
  const curve = jamCurveOf(checked)
  if (curve === null) throw new Error('the demo judges a stop')

  test('rises with speed, and is what check says at top speed', () => {
    for (let at = 1; at < curve.pulls.length; at += 1)
      expect(curve.pulls[at]).toBeGreaterThanOrEqual(curve.pulls[at - 1] ?? Infinity)
    const at = curve.speeds.findIndex((speed) => speed >= (curve.top ?? 0))
    const owed = checked.figures.jamForceN ?? NaN
    expect(curve.pulls[at - 1]).toBeLessThanOrEqual(owed)
    expect(curve.pulls[at]).toBeGreaterThanOrEqual(owed)
  })

  test('marks what goes by the speed at which it does, as the sentences say', () => {
    const speeds = curve.breaks.map(({ speed }) => speed)
    expect(speeds).toEqual(speeds.toSorted((one, other) => one - other))
    const jams = mishapsOf(checked).filter(({ kind }) => kind === 'jam')
    expect(jams.length).toBeGreaterThan(0)
    for (const { limit, aboveSpeed } of jams)
      expect(curve.breaks.find((one) => one.limit === limit)?.speed).toBeCloseTo(aboveSpeed ?? NaN, 6)
  })

  test('is harder the nearer the loop is held', () => {
    const span = jamOverSpan(stored, checked)
    if (span === null) throw new Error('the demo judges a stop')
    const pulls = span.pulls.map((pull) => pull ?? NaN)
    for (let at = 1; at < pulls.length; at += 1) expect(pulls[at]).toBeLessThan(pulls[at - 1] ?? 0)
    const nearer = span.spans.findLastIndex((one) => one <= span.today)
    expect(pulls[nearer]).toBeGreaterThanOrEqual(checked.figures.jamForceN ?? NaN)
    expect(jamSpan(span, look).summary).toContain('a near obstacle stops it harder')
  })

  test('is drawn with its words, and where none is judged that is said', () => {
    expect(jamForce(curve, look).summary).toMatch(/^First, /)
    const without = check(completeBuild(withEntry(stored, 'motor.rotorInertiaGcm2', undefined)))
    expect(jamCurveOf(without)).toBeNull()
    expect(jamOverSpan(stored, without)).toBeNull()
    expect(jamForce(null, look).plot).toBeNull()
  })
})

describe('what lifts the front', () => {
  test('grows with throttle, is drawn, and needs a centre of mass', () => {
    const curve = liftCurveOf(completeBuild(stored))
    if (curve === null) throw new Error('the demo has a centre of mass')
    const thrust = curve.thrust.map((value) => value ?? NaN)
    for (let at = 1; at < thrust.length; at += 1)
      expect(thrust[at]).toBeGreaterThanOrEqual((thrust[at - 1] ?? 0) - 1e-9)
    expect(frontLift(curve, look).summary.length).toBeGreaterThan(20)
    const without = completeBuild(withEntry(stored, 'vehicle.cgHeightMm', undefined))
    expect(liftCurveOf(without)).toBeNull()
    expect(frontLift(null, look).plot).toBeNull()
  })
})
