import { expect, it } from 'vitest'
import { plainRow } from '../../../shared-engine/drive/rows.ts'
import { runDrive } from '../../../shared-engine/drive/run.ts'
import type { StoredBuild } from '../../../shared-engine/entries/schema.ts'
import { Footing, setLevelFooting } from '../../../shared-engine/ground/footing.ts'
import { terrains } from '../../../shared-engine/reference/ground.ts'
import type { PatternRowPart } from '../../../shared-engine/machine/parts.ts'
import { machineOfStored, readBuildOf } from '../../fixtures/build/machine.ts'
import { simpleBuild } from '../../fixtures/build/plain.ts'

// How a machine comes to rest and what it draws there: closed forms, worked by hand from the contract's words.

/** Demo data: 6 to 1, a big pack, brakes at the wheels that hold it anywhere. */
function stopper(changes: Partial<StoredBuild> = {}): StoredBuild {
  const plain = simpleBuild()
  return {
    ...plain,
    pack: { ...plain.pack, capacityMah: 100_000 },
    stages: [{ kind: 'fixed', ratio: 6, efficiencyPercent: 95 }],
    vehicle: { ...plain.vehicle, brakeForceN: 20 },
    ...changes,
  }
}

const runOf = (stored: StoredBuild, ...rows: PatternRowPart[]) =>
  runDrive(readBuildOf(stored), { name: 'demo: to rest', notes: '', rows })

it('a speed of 0 that is reached is rest: v = v_0 e^(−t) ends at 1 µm/s, and from there no motor draws', () => {
  const rows = [plainRow('speed', 0.5, 30), plainRow('speed', 0, 60)]
  const { series, chargeDrawn } = runOf(stopper(), ...rows)
  const rest = 30 + Math.log(0.5 / 1e-6)
  const stopping = series.filter(({ seconds }) => seconds > 30)
  const creeping = stopping.filter(({ seconds }) => seconds < rest - 0.01)
  const standing = stopping.filter(({ seconds }) => seconds > rest + 0.01)
  expect(creeping.length).toBeGreaterThan(10)
  expect(standing.length).toBeGreaterThan(10)
  for (const { seconds, speed } of creeping) expect(speed * Math.exp(seconds - 30)).toBeCloseTo(0.5, 4)
  for (const { speed, motorAmps, packAmps } of standing)
    expect([speed, motorAmps, packAmps]).toEqual([0, 0, 0])
  // 1e-6: a longer row takes other steps
  const longer = runOf(stopper(), rows[0] as PatternRowPart, plainRow('speed', 0, 600))
  expect(Math.abs(longer.chargeDrawn / chargeDrawn - 1)).toBeLessThan(1e-6)
})

it('a machine that came to rest holds on a slope with the throttle shut', () => {
  const rows = [plainRow('speed', 0.5, 30), plainRow('speed', 0, 30)]
  const before = runOf(stopper(), ...rows)
  const after = runOf(stopper(), ...rows, plainRow('throttle', 0, 60, -0.5))
  // 6 digits: a longer drive takes other steps
  expect(after.metres).toBeCloseTo(before.metres, 6)
  expect(after.speedEnd).toBe(0)
})

it('in soil a belt that spins the machine to rest draws at most what the grip lets through: I = F_max r/(G η K) + I_0', () => {
  const loam = [...terrains.values()].find(({ soil }) => !(soil.snow ?? false) && soil.cohesionKpa > 1)
  if (loam === undefined) throw new Error('no soil')
  const plain = simpleBuild()
  const stored = stopper({
    motor: { ...plain.motor, magnet: 'ignore', viscousPercent: 0 },
    vehicle: { ...plain.vehicle, contactLengthMm: 500, contactWidthMm: 150 },
    ground: { model: 'soil', soil: loam.soil },
  })
  const footing = new Footing()
  setLevelFooting(footing, machineOfStored(stored))
  const radius = (12 * 0.02) / (2 * Math.PI)
  const most = (footing.gripThrust * radius) / (6 * 0.95 * (60 / (2 * Math.PI * 500))) + 1.5
  // Many, for how near to 0 the last moment of motion comes is chance: there the slip is 1 to the last digit at any speed of
  // the belt.
  for (let tow = 300; tow < 400; tow += 5) {
    const rows = [plainRow('throttle', 1, 3), { ...plainRow('throttle', 1, 5), tow }]
    const { peaks, series } = runOf(stored, ...rows)
    expect(Math.max(...series.map(({ speed }) => speed))).toBeGreaterThan(1)
    const end = series.at(-1)
    expect(end?.speed).toBe(0)
    expect(end?.motorRpm).toBeGreaterThan(1000)
    // 1e-9: the root's rounding
    expect(peaks.motorAmps?.value).toBeLessThanOrEqual(most * (1 + 1e-9))
  }
})
