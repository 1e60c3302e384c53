import type { Checked } from '../check.ts'
import type { WorkingSymbol } from '../workings/working.ts'
import type { Alarm } from './alarms.ts'

/** Part of a limit at which an alarm sounds. *Source:* common practice, no source. */
const rpmShare = 0.95
const source = 'common practice, no source'

/** Speeds: of the shaft, and the electrical one that controllers show. */
export function rpmAlarms({ machine }: Checked): Alarm[] {
  const { motor, controller } = machine
  const electricalLimit = controller.maxElectricalRpm
  const own = motor.ratedMaxRpm
  const byController = electricalLimit === null ? Infinity : electricalLimit / motor.polePairs
  const limit = Math.min(own, byController)
  const symbols: WorkingSymbol[] = [
    {
      symbol: 'n_max',
      name: 'fastest the motor may turn',
      value: own,
      kind: 'rpm',
      from: 'motor.ratedMaxRpm',
    },
    { symbol: 's', name: 'share of the limit at which the alarm sounds', value: rpmShare, kind: 'none' },
    { symbol: 'p', name: 'pole pairs', value: motor.polePairs, kind: 'count', from: 'motor.poleCount' },
  ]
  if (electricalLimit !== null) {
    const name = 'fastest electrical speed'
    const from = 'controller.maxElectricalRpm'
    symbols.push({ symbol: 'n_el', name, value: electricalLimit, kind: 'rpm', from })
  }
  const expression = electricalLimit === null ? 's * n_max' : 's * min(n_max, n_el / p)'
  const value = rpmShare * limit
  const step = { symbol: 'n', name: 'alarm on the shaft’s rpm', expression, value, kind: 'rpm' } as const
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
      working: {
        ...said,
        subject: 'alarm:rpm',
        title: 'Rpm of the motor’s shaft at which the alarm sounds.',
        steps: [step],
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
