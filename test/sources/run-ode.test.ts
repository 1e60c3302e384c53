import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { machineOf } from '../../shared-engine/machine/machine.ts'
import type { Machine } from '../../shared-engine/machine/parts.ts'
import { completeBuild } from '../../shared-engine/entries/read.ts'
import { evaluate } from '../../shared-engine/cases/evaluate.ts'
import { setTravel } from '../../shared-engine/cases/travel.ts'
import { Evaluation } from '../../shared-engine/cases/evaluation.ts'
import { curveSettingOf } from '../../shared-engine/vehicle/curve-setting.ts'
import { driveStateAtGroundSpeed } from '../../shared-engine/vehicle/curves.ts'
import { runFromRest } from '../../shared-engine/vehicle/run-curve.ts'
import { solvedByOdex } from '../engine/numeric/odex.ts'
import { simpleBuild } from '../fixtures/build/plain.ts'
import { machines } from '../laws/machines.ts'

// The run from rest walked through time instead of integrated over speed. *Source:* Newton's second law, m_e dv/dt =
// F(v) − R(v), solved by odex, a port of Hairer and Wanner's extrapolation code (*Solving Ordinary Differential
// Equations I*); for a constant force against quadratic drag the textbook solution v = v_∞ tanh(t/τ).

function evaluated(machine: Machine): Evaluation {
  const e = new Evaluation()
  evaluate(e, machine)
  setTravel(e, machine)
  return e
}

describe('the run through time', () => {
  it('is at 80 % of the top speed after the seconds and metres of the figures', () => {
    let ran = 0
    fc.assert(
      fc.property(machines, (machine) => {
        const { top, run } = evaluated(machine)
        if (!top.exists) return
        ran += 1
        const setting = curveSettingOf(machine)
        // a step that overshoots is told the thrust at the top, where the curve ends; rest is approached from above
        const slopes = (_time: number, [speed = 0]: readonly number[]) => {
          const at = Math.min(Math.max(speed, 1e-12 * top.groundSpeed), top.groundSpeed)
          const { thrust, resistance } = driveStateAtGroundSpeed(setting, at)
          return [(thrust - resistance) / setting.equivalentMass, speed]
        }
        const [speed = NaN, metres = NaN] = solvedByOdex(slopes, 0, [0, 0], run.secondsTo80, 1e-9)
        // 2e-5: the solver's order is lost where grip or current limit let go, whose kinks it is not told about
        expect(Math.abs(speed / (0.8 * top.groundSpeed) - 1)).toBeLessThan(2e-5)
        expect(Math.abs(metres / run.metresTo80 - 1)).toBeLessThan(2e-5)
      }),
      { numRuns: 60 },
    )
    expect(ran).toBeGreaterThan(10)
  })
})

describe('a constant force against the drag of the air alone', () => {
  // the current limit acts to the end, so that thrust is the same at every speed; 3.2 m² so that drag ends it
  const plain = simpleBuild()
  const machine = machineOf(
    completeBuild({
      ...plain,
      pack: { ...plain.pack, series: 12 },
      controller: { currentLimitAmps: 8 },
      track: { ...plain.track, massGPerM: 1 },
      vehicle: { ...plain.vehicle, frontalAreaM2: 8, dragCoefficient: 1 },
      ground: { model: 'coefficient', rollingCoefficient: 0, gripCoefficient: 2 },
    }),
  )
  const setting = curveSettingOf(machine)
  const { top, run, equivalentMass } = evaluated(machine)
  const drag = setting.airDragFactor
  const force = setting.line.limitedStart
  const terminal = Math.sqrt(force / drag)
  const time = equivalentMass / Math.sqrt(force * drag)

  it('is the case that this machine is made for', () => {
    expect(setting.line.limitedSlope).toBe(0)
    expect(top.beltSpeed).toBeLessThan(setting.line.cornerSpeed)
    expect(top.spinning).toBe(false)
  })

  it('ends at v_∞ = √(F/k)', () => {
    // 1e-12: closed form
    expect(Math.abs(top.groundSpeed / terminal - 1)).toBeLessThan(1e-12)
  })

  it('has v = v_∞ tanh(t/τ), τ = m/√(F k): half after 0.5493 τ, 80 % after 1.0986 τ', () => {
    // 1e-9: Gauss-Legendre on a smooth piece
    expect(Math.abs(run.secondsToHalf / (time * Math.atanh(0.5)) - 1)).toBeLessThan(1e-9)
    expect(Math.abs(run.secondsTo80 / (time * Math.atanh(0.8)) - 1)).toBeLessThan(1e-9)
  })

  it('goes s = (m/2k) ln(F/(F − k v²)): 0.5108 m/k to 80 %', () => {
    expect(Math.abs(run.metresTo80 / ((-equivalentMass / (2 * drag)) * Math.log(1 - 0.64)) - 1)).toBeLessThan(
      1e-9,
    )
  })

  it('and so at every point of its curve', () => {
    const curve = runFromRest(machine, 50)
    expect(curve?.seconds).toHaveLength(50)
    for (const [index, seconds] of (curve?.seconds ?? []).entries()) {
      const speed = curve?.speed[index] ?? NaN
      const metres = curve?.distance[index] ?? NaN
      expect(Math.abs(speed - terminal * Math.tanh(seconds / time))).toBeLessThan(1e-9 * terminal)
      expect(Math.abs(metres - terminal * time * Math.log(Math.cosh(seconds / time)))).toBeLessThan(
        1e-9 * terminal * time,
      )
    }
  })
})
