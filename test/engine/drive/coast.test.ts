import { expect, it } from 'vitest'
import type { StoredBuild } from '../../../shared-engine/entries/schema.ts'
import { plainRow } from '../../../shared-engine/drive/rows.ts'
import type { PatternRowPart } from '../../../shared-engine/machine/parts.ts'
import { runDrive } from '../../../shared-engine/drive/run.ts'
import { readBuildOf } from '../../fixtures/build/machine.ts'
import { simpleBuild } from '../../fixtures/build/plain.ts'

// What a drive does while the ground drives the machine: closed forms, worked by hand from the contract's words.

const gravity = 9.80665
/** 500 rpm/V; magnets whose warming is left out. */
const torqueConstant = 60 / (2 * Math.PI * 500)
/** 12 teeth of 20 mm. */
const radius = 0.24 / (2 * Math.PI)

/** Demo data: a big pack, 6 to 1 at 95 %, no air. */
function coaster(changes: Partial<StoredBuild> = {}): StoredBuild {
  const plain = simpleBuild()
  return {
    ...plain,
    pack: { ...plain.pack, capacityMah: 200_000 },
    motor: { ...plain.motor, magnet: 'ignore', viscousPercent: 0 },
    stages: [{ kind: 'fixed', ratio: 6, efficiencyPercent: 95 }],
    ...changes,
  }
}

const runOf = (stored: StoredBuild, ...rows: PatternRowPart[]) =>
  runDrive(readBuildOf(stored), { name: 'demo: downhill', notes: '', rows })

it('held back a little on a slope, the motors save what the gears bring: T = F r η/G, I = T/K + I_0', () => {
  const ground = {
    ...simpleBuild().ground,
    rollingCoefficient: 0.08,
    gripCoefficient: 3,
  } as StoredBuild['ground']
  const run = runOf(coaster({ ground }), plainRow('speed', 0.3, 25, -0.097))
  // 12 kg roll against 9.37 N and are pulled by 11.36 N; coasting would hold 4.74 N: so −1.99 N are asked for
  const slope = Math.atan(0.097)
  const force = 12 * gravity * (0.08 * Math.cos(slope) - Math.sin(slope))
  expect(force).toBeCloseTo(-1.99, 2)
  const amps = (force * radius * 0.95) / (6 * torqueConstant) + 1.5
  const end = run.series.at(-1)
  // 1e-6: steps of 1e-9, and speed is within e^−25 of the one asked for
  expect(Math.abs((end?.speed ?? NaN) / 0.3 - 1)).toBeLessThan(1e-6)
  // 6 digits: the same
  expect(end?.motorAmps).toBeCloseTo(amps, 6)
})

/** On ice, with loops that drag more than it takes. */
function onIce() {
  const { ground, track } = simpleBuild()
  return coaster({
    ground: { ...ground, rollingCoefficient: 0.005, gripCoefficient: 0.02 } as StoredBuild['ground'],
    track: { ...track, internalDragN: 50 },
  })
}

it('on ice a track that drags more than the ground takes slides: (μ + c_rr) g, whatever drags it', () => {
  const spinning = plainRow('throttle', 1, 20)
  const braking = plainRow('throttle', 0, 5)
  const build = onIce()
  const [before, after] = [runOf(build, spinning), runOf(build, spinning, braking)].map(
    (run) => run.series.at(-1)?.speed ?? NaN,
  )
  // 1e-6: steps of 1e-9
  const faster = (0.02 - 0.005) * gravity
  expect(Math.abs((before ?? NaN) / (20 * faster) - 1)).toBeLessThan(1e-6)
  const slower = (0.02 + 0.005) * gravity
  expect(Math.abs(((before ?? NaN) - (after ?? NaN)) / (5 * slower) - 1)).toBeLessThan(1e-6)
})

it('a shut throttle draws nothing, also where the ground takes less than the loops and motors hold back by themselves', () => {
  const build = onIce()
  const spinning = plainRow('throttle', 1, 20)
  for (const shut of [plainRow('throttle', 0, 5), plainRow('brake', 1, 5)]) {
    const [before, after] = [runOf(build, spinning), runOf(build, spinning, shut)]
    const rolling = after.series.filter(({ seconds, speed }) => seconds > 20 && speed > 0)
    expect(rolling.length).toBeGreaterThan(10)
    expect(Math.max(...rolling.map(({ motorAmps }) => Math.abs(motorAmps)))).toBe(0)
    // the same sums over the same steps: nothing was added to them
    expect(after.packJoules).toBe(before.packJoules)
    expect(after.energy.rest.wheelBrake).toBe(0)
    // 1e-8 of all that turned over: errors of the steps
    expect(Math.abs(after.energy.rest.steps)).toBeLessThan(1e-8 * after.packJoules)
  }
})
