import type { Checked } from '../check.ts'
import type { TimeToLimit } from '../cases/heat-times.ts'
import type { QuantityKind } from '../units/kinds.ts'
import type { WorkingStep, WorkingSymbol } from '../workings/working.ts'
import type { Alarm } from './alarms.ts'

/** Share of the case's rise over the air at which it sounds. *Source:* `docs/model.md` §12, assumption. */
const riseShare = 0.9
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
  if (value === null || !evaluation.heat.nodes.two) return alarm
  const { hold, launch, pivot } = evaluation.times
  const unseen = ({ case: reached }: TimeToLimit) => reached < value
  return { ...alarm, guards: !(unseen(hold) || unseen(launch) || unseen(pivot)) }
}

function controllerAlarm({ machine }: Checked): Alarm {
  const value = machine.controller.maxTemperature
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
  const value = machine.cooling === null ? null : boils - belowBoiling
  return alarmOf({
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
