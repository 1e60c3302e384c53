import type { Checked } from '../check.ts'
import type { TimeToLimit } from '../cases/heat-times.ts'
import { controllerLossAt } from '../motor/controller-loss.ts'
import { windingResistanceAt } from '../motor/constants.ts'
import type { QuantityKind } from '../units/kinds.ts'
import type { WorkingStep, WorkingSymbol } from '../workings/working.ts'
import type { Alarm } from './alarms.ts'

/** Share of the case's rise over the air at which it sounds. *Source:* `docs/model.md` §12, assumption. */
const riseShare = 0.9
/** K below the controller's limit that leave seconds before it. *Source:* assumption. */
const belowLimit = 10
/** K below boiling at which it sounds. *Source:* `docs/model.md` §12, assumption. */
const belowBoiling = 10
const common = 'hold time and hysteresis common practice, no source'

/** Temperatures of case, controller and coolant, and how long a burst may last. */
export function temperatureAlarms(checked: Checked): Alarm[] {
  return [caseAlarm(checked), controllerAlarm(checked), coolantAlarm(checked), burstAlarm(checked)]
}

interface Row {
  readonly id: string
  readonly label: string
  readonly title: string
  readonly value: number | null
  readonly kind: QuantityKind
  readonly symbols: readonly WorkingSymbol[]
  readonly expression: string
  readonly missing: string
  readonly hysteresis: number | null
  readonly assumptions?: readonly string[]
}

function alarmOf({ id, label, title, value, kind, symbols, expression, missing, ...rest }: Row): Alarm {
  const step: WorkingStep = { symbol: 'T_a', name: 'alarm', expression, value, kind }
  return {
    id,
    label,
    direction: 'alarm when above',
    value,
    kind,
    warningSeconds: null,
    holdSeconds: kind === 'duration' ? 0 : 2,
    hysteresis: value === null ? null : rest.hysteresis,
    working: {
      subject: `alarm:${id}`,
      title,
      symbols: value === null ? [] : symbols,
      steps: value === null ? [] : [step],
      state: 'the drive pattern, repeated until every round is like the one before',
      source: `\`docs/model.md\` §§7 and 12; ${common}`,
      assumptions: rest.assumptions ?? [],
      ...(value === null ? { missing } : {}),
    },
  }
}

/** The case's sensor: it lags behind the winding, and a burst from cold may never warm it that far. */
function caseAlarm({ machine, evaluation, figures }: Checked): Alarm {
  const air = machine.ground.airTemperature
  const atLimit = figures.caseAtLimitC
  const value = atLimit === null ? null : air + riseShare * (atLimit - air)
  const alarm = alarmOf({
    id: 'case',
    label: 'Motor case temperature',
    title: 'The case’s temperature at 90 % of its rise when the motor is at its limit.',
    value,
    kind: 'temperature',
    symbols: [
      { symbol: 'T_air', name: 'air', value: air, kind: 'temperature', from: 'ground.airTemperatureC' },
      {
        symbol: 'T_l',
        name: 'case when the motor is at its limit',
        value: atLimit,
        kind: 'temperature',
        from: 'figure:caseAtLimitC',
      },
    ],
    expression: `T_air + ${riseShare} * (T_l - T_air)`,
    missing: 'it needs the motor’s way to its sink, and a pattern that warms it without running away',
    hysteresis: 5,
    assumptions: [
      'A sensor on the case lags behind the winding: a burst from cold may pass the limit unseen.',
    ],
  })
  if (value === null) return alarm
  const timed = withWarning(alarm, jamAfterCase(machine, evaluation))
  if (!evaluation.heat.nodes.two) return timed
  const { hold, launch, pivot } = evaluation.times
  const unseen = ({ case: reached }: TimeToLimit) => reached < value
  return { ...timed, guards: !(unseen(hold) || unseen(launch) || unseen(pivot)) }
}

/** Seconds from an alarm to its limit, with the symbols that they are worked out from. */
interface Warning {
  readonly symbols: readonly WorkingSymbol[]
  readonly step: WorkingStep & { readonly value: number }
}

/** An alarm with its seconds of warning; as it was where they are none. */
function withWarning(alarm: Alarm, { symbols, step }: Warning): Alarm {
  if (!(step.value > 0 && step.value < Infinity)) return alarm
  const { working } = alarm
  const known = new Set(working.symbols.map(({ symbol }) => symbol))
  return {
    ...alarm,
    warningSeconds: step.value,
    working: {
      ...working,
      symbols: [...working.symbols, ...symbols.filter(({ symbol }) => !known.has(symbol))],
      steps: [...working.steps, step],
    },
  }
}

/**
 * From the case's alarm to the winding's limit, should the track jam then: no heat leaves, and the winding is as resistive
 * as at its limit, which is less time than there is.
 *
 * t = C_w 0.1 (T_max − T_air)/(I² R), R = R_20 [1 + α (T_max − 20)], I of a jam at full throttle.
 *
 * *Source:* heat over power; the winding at 90 % of its rise when its case is [assumption].
 */
function jamAfterCase({ motor, ground }: Checked['machine'], e: Checked['evaluation']): Warning {
  const put = {
    C_w: e.heat.nodes.windingCapacity,
    T_max: motor.maxTemperature,
    T_air: ground.airTemperature,
    I_j: e.times.launch.amps,
    R_h: windingResistanceAt(motor.resistance, motor.maxTemperature),
  }
  const value = (put.C_w * (1 - riseShare) * (put.T_max - put.T_air)) / (put.I_j * put.I_j * put.R_h)
  return {
    symbols: [
      { symbol: 'C_w', name: 'heat capacity of the winding', value: put.C_w, kind: 'heatCapacity' },
      {
        symbol: 'T_max',
        name: 'hottest allowed',
        value: put.T_max,
        kind: 'temperature',
        from: 'motor.maxTemperatureC',
      },
      { symbol: 'I_j', name: 'current of one motor in a jam', value: put.I_j, kind: 'amps' },
      { symbol: 'R_h', name: 'winding at its limit', value: put.R_h, kind: 'ohms' },
    ],
    step: {
      symbol: 't_w',
      name: 'least seconds from there to the winding’s limit, in a jam',
      expression: `C_w * (1 - ${riseShare}) * (T_max - T_air) / (I_j^2 * R_h)`,
      value,
      kind: 'time',
    },
  }
}

