import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { check, type Checked } from '../../../shared-engine/check.ts'
import { powerPath } from '../../../shared-engine/draw/power-path.ts'
import { withEntry } from '../../../shared-engine/entries/edit.ts'
import { completeBuild, readBuildValue } from '../../../shared-engine/entries/read.ts'
import type { StoredBuild } from '../../../shared-engine/entries/schema.ts'
import { limitsOf } from '../../../shared-engine/limits/table.ts'
import { fullBuild } from '../../fixtures/build/plain.ts'
import { wholeBuild } from '../../fixtures/build/whole.ts'

// Every limit has its place in the drawing, and what the limits of version 2 judge is drawn: each thing is taken out of a
// build that has all of them, and the drawing has to miss it, in its lines or in its words.

const look = { width: 1600, system: 'metric' } as const
const sceneOf = ({ machine }: Checked) => powerPath(machine, look)

function checkedOf(stored: StoredBuild): Checked {
  const read = readBuildValue(stored)
  if (!read.ok) throw new Error(JSON.stringify(read.mistakes))
  return check(read.value)
}

/** Names of what a build has a place for: parts of the row, and those told in words at its end. */
function placesOf(checked: Checked): ReadonlySet<string> {
  const scene = sceneOf(checked)
  return new Set([...scene.parts, ...scene.undrawn].map(({ part }) => part))
}

const samples = fc.sample(wholeBuild, { numRuns: 40, seed: 11 }).map((stored) => check(completeBuild(stored)))
const whole = checkedOf(fullBuild())

describe('every limit', () => {
  it('has a part of the drawing to stand at, whatever the build has or lacks', () => {
    const astray = [whole, ...samples].flatMap((checked) => {
      const places = placesOf(checked)
      return limitsOf(checked.machine)
        .filter(({ part }) => !places.has(part))
        .map(({ id, part }) => `${id}: no ${part}`)
    })
    expect([...new Set(astray)]).toEqual([])
  })
})

/** What is drawn, and the entry without which, or with which, it looks otherwise. */
const drawn: readonly (readonly [thing: string, path: string, value: unknown])[] = [
  ['the tensioner, sprung or fixed', 'track.tensioner', 'fixed'],
  ['how the pinion sits on the motor', 'motor.joint', undefined],
  ['how a reduction’s wheel sits on its shaft', 'stages.0.joint', undefined],
  ['how the sprocket sits on its shaft', 'track.shaft.joint', undefined],
  ['the bearings of a reduction’s shaft', 'stages.0.bearing', undefined],
  ['the bearings of the sprocket’s shaft', 'track.shaft.bearing', undefined],
  ['the torque limiter', 'stages.0.slipTorqueNm', undefined],
  ['the height of the hitch', 'vehicle.towHeightMm', 60],
  ['the hitch itself', 'vehicle.towForceN', 0],
  ['the clearance under the belly', 'vehicle.clearanceMm', undefined],
  ['the centre of mass', 'vehicle.cgHeightMm', 120],
  ['the slope', 'ground.gradePercent', 0],
  ['the coolant’s circuit', 'cooling', undefined],
  ['its cap, under pressure or open', 'cooling.capKpa', 0],
  ['the gauge of a wire', 'wires.0.areaMm2', 25],
  ['wires side by side', 'wires.0.parallel', 1],
  ['the pack’s fuse', 'pack.fuseAmps', undefined],
  ['the volts of a supply', 'stepDowns.0.volts', 12],
]

/** The fullest build with a cap, a hitch and a belly that can be seen. */
const fullest = fullBuild()

describe('what the limits judge', () => {
  const before = sceneOf(whole)
  it.each(drawn)('is drawn: %s', (_thing, path, value) => {
    const changed = checkedOf(withEntry(fullest, path, value) as StoredBuild)
    const { shapes, parts } = sceneOf(changed)
    expect(shapes).not.toEqual(before.shapes)
    expect(parts.length).toBeGreaterThan(5)
  })

  it('and an entry that nothing of it shows leaves the drawing as it was', () => {
    const changed = checkedOf(withEntry(fullest, 'service.lifeHours', 900) as StoredBuild)
    expect(sceneOf(changed).shapes).toEqual(before.shapes)
  })
})
