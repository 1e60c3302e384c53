import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { evaluate } from '../../shared-engine/cases/evaluate.ts'
import { Evaluation } from '../../shared-engine/cases/evaluation.ts'
import type { CoolingPart, Machine, PatternRowPart } from '../../shared-engine/machine/parts.ts'
import { check } from '../../shared-engine/check.ts'
import { readBuildValue } from '../../shared-engine/entries/read.ts'
import { motorAmpsFromPack } from '../../shared-engine/motor/amps-from-pack.ts'
import { curveSettingOf } from '../../shared-engine/vehicle/curve-setting.ts'
import { driveStateAt } from '../../shared-engine/vehicle/drive-state.ts'
import { coldCapacityShare } from '../../shared-engine/reference/heat.ts'
import { builds, machines } from './machines.ts'
import { evenly } from '../fixtures/evenly.ts'

// Directions that physics gives, whatever the machine: each is checked on random ones, a little of one entry more.

function evaluated(machine: Machine): Evaluation {
  const e = new Evaluation()
  evaluate(e, machine)
  return e
}

const more = evenly(1.01, 3)
const circuit: fc.Arbitrary<CoolingPart> = fc
  .record({
    flow: evenly(2e-6, 1e-4),
    radiator: evenly(0.5, 60),
    airCapacity: fc.oneof(fc.constant(null), evenly(1, 200)),
  })
  .map((one) => ({
    ...one,
    density: 1043,
    specificHeat: 3660,
    coolant: 'glycol30',
    freezes: -15.7,
    boilingRise: 4,
    volume: 2e-4,
    testFlow: null,
    flowTestTemperature: 20,
    pumpPower: 0,
    capPressure: 0,
  }))

/** Two nodes, a controller, in a circuit; capacities or not. */
const cooled = fc.tuple(machines, circuit, fc.boolean()).map(([machine, cooling, steady]): Machine => ({
  ...machine,
  cooling,
  motor: {
    ...machine.motor,
    windingToCase: 0.4,
    caseToSink: 0.6,
    windingHeatCapacity: steady ? null : 60,
    caseHeatCapacity: steady ? null : 400,
  },
  controller: { ...machine.controller, thermalResistance: 1.2, heatCapacity: steady ? null : 90 },
}))

/** Rounding of temperatures that are differences of larger ones. */
const rounding = 1e-7

function expectNoHotter(one: number, other: number): void {
  if (Number.isNaN(one) || Number.isNaN(other)) return
  expect(other).toBeLessThanOrEqual(one + rounding * (1 + Math.abs(one)))
}

describe('a circuit', () => {
  const changed = (machine: Machine, part: Partial<CoolingPart>): Machine => ({
    ...machine,
    cooling: machine.cooling === null ? null : { ...machine.cooling, ...part },
  })
  const ways: readonly (readonly [string, (cooling: CoolingPart, times: number) => Partial<CoolingPart>])[] =
    [
      ['flow', ({ flow }, times) => ({ flow: flow * times })],
      ['radiator', ({ radiator }, times) => ({ radiator: radiator * times })],
      [
        'radiator air',
        ({ airCapacity }, times) => ({ airCapacity: airCapacity === null ? null : airCapacity * times }),
      ],
    ]
  it.each(ways)('with more %s has no hotter coolant or controller', (_name, by) => {
    let compared = 0
    fc.assert(
      fc.property(cooled, more, (machine, times) => {
        if (machine.cooling === null) return
        const [one, other] = [evaluated(machine), evaluated(changed(machine, by(machine.cooling, times)))]
        if (!one.heat.runaway) compared += 1
        expectNoHotter(one.heat.hot, other.heat.hot)
        expectNoHotter(one.heat.controller, other.heat.controller)
        // Once it does not run away, more cooling does not make it.
        if (!one.heat.runaway) expect(other.heat.runaway).toBe(false)
      }),
      { numRuns: 60 },
    )
    expect(compared).toBeGreaterThan(20)
  })

  it.each(ways)(
    'with more %s has no hotter motor, steady and without loss in the controller',
    (_name, by) => {
      const still = cooled.map((machine): Machine => ({
        ...machine,
        motor: { ...machine.motor, windingHeatCapacity: null },
        controller: { ...machine.controller, resistance: 0, switchingTime: null },
      }))
      fc.assert(
        fc.property(still, more, (machine, times) => {
          if (machine.cooling === null) return
          const [one, other] = [evaluated(machine), evaluated(changed(machine, by(machine.cooling, times)))]
          expectNoHotter(one.heat.end.hottest, other.heat.end.hottest)
        }),
        { numRuns: 60 },
      )
    },
  )
})

