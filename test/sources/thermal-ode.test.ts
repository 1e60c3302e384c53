import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { secondsToMotorLimit, steadyMotorTemperature } from '../../shared-engine/heat/motor.ts'
import { solvedByOdex } from '../engine/numeric/odex.ts'

// *Source:* the heat balance C dT/dt = P_fe + I² R_20 [1 + α (T − 20)] − (T − T_s)/R_th solved by odex, a port of Hairer
// and Wanner's extrapolation code (*Solving Ordinary Differential Equations I*); α = 0.00393 /K of IEC 60028.

const alpha = 0.00393
const run = fc.record({
  sink: fc.double({ min: -20, max: 50, noNaN: true }),
  thermalResistance: fc.double({ min: 0.05, max: 5, noNaN: true }),
  capacity: fc.double({ min: 20, max: 2000, noNaN: true }),
  ironLoss: fc.double({ min: 0, max: 50, noNaN: true }),
  amps: fc.double({ min: 1, max: 100, noNaN: true }),
  resistance: fc.double({ min: 0.002, max: 0.1, noNaN: true }),
})

describe('a motor that warms up', () => {
  it('is at its limit after the seconds of the closed form', () => {
    let reached = 0
    fc.assert(
      fc.property(run, ({ sink, thermalResistance, capacity, ironLoss, amps, resistance }) => {
        const limit = 120
        const seconds = secondsToMotorLimit(
          sink,
          thermalResistance,
          capacity,
          ironLoss,
          amps,
          resistance,
          limit,
        )
        if (!Number.isFinite(seconds) || seconds > 50 * capacity * thermalResistance) return
        reached += 1
        const slopes = (_time: number, [temperature = NaN]: readonly number[]) => [
          (ironLoss +
            amps * amps * resistance * (1 + alpha * (temperature - 20)) -
            (temperature - sink) / thermalResistance) /
            capacity,
        ]
        const [end = NaN] = solvedByOdex(slopes, 0, [sink], seconds)
        // 1e-5 K: the solver's tolerance of 1e-11, grown over many time constants near a steady temperature
        expect(Math.abs(end - limit)).toBeLessThan(1e-5)
      }),
      { numRuns: 200, seed: 3 },
    )
    expect(reached).toBeGreaterThan(15)
  })

  it('stays at the steady temperature of the closed form', () => {
    const steady = steadyMotorTemperature(20, 0.8, 6, 40, 0.02)
    const made = 6 + 1600 * 0.02 * (1 + alpha * (steady - 20))
    // 1e-9: closed form put back into its balance
    expect(Math.abs(made / ((steady - 20) / 0.8) - 1)).toBeLessThan(1e-9)
  })

  it('runs away where the loss grows faster than the heat leaves', () => {
    // 1 − R_th I² R α = 1 − 2 · 6400 · 0.03 · 0.00393 < 0
    expect(steadyMotorTemperature(20, 2, 0, 80, 0.03)).toBeNaN()
    expect(secondsToMotorLimit(20, 2, 500, 0, 80, 0.03, 120)).toBeGreaterThan(0)
  })
})
