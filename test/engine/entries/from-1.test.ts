import { describe, expect, it } from 'vitest'
import type { JsonGroup } from '../../../shared-engine/entries/json-group.ts'
import { fromVersion1 } from '../../../shared-engine/entries/migrations/from-1.ts'
import { readBuildValue, readStoredBuildValue } from '../../../shared-engine/entries/read.ts'

/** Demo data: the least that a build of version 1 held. */
const first: JsonGroup = {
  format: 'pitchline-build',
  version: 1,
  name: 'demo',
  pack: { chemistry: 'lipo', series: 6, capacityMah: 5000, cellResistanceMilliohm: 2 },
  motor: {
    kvRpmPerVolt: 500,
    resistanceMilliohm: 25,
    noLoadAmps: 1.5,
    noLoadVolts: 22.2,
    poleCount: 14,
    ratedMaxRpm: 15_000,
  },
  stages: [
    { kind: 'fixed', ratio: 4 },
    { kind: 'fixed', ratio: 2, efficiencyPercent: 80 },
  ],
  track: { pitchMm: 20, sprocketTeeth: 12, loopPitches: 60, massGPerM: 600 },
  vehicle: { massKg: 12 },
  ground: { model: 'coefficient', rollingCoefficient: 0.08, gripCoefficient: 0.6, airTemperatureC: -20 },
}

const grouped = (key: string, more: JsonGroup) => ({
  ...first,
  [key]: { ...(first[key] as JsonGroup), ...more },
})

describe('a build of version 1', () => {
  it('keeps what its defaults meant: they are written down where version 2 has others', () => {
    const read = readBuildValue(first)
    if (!read.ok) throw new Error(JSON.stringify(read.mistakes))
    const { motor, stages, track, service } = read.value
    expect([motor.viscousPercent, motor.maxTemperatureC]).toEqual([0, 120])
    expect([track.sharePercent, track.knockdownPercent]).toEqual([50, 100])
    expect(stages.map(({ efficiencyPercent }) => efficiencyPercent)).toEqual([97, 80])
    expect(service.packTemperatureC).toBe(20)
  })

  it('keeps what was entered', () => {
    const entered = grouped('motor', { viscousPercent: 30, maxTemperatureC: 90 })
    expect(fromVersion1(entered).build['motor']).toMatchObject({ viscousPercent: 30, maxTemperatureC: 90 })
    const service = { packTemperatureC: 5, factor: 2 }
    expect(fromVersion1({ ...first, service }).build['service']).toEqual(service)
  })

  it('loses a static tension of 0, which meant unknown, with its origin and tolerance; another one stays', () => {
    const evidence = {
      origins: { 'track.pretensionN': 'guessed', 'vehicle.massKg': 'measured' },
      tolerances: { 'track.pretensionN': { plusMinus: 5, shape: 'uniform' } },
    }
    const read = readStoredBuildValue({ ...grouped('track', { pretensionN: 0 }), ...evidence })
    if (!read.ok) throw new Error(JSON.stringify(read.mistakes))
    expect(read.value.track.pretensionN).toBeUndefined()
    expect(read.value.origins).toEqual({ 'vehicle.massKg': 'measured' })
    expect(read.value.tolerances).toEqual({})
    const tensioned = fromVersion1({ ...grouped('track', { pretensionN: 40 }), ...evidence }).build
    expect(tensioned).toMatchObject({ track: { pretensionN: 40 }, ...evidence })
  })

  it('loses the load over a run with its origin, and says so', () => {
    const service = { loadPercent: 70 }
    const read = readStoredBuildValue({ ...first, service, origins: { 'service.loadPercent': 'measured' } })
    if (!read.ok) throw new Error(JSON.stringify(read.mistakes))
    expect(read.value.service).toEqual({ packTemperatureC: 20 })
    expect(read.value.origins).toEqual({})
    expect(read.notes).toHaveLength(2)
    expect(read.notes?.[0]).toMatch(/tensioner counts as fixed/)
    expect(read.notes?.[1]).toMatch(/service\.loadPercent is dropped/)
  })

  it('is not refused for that load where it says version 2 already', () => {
    const read = readStoredBuildValue({
      ...first,
      version: 2,
      service: { loadPercent: 70, packTemperatureC: 5 },
      tolerances: { 'service.loadPercent': { plusMinus: 5, shape: 'uniform' } },
    })
    if (!read.ok) throw new Error(JSON.stringify(read.mistakes))
    expect(read.value.service).toEqual({ packTemperatureC: 5 })
    expect(read.value.tolerances).toEqual({})
    expect(read.notes).toEqual([expect.stringMatching(/service\.loadPercent is left out/)])
  })

  it('is left alone where it is no group, for the check to name', () => {
    for (const wrong of [null, 5, 'x', []]) {
      const read = readStoredBuildValue({ ...first, motor: wrong, stages: wrong, service: wrong })
      expect(read.ok ? [] : read.mistakes.map(({ path }) => path)).toEqual(
        expect.arrayContaining(['motor', 'service']),
      )
    }
  })

  it('does not change the value that it was given', () => {
    const before = JSON.stringify(first)
    fromVersion1(first)
    expect(JSON.stringify(first)).toBe(before)
  })
})