describe('a motor', () => {
  it('behind more resistance to its sink is no cooler', () => {
    fc.assert(
      fc.property(cooled, more, (machine, times) => {
        const { motor } = machine
        const worse = { ...motor, caseToSink: (motor.caseToSink ?? 0) * times }
        expectNoHotter(
          evaluated({ ...machine, motor: worse }).heat.end.hottest,
          evaluated(machine).heat.end.hottest,
        )
      }),
      { numRuns: 60 },
    )
  })

  it('in warmer air, its drag the same, is no cooler', () => {
    fc.assert(
      fc.property(cooled, evenly(1, 30), (machine, by) => {
        const warmer = { ...machine.ground, airTemperature: machine.ground.airTemperature + by }
        const [one, other] = [evaluated(machine), evaluated({ ...machine, ground: warmer })]
        expectNoHotter(other.heat.end.hottest, one.heat.end.hottest)
        expectNoHotter(other.heat.controller, one.heat.controller)
      }),
      { numRuns: 60 },
    )
  })
})

/** A level or climbing row at a speed that the machine reaches with ease. */
const row = (speed: number, grade: number): PatternRowPart => ({
  seconds: 60,
  kind: 'speed',
  value: speed,
  grade,
  load: null,
  tow: null,
  resistanceShare: 1,
  gripShare: 1,
  turnShare: 0,
})

describe('a harder way', () => {
  const driven = (machine: Machine, speed: number, grade: number, tow: number, mass: number): Machine => ({
    ...machine,
    vehicle: { ...machine.vehicle, mass, towForce: tow },
    service: {
      ...machine.service,
      pattern: { name: null, rows: [row(speed, grade), row(0.6 * speed, grade)] },
    },
  })
  it('at speeds that are reached: more tow, grade or, not on soil, mass takes no less current, no more time, no cooler winding', () => {
    let compared = 0
    fc.assert(
      fc.property(
        cooled,
        fc.constantFrom('tow', 'grade', 'mass'),
        evenly(0, 0.2),
        more,
        (machine, what, grade, times) => {
          if (what === 'mass' && machine.ground.model === 'soil') return
          const { top } = evaluated(machine)
          if (!top.exists) return
          const speed = 0.3 * top.groundSpeed
          const { mass, towForce } = machine.vehicle
          const easy = driven(machine, speed, grade, towForce, mass)
          const hard = {
            tow: driven(machine, speed, grade, towForce + (times - 1) * 0.02 * mass * 9.8, mass),
            grade: driven(machine, speed, grade + (times - 1) * 0.02, towForce, mass),
            mass: driven(machine, speed, grade, towForce, mass * (1 + (times - 1) * 0.02)),
          }[what]
          const [one, other] = [evaluated(easy).pattern, evaluated(hard).pattern]
          const reached = (of: typeof one) => Math.abs(of.speed / (0.8 * speed) - 1) < 1e-9
          if (!reached(one) || !reached(other)) return
          compared += 1
          expect(other.motorAmpsRms).toBeGreaterThanOrEqual(one.motorAmpsRms * (1 - 1e-9))
          if (!Number.isNaN(other.life)) expect(other.life).toBeLessThanOrEqual(one.life * (1 + 1e-9))
          expectNoHotter(evaluated(hard).heat.end.winding, evaluated(easy).heat.end.winding)
        },
      ),
      { numRuns: 150 },
    )
    expect(compared).toBeGreaterThan(20)
  })
})

describe('grip', () => {
  // Not of the pack: under a current limit a track that spins more slowly, at more grip, draws less from it.
  it('more of it lets no smaller burst of the motor happen', () => {
    fc.assert(
      fc.property(machines, more, (machine, times) => {
        const { ground } = machine
        if (ground.model !== 'coefficient') return
        const better = { ...ground, gripCoefficient: ground.gripCoefficient * times }
        const [one, other] = [evaluated(machine).bursts, evaluated({ ...machine, ground: better }).bursts]
        expect(other.motorAmps).toBeGreaterThanOrEqual(one.motorAmps * (1 - 1e-9))
      }),
      { numRuns: 150 },
    )
  })
})

