import { describe, expect, it } from 'vitest'
import { check } from '../../shared-engine/check.ts'
import { readBuildValue } from '../../shared-engine/entries/read.ts'
import { runFromRest } from '../../shared-engine/vehicle/run-curve.ts'
import { plainBuild } from '../fixtures/build/plain.ts'

// *Source:* J. R. Taylor, *Classical Mechanics* (University Science Books, 2005), section 2.4: a body under a constant
// force and quadratic drag, eqs. 2.57 and 2.58, v = v_t tanh(t g/v_t) and y = (v_t²/g) ln cosh(t g/v_t); section 2.2,
// linear drag, eqs. 2.30 and 2.35, v = v_t (1 − e^(−t/τ)). Equations from memory; g stands for force over mass here.

/** Demo data on level ground where nothing rolls against it. */
function onLevel(vehicle: object, ground: object, service: object = {}) {
  const read = readBuildValue({
    ...plainBuild(),
    vehicle: { ...plainBuild().vehicle, ...vehicle },
    ground: { model: 'coefficient', rollingCoefficient: 0, gripCoefficient: 0.6, ...ground },
    service,
  })
  if (!read.ok) throw new Error(JSON.stringify(read.mistakes))
  return check(read.value)
}

/** 12 kg, and 60 pitches of 20 mm at 0.6 kg/m that turn too: 12.72 kg in all. */
const mass = 12.72

describe('a run with air drag alone, its track spinning all the way', () => {
  // ½ ρ C_d A with ρ = 101325/(287.05287 · 288.15) = 1.225 kg/m³, 1.5 m² and C_d 1: 0.9187 kg/m
  const drag = (0.5 * 1.5 * 101_325) / (287.05287 * 288.15)
  const force = 0.6 * 12 * 9.80665
  const terminal = Math.sqrt(force / drag)
  const checked = onLevel({ frontalAreaM2: 1.5, dragCoefficient: 1 }, {})
  const { figures, evaluation, machine } = checked

  it('ends at √(F/k): 8.77 m/s', () => {
    expect(evaluation.top.spinning).toBe(true)
    expect(terminal).toBeCloseTo(8.77, 2)
    // 1e-9: closed form
    expect(Math.abs((figures.topSpeedMps ?? NaN) / terminal - 1)).toBeLessThan(1e-9)
  })

  it('is at half of it after atanh(½) v_t m/F, at 80 % after atanh(0.8) v_t m/F', () => {
    const unit = (terminal * mass) / force
    // 1e-9: eight Gauss nodes leave 1e-10 up to 80 %
    expect(Math.abs((figures.secondsToHalfTop ?? NaN) / (unit * Math.atanh(0.5)) - 1)).toBeLessThan(1e-9)
    expect(Math.abs((figures.secondsTo80Top ?? NaN) / (unit * Math.atanh(0.8)) - 1)).toBeLessThan(1e-9)
  })

  it('has gone (m/k) ln cosh(atanh 0.8) by then', () => {
    const metres = (mass / drag) * Math.log(Math.cosh(Math.atanh(0.8)))
    // 1e-9: as above
    expect(Math.abs((figures.metresTo80Top ?? NaN) / metres - 1)).toBeLessThan(1e-9)
  })

  it('follows tanh and ln cosh all along', () => {
    const curve = runFromRest(machine)
    expect(curve?.seconds.length).toBe(121)
    for (const [index, seconds] of (curve?.seconds ?? []).entries()) {
      const phase = (seconds * force) / (mass * terminal)
      // 1e-9 of the top speed and of the whole way: 120 pieces of eight nodes
      expect(Math.abs((curve?.speed[index] ?? NaN) - terminal * Math.tanh(phase))).toBeLessThan(
        1e-9 * terminal,
      )
      const metres = (mass / drag) * Math.log(Math.cosh(phase))
      expect(Math.abs((curve?.distance[index] ?? NaN) - metres)).toBeLessThan((1e-9 * mass) / drag)
    }
  })
})

describe('a run against what grows with speed alone', () => {
  // Grip enough, no air: thrust falls on a straight line, F = F_0 (1 − v/v_t).
  const { figures, evaluation } = onLevel({ frontalAreaM2: 0 }, { gripCoefficient: 3 })
  const start = figures.startThrustN ?? NaN
  const terminal = figures.topSpeedMps ?? NaN
  const time = (mass * terminal) / start

  it('takes τ ln 2 to half and τ ln 5 to 80 %, τ = m v_t/F_0', () => {
    expect(start).toBeLessThan(evaluation.footing.gripThrust)
    // 1e-9: eight Gauss nodes leave 1e-10 up to 80 %
    expect(Math.abs((figures.secondsToHalfTop ?? NaN) / (time * Math.log(2)) - 1)).toBeLessThan(1e-9)
    expect(Math.abs((figures.secondsTo80Top ?? NaN) / (time * Math.log(5)) - 1)).toBeLessThan(1e-9)
  })

  it('has gone v_t τ (ln 5 − 0.8) by then', () => {
    const metres = terminal * time * (Math.log(5) - 0.8)
    // 1e-9: as above
    expect(Math.abs((figures.metresTo80Top ?? NaN) / metres - 1)).toBeLessThan(1e-9)
  })
})
