import { readFileSync } from 'node:fs'
import { describe, expect, it, test } from 'vitest'
import { check } from '../../../shared-engine/check.ts'
import { runDrive } from '../../../shared-engine/drive/run.ts'
import { plainRow } from '../../../shared-engine/drive/rows.ts'
import { readBuildValue } from '../../../shared-engine/entries/read.ts'
import type { Build, StoredBuild } from '../../../shared-engine/entries/schema.ts'
import { machineOf } from '../../../shared-engine/machine/machine.ts'
import { evaluationOf, readBuildOf } from '../../fixtures/build/machine.ts'
import { plainBuild } from '../../fixtures/build/plain.ts'

// The run through time and the closed forms of the steady rows are written apart: where nothing changes they have to agree.

const held = { charge: true, packTemperature: true, electrics: true, flow: true } as const

/** A golden build with a pattern of one row in place of its own. */
function withRow(number: string, row: object, service: object = {}): Build {
  const file = new URL(`../../golden/2/heat/${number}.build.json`, import.meta.url)
  const stored = JSON.parse(readFileSync(file, 'utf8')) as StoredBuild
  const read = readBuildValue({
    ...stored,
    service: { ...stored.service, ...service, pattern: { rows: [row] } },
  })
  if (!read.ok) throw new Error(JSON.stringify(read.mistakes))
  return read.value
}

describe('one speed row that is reached, charge, cells and the electrics’ temperature held', () => {
  it.each([
    ['01', { seconds: 600, speedKmh: 12, gradePercent: 8 }],
    ['02', { seconds: 600, speedKmh: 3, gradePercent: 0 }],
    ['03', { seconds: 600, speedKmh: 2 }],
    ['06', { seconds: 600, speedKmh: 3, gradePercent: -15 }],
  ])('build %s stays in the state of the closed form', (number, row) => {
    const steady = withRow(number, row)
    const { heat, pattern } = evaluationOf(machineOf(steady))
    const { pack } = machineOf(steady)
    // The closed form takes the charge half way to the reserve; the run begins at its own.
    const middle = { stateOfChargePercent: 50 * (pack.stateOfCharge + pack.reserve), reservePercent: 0 }
    const build = withRow(number, row, middle)
    const speed = row.speedKmh / 3.6
    const start = {
      speed,
      winding: heat.end.winding,
      case: heat.end.case,
      controller: heat.controller,
      coolant: heat.feed,
    }
    const asked = {
      ...plainRow('speed', speed, row.seconds),
      grade: 'gradePercent' in row ? row.gradePercent / 100 : null,
    }
    const run = runDrive(build, { name: 'demo', notes: '', rows: [asked] }, { held, start })
    const near = (found: number, owed: number) =>
      expect(Math.abs(found - owed)).toBeLessThanOrEqual(1e-6 * Math.max(1, Math.abs(owed)))
    near(run.motorAmpsRms, pattern.motorAmpsRms)
    near(run.packAmpsRms, pattern.packAmpsRms)
    near(run.ironJoules / row.seconds, pattern.ironLoss)
    near(run.speedEnd, speed)
    if (run.windingEndC !== null) near(run.windingEndC, heat.end.winding)
    if (run.caseEndC !== null) near(run.caseEndC, heat.end.case)
    if (run.controllerEndC !== null) near(run.controllerEndC, heat.controller)
    if (run.coolantEndC !== null) near(run.coolantEndC, heat.feed)
  })
})

test('full throttle without slip or spin is the run from rest', () => {
  const plain = plainBuild()
  const build = readBuildOf({
    ...plain,
    controller: { currentLimitAmps: 90 },
    stages: [{ kind: 'fixed', ratio: 6, efficiencyPercent: 95 }],
    vehicle: { massKg: 12, frontalAreaM2: 0.1, dragCoefficient: 0.9 },
    ground: { ...plain.ground, model: 'coefficient', rollingCoefficient: 0.08, gripCoefficient: 3 },
  })
  const { secondsTo80Top, metresTo80Top, topSpeedMps } = check(build).figures
  const row = plainRow('throttle', 1, secondsTo80Top ?? NaN)
  const run = runDrive(build, { name: 'demo', notes: '', rows: [row] }, { held })
  // 1e-6: the steps here, the integral there.
  expect(Math.abs(run.metres / (metresTo80Top ?? NaN) - 1)).toBeLessThan(1e-6)
  expect(Math.abs(run.speedEnd / (0.8 * (topSpeedMps ?? NaN)) - 1)).toBeLessThan(1e-6)
  expect(run.spinSeconds).toBe(0)
})