describe('the capacitors of a controller', () => {
  it('of more capacitance or less resistance have no more ripple, and no less in hand', () => {
    let compared = 0
    fc.assert(
      fc.property(
        builds,
        evenly(100, 5000),
        evenly(0, 50),
        more,
        fc.boolean(),
        (build, size, esr, times, ohms) => {
          const buffered = (busCapacitanceMicrofarad: number, busEsrMilliohm: number) =>
            check({
              ...build,
              controller: {
                ...build.controller,
                pwmKhz: 16,
                busRatedVolts: 63,
                busRippleAmps: 20,
                busCapacitanceMicrofarad,
                busEsrMilliohm,
              },
            })
          const one = buffered(size, esr)
          const other = ohms ? buffered(size, esr / times) : buffered(size * times, esr)
          const [ripple, less] = [one.figures.busRippleVolts, other.figures.busRippleVolts]
          if (ripple === null || less === null) return
          compared += 1
          expect(less).toBeLessThanOrEqual(ripple * (1 + 1e-12))
          expect(other.figures.rippleAmps).toBe(one.figures.rippleAmps)
          const margin = ({ limits }: typeof one) =>
            limits.find(({ id }) => id === 'controller.over-volts')?.margin ?? NaN
          expect(margin(other)).toBeGreaterThanOrEqual(margin(one) - 1e-12)
        },
      ),
      { numRuns: 60 },
    )
    expect(compared).toBeGreaterThan(30)
  })
})

describe('a pack', () => {
  it('that is colder gives no more charge', () => {
    for (let celsius = -30; celsius < 40; celsius += 1) {
      expect(coldCapacityShare(celsius)).toBeLessThanOrEqual(coldCapacityShare(celsius + 1))
    }
  })

  it('and takes no more of it', () => {
    let compared = 0
    fc.assert(
      fc.property(builds, evenly(-30, 30), evenly(1, 20), (build, celsius, colder) => {
        const at = (packTemperatureC: number) => {
          const read = readBuildValue({ ...build, service: { ...build.service, packTemperatureC } })
          return read.ok ? check(read.value) : null
        }
        const [warm, cold] = [at(celsius), at(celsius - colder)]
        if (warm === null || cold === null) return
        compared += 1
        expect(cold.figures.packUsableMah ?? NaN).toBeLessThanOrEqual(
          (warm.figures.packUsableMah ?? NaN) * (1 + 1e-12),
        )
      }),
      { numRuns: 60 },
    )
    expect(compared).toBeGreaterThan(30)
  })
})

describe('amps of a motor out of those of its pack', () => {
  it('are those that made them, at any duty that gives them', () => {
    let compared = 0
    fc.assert(
      fc.property(machines, evenly(0.05, 1), evenly(0, 0.95), (machine, throttle, share) => {
        const setting = curveSettingOf(machine, throttle)
        const state = driveStateAt(setting, (share * setting.line.openStart) / setting.line.openSlope)
        // Forwards: a track that drags more than the motors push has no such speed.
        if (!(state.motorAmps > 1e-3 && state.motorSpeed >= 0)) return
        compared += 1
        const { drive } = setting
        const power = (state.packVolts * state.packDriveAmps) / drive.count
        const back = state.motorSpeed * drive.torqueConstant
        const found = motorAmpsFromPack(power, back, drive.seriesResistance)
        // 1e-9: a closed form put back into its balance
        expect(Math.abs(found / state.motorAmps - 1)).toBeLessThan(1e-9)
      }),
      { numRuns: 150 },
    )
    expect(compared).toBeGreaterThan(60)
  })
})

describe('the rows of a pattern', () => {
  it('keep the energy: what the pack gives is what resistance, drag and losses take', () => {
    fc.assert(
      fc.property(machines, (machine) => {
        const { pattern } = evaluated(machine)
        const { drive, openVolts, accessoryAmps } = pattern.motion
        for (const { straight } of pattern.rows.slice(0, pattern.count)) {
          const { packAmps, packVolts, motorAmps, motorSpeed, motorTorque, ironLoss } = straight
          if (Number.isNaN(packAmps) || straight.duty >= machine.controller.throttleCap) continue
          const taken =
            packAmps * packAmps * drive.packResistance +
            packVolts * accessoryAmps +
            drive.count *
              (motorAmps * motorAmps * drive.seriesResistance + ironLoss + motorTorque * motorSpeed)
          const scale = openVolts * Math.abs(packAmps) + drive.count * Math.abs(motorTorque * motorSpeed)
          expect(Math.abs(openVolts * packAmps - taken)).toBeLessThan(1e-9 * scale + 1e-12)
        }
      }),
      { numRuns: 150 },
    )
  })
})
