import { describe, expect, it } from 'vitest'
import { partFigures } from '../../../shared-engine/draw/part-figures.ts'
import { powerPath } from '../../../shared-engine/draw/power-path.ts'
import { drawnMachines } from '../../drawings/machines.ts'

const state = {
  duty: 0.5,
  motorSpeed: 1000,
  motorAmps: 40,
  motorTorque: 2,
  packAmps: 20,
  packVolts: 44,
  beltSpeed: 8,
  groundSpeed: 7.5,
  motorThrust: 300,
  thrust: 280,
  slip: 0.06,
}

describe('live figures of the power path', () => {
  it('has two for every part drawn, one for the vehicle, none for supplies, which hang in the wiring', () => {
    for (const { machine } of Object.values(drawnMachines)) {
      const figures = partFigures(machine, state, 'metric')
      for (const { part } of powerPath(machine, { width: 1280, system: 'metric' }).parts) {
        expect(figures[part]?.length, part).toBe(part === 'vehicle' ? 1 : part === 'stepDowns' ? 0 : 2)
      }
    }
  })

  it('carries power from shaft to shaft, less what the stages lose', () => {
    // T ω after all stages = T ω of the motor × Π η: by hand, from the figures as shown (1 %: three figures).
    const { machine } = drawnMachines.quick
    const figures = partFigures(machine, state, 'metric')
    const [rpm, torque] = figures['stage.2'] ?? []
    const power = (Number(rpm?.text.replace(',', '')) / 60) * 2 * Math.PI * Number(torque?.text)
    expect(Math.abs(power / (1000 * 2 * machine.train.efficiency) - 1)).toBeLessThan(0.01)
  })
})

describe('wires', () => {
  it('drop what Ohm says and give off what Joule says', () => {
    // 16 mm² and 1.2 m there and back: 0.017241 · 1.2/16 Ω = 1.293 mΩ; 20 A of the pack: 25.9 mV. Leads of 10 mm², 0.8 m:
    // 1.379 mΩ; 40 A: 2.207 W, and 0.517 W of the pack's.
    const figures = partFigures(drawnMachines.fitted.machine, state, 'metric')
    const [volts, watts] = figures['wires'] ?? []
    expect(Number(volts?.text) * (volts?.unit === 'mV' ? 1e-3 : 1)).toBeCloseTo(0.02586, 4)
    expect(Number(watts?.text)).toBeCloseTo(2.724, 2)
  })
})

describe('power path', () => {
  it.each(Object.keys(drawnMachines) as (keyof typeof drawnMachines)[])(
    'of %s fits its width, parts in order, none on another',
    (name) => {
      const { machine } = drawnMachines[name]
      for (const width of [1024, 1280, 1920, 3840]) {
        const { parts } = powerPath(machine, { width, system: 'metric' })
        const row = parts.filter(({ part }) => part !== 'vehicle' && part !== 'stepDowns')
        row.forEach(({ box, part }, index) => {
          const before = row[index - 1]
          if (before) expect(box.x, part).toBeGreaterThanOrEqual(before.box.x + before.box.width - 0.01)
          expect(box.x + box.width, `${part} at ${width}`).toBeLessThanOrEqual(width)
          // WCAG 2.2, 2.5.8: targets of at least 24 px.
          expect(Math.min(box.width, box.height)).toBeGreaterThanOrEqual(24)
        })
      }
    },
  )

  it('turns meshing wheels in true ratio, against each other, and the sprocket so that it rolls to the right', () => {
    const { machine } = drawnMachines.quick
    const { wheels } = powerPath(machine, { width: 1280, system: 'metric' })
    const turns = (id: string): number => wheels.find((wheel) => wheel.id === id)?.turnsPerMotorTurn ?? NaN
    expect(turns('stage.1.driver') / turns('stage.1.driven')).toBeCloseTo(-31 / 9, 12)
    expect(turns('stage.2.driver')).toBe(turns('stage.1.driven'))
    expect(turns('stage.2.driver') / turns('stage.2.driven')).toBeCloseTo(36 / 22, 12)
    expect(turns('track.sprocket')).toBeCloseTo(turns('stage.2.driven'), 12)
    expect(turns('track.sprocket')).toBeGreaterThan(0)
  })

  it('moves belt and wheel at one speed', () => {
    const { machine } = drawnMachines.quick
    const { wheels, loops } = powerPath(machine, { width: 1280, system: 'metric' })
    for (const loop of loops) {
      const id = loop.id === 'track.loop' ? 'track.sprocket' : loop.id.replace('.belt', '.driver')
      const teeth = loop.id === 'track.loop' ? machine.track.sprocketTeeth : 22
      const wheel = wheels.find((one) => one.id === id)
      expect(loop.pitchesPerMotorTurn).toBeCloseTo((wheel?.turnsPerMotorTurn ?? NaN) * teeth, 12)
    }
    expect(loops.map((loop) => loop.count)).toContain(machine.track.loopPitches)
  })
})
