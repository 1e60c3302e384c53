import type { Checked } from '../check.ts'
import type { WorkingSymbol } from '../workings/working.ts'
import type { Alarm } from './alarms.ts'
import { rpmGuardOf } from './guard.ts'

const source = 'common practice, no source'

/** Speeds: of the shaft, and the electrical one that controllers show. */
export function rpmAlarms(checked: Checked): Alarm[] {
  const { machine, figures } = checked
  const { motor, controller } = machine
  const symbols: WorkingSymbol[] = []
  const terms: string[] = []
  const put = (symbol: string, name: string, value: number | null, from: string, term: string) => {
    if (value === null) return
    symbols.push({ symbol, name, value, kind: 'rpm', from })
    terms.push(term)
  }
  const electrical = controller.maxElectricalRpm
  put('n_max', 'fastest the motor may turn', motor.ratedMaxRpm, 'motor.ratedMaxRpm', '0.95 * n_max')
  put('n_el', 'fastest electrical speed', electrical, 'controller.maxElectricalRpm', '0.95 * (n_el / p)')
  put('n_b', 'where the loop’s own mass tears it', figures.burstMotorRpm, 'figure:burstMotorRpm', '0.9 * n_b')
  const lift = 'where the loop leaves its wheels'
  put('n_l', lift, figures.liftOffMotorRpm, 'figure:liftOffMotorRpm', '0.95 * n_l')
  const poles = { symbol: 'p', name: 'pole pairs', value: motor.polePairs, kind: 'count' } as const
  symbols.push({ ...poles, from: 'motor.poleCount' })
  const expression = terms.length === 1 ? (terms[0] ?? '') : `min(${terms.join(', ')})`
  const guard = rpmGuardOf(checked)
  const { value } = guard
  const step = { symbol: 'n', name: 'alarm on the shaft’s rpm', expression, value, kind: 'rpm' } as const
  const unloaded: readonly WorkingSymbol[] = [
    { symbol: 'm_s', name: 'what turns with the belt, as mass on it', value: guard.spinning, kind: 'mass' },
    { symbol: 'v_n', name: 'belt speed at the limit', value: guard.limitBelt, kind: 'speed' },
    { symbol: 'v_a', name: 'belt speed at the alarm', value: guard.alarmBelt, kind: 'speed' },
    { symbol: 'F_a', name: 'push of the motors there, off the ground', value: guard.force, kind: 'force' },
  ]
  const warning = {
    symbol: 't_w',
    name: 'seconds from there to the limit, off the ground at full throttle',
    expression: 'm_s * (v_n - v_a) / F_a',
    value: guard.seconds,
    kind: 'time',
  } as const
  const common = {
    direction: 'alarm when above',
    kind: 'rpm',
    warningSeconds: null,
    holdSeconds: 0.5,
  } as const
  const said = { symbols, state: 'any', source, assumptions: [] }
  return [
    {
      ...common,
      id: 'rpm',
      label: 'Motor rpm',
      value,
      hysteresis: 0.02 * value,
      rpm: guard,
      warningSeconds: guard.seconds,
      guards: guard.guards,
      working: {
        ...said,
        subject: 'alarm:rpm',
        title: 'Rpm of the motor’s shaft at which the alarm sounds.',
        ...(guard.seconds === null
          ? { steps: [step] }
          : { symbols: [...symbols, ...unloaded], steps: [step, warning] }),
      },
    },
    {
      ...common,
      id: 'electrical-rpm',
      label: 'Electrical rpm',
      value: value * motor.polePairs,
      hysteresis: 0.02 * value * motor.polePairs,
      working: {
        ...said,
        subject: 'alarm:electrical-rpm',
        title: 'The same as the controller shows it, where it does not know the poles.',
        steps: [
          step,
          {
            symbol: 'n_e',
            name: 'alarm on electrical rpm',
            expression: 'n * p',
            value: value * motor.polePairs,
            kind: 'rpm',
          },
        ],
      },
    },
  ]
}

/** Currents that may not last: of one motor, and of the pack. */
export function currentAlarms({ machine }: Checked): Alarm[] {
  const { motor, controller, pack } = machine
  const ofMotor: WorkingSymbol[] = []
  if (motor.continuousAmps !== null) {
    const name = 'the motor’s rating for long'
    ofMotor.push({
      symbol: 'I_m',
      name,
      value: motor.continuousAmps,
      kind: 'amps',
      from: 'motor.continuousAmps',
    })
  }
  if (controller.continuousAmps !== null) {
    const name = 'the controller’s rating for long'
    const from = 'controller.continuousAmps'
    ofMotor.push({ symbol: 'I_c', name, value: controller.continuousAmps, kind: 'amps', from })
  }
  const ofPack: WorkingSymbol[] =
    pack.continuousAmps === null
      ? []
      : [
          {
            symbol: 'I_p',
            name: 'the pack’s rating for long: its C rating times its capacity',
            value: pack.continuousAmps,
            kind: 'amps',
            from: 'pack.continuousC',
          },
        ]
  return [
    currentAlarm(
      'motor-amps',
      'Current of one motor',
      ofMotor,
      'motor.continuousAmps or controller.continuousAmps',
    ),
    currentAlarm('pack-amps', 'Pack current', ofPack, 'pack.continuousC'),
  ]
}

function currentAlarm(id: string, label: string, symbols: readonly WorkingSymbol[], needs: string): Alarm {
  const names = symbols.map(({ symbol }) => symbol)
  const value = symbols.length === 0 ? null : Math.min(...symbols.map((one) => one.value ?? Infinity))
  const expression = names.length > 1 ? `min(${names.join(', ')})` : (names[0] ?? null)
  return {
    id,
    label,
    direction: 'alarm when above',
    value,
    kind: 'amps',
    warningSeconds: null,
    holdSeconds: 5,
    hysteresis: value === null ? null : 0.05 * value,
    working: {
      subject: `alarm:${id}`,
      title: `${label} at which the alarm sounds, once it has lasted.`,
      symbols,
      steps: value === null ? [] : [{ symbol: 'I', name: 'alarm', expression, value, kind: 'amps' }],
      state: 'lasting for the hold time',
      source,
      assumptions: [],
      ...(value === null ? { missing: `it needs ${needs}` } : {}),
    },
  }
}
