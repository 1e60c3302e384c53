import type { Checked } from '../check.ts'
import { copperTemperatureCoefficient } from '../constants.ts'
import type { WorkingStep, WorkingSymbol } from '../workings/working.ts'
import type { Alarm } from './alarms.ts'

/** K below the limit at which the alarm sounds. *Source:* common practice, no source. */
const before = 10

interface Lump {
  readonly id: string
  readonly label: string
  readonly path: 'motor' | 'controller'
  readonly limit: number | null
  readonly resistance: number | null
  readonly capacity: number | null
  /** W at the alarm's temperature, and how many more with each kelvin. */
  readonly heat: number
  readonly growth: number
}

/** Temperatures of motor and controller, with the seconds of warning that each gives at the run's current. */
export function temperatureAlarms({ machine, evaluation }: Checked): Alarm[] {
  const { motor, controller } = machine
  const { amps, ironLoss, sink } = evaluation.heat
  const copper = amps * amps * motor.resistance
  const alarm = motor.maxTemperature - before
  return [
    heatAlarm(sink, {
      id: 'motor-temperature',
      label: 'Motor temperature',
      path: 'motor',
      limit: motor.maxTemperature,
      resistance: motor.thermalResistance,
      capacity: motor.heatCapacity,
      heat: ironLoss + copper * (1 + copperTemperatureCoefficient * (alarm - 20)),
      growth: copper * copperTemperatureCoefficient,
    }),
    heatAlarm(sink, {
      id: 'controller-temperature',
      label: 'Controller temperature',
      path: 'controller',
      limit: controller.maxTemperature,
      resistance: controller.thermalResistance,
      capacity: controller.heatCapacity,
      heat: amps * amps * controller.resistance,
      growth: 0,
    }),
  ]
}

/**
 * Seconds from the alarm to the limit.
 *
 * C dT/dt = P + g (T − T_a) − (T − T_s)/R_th from T_a: with n = P − (T_a − T_s)/R_th, a = g − 1/R_th:
 * t = (C/a) ln(1 + a d/n); never where n ≤ 0 or 1 + a d/n ≤ 0.
 *
 * *Source:* `docs/model.md` §7, the linear equation solved.
 */
function warningOf({ resistance, capacity, heat, growth }: Lump, rise: number): number | null {
  if (resistance === null || capacity === null) return null
  const net = heat - rise / resistance
  const rate = growth - 1 / resistance
  const share = (rate * before) / net
  if (!(net > 0) || share <= -1) return null
  return rate === 0 ? (capacity * before) / net : (capacity / rate) * Math.log1p(share)
}

function heatAlarm(sink: number, lump: Lump): Alarm {
  const { id, label, path, limit, resistance, capacity, heat, growth } = lump
  const value = limit === null ? null : limit - before
  const warning = value === null ? null : warningOf(lump, value - sink)
  const symbols: WorkingSymbol[] = [
    {
      symbol: 'T_max',
      name: 'hottest allowed',
      value: limit,
      kind: 'temperature',
      from: `${path}.maxTemperatureC`,
    },
    { symbol: 'd', name: 'how far below it the alarm sounds', value: before, kind: 'temperatureDifference' },
  ]
  const steps: WorkingStep[] = [
    { symbol: 'T_a', name: 'alarm', expression: 'T_max - d', value, kind: 'temperature' },
  ]
  if (warning !== null && resistance !== null && capacity !== null && value !== null) {
    symbols.push(
      { symbol: 'T_s', name: 'air, or coolant', value: sink, kind: 'temperature' },
      {
        symbol: 'R_th',
        name: 'thermal resistance',
        value: resistance,
        kind: 'thermalResistance',
        from: `${path}.thermalResistanceKPerW`,
      },
      {
        symbol: 'C',
        name: 'heat capacity',
        value: capacity,
        kind: 'heatCapacity',
        from: `${path}.heatCapacityJPerK`,
      },
      { symbol: 'P', name: 'loss at the alarm’s temperature', value: heat, kind: 'watts' },
      { symbol: 'g', name: 'loss that each kelvin adds', value: growth, kind: 'thermalConductance' },
    )
    steps.push(
      {
        symbol: 'n',
        name: 'heat that stays',
        expression: 'P - (T_a - T_s) / R_th',
        value: heat - (value - sink) / resistance,
        kind: 'watts',
      },
      {
        symbol: 'a',
        name: 'how it grows',
        expression: 'g - 1 / R_th',
        value: growth - 1 / resistance,
        kind: 'thermalConductance',
      },
      {
        symbol: 't',
        name: 'seconds of warning',
        expression: 'C / a * log1p(a * d / n)',
        value: warning,
        kind: 'duration',
      },
    )
  }
  return {
    id,
    label,
    direction: 'alarm when above',
    value,
    kind: 'temperature',
    warningSeconds: warning,
    holdSeconds: 2,
    hysteresis: value === null ? null : 5,
    working: {
      subject: `alarm:${id}`,
      title: `${label} at which the alarm sounds, and how long from there to the limit at the run’s current.`,
      symbols: limit === null ? [] : symbols,
      steps: value === null ? [] : steps,
      state: 'a long run at the given share of the top-speed current',
      source: '`docs/model.md` §7; 10 K, hold time and hysteresis common practice, no source',
      assumptions: ['A sensor on the outside lags behind the winding: the warning is shorter by that.'],
      ...(value === null ? { missing: `it needs ${path}.maxTemperatureC` } : {}),
    },
  }
}