/**
 * From the coolant's alarm to boiling, should nothing cool it from then on: t = ρ V c 10 K/q, q the pattern's mean heat.
 *
 * *Source:* heat over power; hoses, blocks and radiator take none of it [assumption, the safe side].
 */
function boilingWithoutAir(
  cooling: NonNullable<Checked['machine']['cooling']>,
  { heat }: Checked['evaluation'],
): Warning {
  const { density, specificHeat, volume } = cooling
  const watts = heat.capacityRate * (heat.hot - heat.feed)
  return {
    symbols: [
      { symbol: 'rho', name: 'coolant', value: density, kind: 'density' },
      {
        symbol: 'V_c',
        name: 'coolant in the circuit',
        value: volume,
        kind: 'volume',
        from: 'cooling.tankLitres',
      },
      { symbol: 'c', name: 'its specific heat', value: specificHeat, kind: 'specificHeat' },
      { symbol: 'q', name: 'heat into it through the pattern', value: watts, kind: 'watts' },
    ],
    step: {
      symbol: 't_w',
      name: 'seconds from there to boiling, with the air standing still',
      expression: `rho * V_c * c * ${belowBoiling} / q`,
      value: (density * volume * specificHeat * belowBoiling) / watts,
      kind: 'time',
    },
  }
}

/**
 * From 10 K below the controller's limit to it, in the strongest burst that the ground lets happen: no heat leaves, which
 * is less time than there is.
 *
 * t = C_c 10 K/P, P = I² R_esc + I f (½ V (t_r + t_f) + 2 t_d V_d) at the pack's resting volts.
 *
 * *Source:* heat over power; `docs/model.md` §3 for the loss.
 */
function burstBelowLimit({ controller, pack }: Checked['machine'], e: Checked['evaluation']): Warning {
  const put = { I_b: e.bursts.motorAmps, C_c: controller.heatCapacity ?? NaN }
  const loss = controllerLossAt(controller, put.I_b, pack.openVolts)
  return {
    symbols: [
      {
        symbol: 'C_c',
        name: 'heat capacity of the controller',
        value: put.C_c,
        kind: 'heatCapacity',
        from: 'controller.heatCapacityJPerK',
      },
      { symbol: 'P_b', name: 'its loss in the strongest burst', value: loss, kind: 'watts' },
    ],
    step: {
      symbol: 't_w',
      name: `least seconds from ${belowLimit} K below it, in a burst`,
      expression: `C_c * ${belowLimit} / P_b`,
      value: (put.C_c * belowLimit) / loss,
      kind: 'time',
    },
  }
}

/** The controller's own limit, and an earlier value that leaves seconds before it. */
function controllerAlarm({ machine, evaluation }: Checked): Alarm {
  const value = machine.controller.maxTemperature
  const alarm = atControllerLimit(value)
  if (value === null || machine.controller.heatCapacity === null) return alarm
  const warned = withWarning(alarm, burstBelowLimit(machine, evaluation))
  const { warningSeconds: seconds } = warned
  // none from the value itself: the seconds belong to the earlier one
  return seconds === null
    ? alarm
    : { ...warned, warningSeconds: null, earlier: { value: value - belowLimit, seconds } }
}

function atControllerLimit(value: number | null): Alarm {
  return alarmOf({
    id: 'controller',
    label: 'Controller temperature',
    title: 'The controller’s own limit: its sensor sits at the switches.',
    value,
    kind: 'temperature',
    symbols: [
      {
        symbol: 'T_max',
        name: 'hottest allowed',
        value,
        kind: 'temperature',
        from: 'controller.maxTemperatureC',
      },
    ],
    expression: 'T_max',
    missing: 'it needs controller.maxTemperatureC',
    hysteresis: 5,
  })
}

function coolantAlarm({ machine, evaluation }: Checked): Alarm {
  const { boils } = evaluation.heat
  const { cooling } = machine
  const value = cooling === null ? null : boils - belowBoiling
  const alarm = alarmOf({
    id: 'coolant',
    label: 'Coolant temperature',
    title: 'The coolant 10 K below where it boils.',
    value,
    kind: 'temperature',
    symbols: [{ symbol: 'T_b', name: 'where it boils', value: boils, kind: 'temperature' }],
    expression: `T_b - ${belowBoiling}`,
    missing: 'it needs cooling',
    hysteresis: 5,
  })
  return cooling === null ? alarm : withWarning(alarm, boilingWithoutAir(cooling, evaluation))
}

function burstAlarm({ limits }: Checked): Alarm {
  const value = limits.find(({ id }) => id === 'motor.burst-heat')?.allowed ?? null
  return alarmOf({
    id: 'burst-seconds',
    label: 'Seconds of a burst',
    title: 'How long the motor bears a jam or a pivot turn from the pattern’s hottest moment.',
    value,
    kind: 'duration',
    symbols: [
      {
        symbol: 't',
        name: 'time that the motor bears it',
        value,
        kind: 'duration',
        from: 'limit:motor.burst-heat',
      },
    ],
    expression: 't',
    missing: 'it needs the motor’s heat entries, and a burst that warms it to its limit',
    hysteresis: null,
  })
}
