import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { check } from '../../shared-engine/check.ts'
import { plainRow } from '../../shared-engine/drive/rows.ts'
import { runDrive } from '../../shared-engine/drive/run.ts'
import { readBuildValue } from '../../shared-engine/entries/read.ts'
import type { Build } from '../../shared-engine/entries/schema.ts'
import { machineOf } from '../../shared-engine/machine/machine.ts'
import { evaluationOf } from '../fixtures/build/machine.ts'
import { evenly } from '../fixtures/evenly.ts'
import { builds } from './machines.ts'

// The steady rows of a pattern and the run through time are written apart: where nothing changes they have to agree, on
// random machines as on the golden ones of `test/engine/drive/agreement.test.ts`.

describe('a speed that is reached and held', () => {
  const held = { charge: true, packTemperature: true, electrics: true, flow: true } as const

  /** A build with all that warms; null where the rules refuse it. */
  function equipped(build: Build, liquid: boolean, two: boolean): Build | null {
    const { motor, cooling: _cooling, ...others } = build
    const { thermalResistanceKPerW: _way, heatCapacityJPerK: _heat, ...bare } = motor
    const nodes = {
      windingToCaseKPerW: 0.4,
      caseToSinkKPerW: 0.6,
      windingHeatCapacityJPerK: 60,
      caseHeatCapacityJPerK: 400,
    }
    const read = readBuildValue({
      ...others,
      motor: { ...bare, ...(two ? nodes : { thermalResistanceKPerW: 0.8, heatCapacityJPerK: 300 }) },
      controller: { ...build.controller, thermalResistanceKPerW: 1.2, heatCapacityJPerK: 90 },
      ...(liquid
        ? {
            cooling: { kind: 'liquid', flowLPerMin: 3, coolant: 'glycol30', radiatorWPerK: 12, airWPerK: 30 },
          }
        : {}),
      // All of the charge: the closed form takes it half way to the reserve, the drive begins at its own.
      service: { ...build.service, stateOfChargePercent: 80, reservePercent: 0 },
    })
    return read.ok ? read.value : null
  }

  function withRow(
    build: Build,
    speedKmh: number,
    gradePercent: number,
    stateOfChargePercent: number,
  ): Build {
    const pattern = { rows: [{ seconds: 200, speedKmh, gradePercent }] }
    const read = readBuildValue({ ...build, service: { ...build.service, stateOfChargePercent, pattern } })
    if (!read.ok) throw new Error(JSON.stringify(read.mistakes))
    return read.value
  }

  it('keeps through time the amps, losses and temperatures of its closed form', () => {
    let compared = 0
    fc.assert(
      fc.property(
        builds,
        fc.boolean(),
        fc.boolean(),
        evenly(0.05, 0.5),
        evenly(-0.1, 0.15),
        (drawn, liquid, two, share, grade) => {
          const build = equipped(drawn, liquid, two)
          if (build === null) return
          const top = check(build).figures.topSpeedMps
          if (top === null) return
          const [speed, gradePercent] = [
            Number((share * top).toPrecision(3)),
            Number((100 * grade).toFixed(1)),
          ]
          const { heat, pattern } = evaluationOf(machineOf(withRow(build, 3.6 * speed, gradePercent, 80)))
          const isReached = Math.abs(pattern.speed / speed - 1) < 1e-9
          const [row] = pattern.rows
          const isHeld = (row?.straight.motorAmps ?? NaN) > 0 && heat.end.winding < 250
          if (!isReached || !isHeld || Number.isNaN(heat.end.winding)) return
          compared += 1
          const start = {
            speed,
            winding: heat.end.winding,
            case: heat.end.case,
            controller: heat.controller,
            coolant: heat.feed,
          }
          const rows = [{ ...plainRow('speed', speed, 200), grade: gradePercent / 100 }]
          // Half of 80 %, as the closed form has it.
          const run = runDrive(
            withRow(build, 3.6 * speed, gradePercent, 40),
            { name: 'demo', notes: '', rows },
            { held, start },
          )
          const near = (found: number | null, owed: number) => {
            if (found !== null)
              expect(Math.abs(found - owed)).toBeLessThanOrEqual(1e-6 * Math.max(1, Math.abs(owed)))
          }
          console.log(
            compared,
            run.end,
            run.seconds,
            speed,
            grade,
            [
              run.motorAmpsRms,
              pattern.motorAmpsRms,
              run.packAmpsRms,
              pattern.packAmpsRms,
              run.ironJoules / 200,
              pattern.ironLoss,
              run.speedEnd,
              run.windingEndC,
              heat.end.winding,
              run.caseEndC,
              heat.end.case,
              run.controllerEndC,
              heat.controller,
            ],
            run.backJoules,
            run.spinSeconds,
          )
          // 1e-6: what is owed of a run against a closed form
          near(run.motorAmpsRms, pattern.motorAmpsRms)
          near(run.packAmpsRms, pattern.packAmpsRms)
          near(run.ironJoules / 200, pattern.ironLoss)
          near(run.speedEnd, speed)
          near(run.windingEndC, heat.end.winding)
          near(run.caseEndC, heat.end.case)
          near(run.controllerEndC, heat.controller)
          near(run.coolantEndC, heat.feed)
        },
      ),
      { numRuns: 60, endOnFailure: true },
    )
    expect(compared).toBeGreaterThan(15)
  })
})
