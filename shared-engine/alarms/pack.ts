import type { Checked } from '../check.ts'
import { openCircuitVolts } from '../reference/chemistry.ts'
import type { Alarm } from './alarms.ts'

const holds = 'hold time and hysteresis common practice, no source'

/**
 * Volts of the pack at rest when its charge is at the reserve, what it shows then under the pattern's current, and the charge
 * down to there: time to come back.
 *
 * V = S ocv(reserve), held against the telemetry's V + I R_b; for a radio that can't add them, V − I R_b at the pattern's
 * RMS current.
 *
 * *Source:* `docs/model.md` §§2 and 12.
 */
export function packAlarms({ build, machine, evaluation }: Checked): Alarm[] {
  const { pack } = machine
  const cell = openCircuitVolts(build.pack.chemistry, pack.reserve)
  const value = pack.reserveVolts
  const amps = evaluation.pattern.packAmpsRms
  const symbols = [
    { symbol: 'S', name: 'cells in series', value: pack.series, kind: 'count', from: 'pack.series' },
    {
      symbol: 'V_cell',
      name: 'resting volts of a cell at the reserve',
      value: cell,
      kind: 'volts',
      from: 'service.reservePercent',
    },
    {
      symbol: 'I',
      name: 'pack current through the pattern, RMS',
      value: amps,
      kind: 'amps',
      from: 'figure:patternPackAmpsRms',
    },
    {
      symbol: 'R_b',
      name: 'resistance of pack and wiring',
      value: pack.resistance,
      kind: 'ohms',
      from: 'figure:packOhm',
    },
  ] as const
  const atRms = value - amps * pack.resistance
  const under = { symbol: 'V_r', expression: 'S * V_cell - I * R_b', value: atRms, kind: 'volts' } as const
  const resting = { symbol: 'V', expression: 'S * V_cell', value, kind: 'volts' } as const
  const shown = { ...under, name: 'what the pack shows under the pattern’s current' } as const
  const rested = { ...resting, name: 'pack volts at rest, at the reserve' } as const
  const perCell = {
    symbol: 'V_c',
    name: 'volts of one cell',
    expression: 'V / S',
    value: value / pack.series,
    kind: 'volts',
  } as const
  const row = (id: string, label: string, volts: number, steps: Alarm['working']['steps']): Alarm => ({
    id,
    label,
    direction: 'alarm when below',
    value: volts,
    kind: 'volts',
    warningSeconds: null,
    holdSeconds: 3,
    hysteresis: 0.02 * volts,
    working: {
      subject: `alarm:${id}`,
      title: `${label}, with the sag added back: volts and amps times the pack’s resistance.`,
      symbols,
      steps,
      state: 'charge at the reserve',
      source: `\`docs/model.md\` §2; ${holds}`,
      assumptions: ['The pack is at service.packTemperatureC.'],
    },
  })
  return [
    {
      ...row('pack-volts', 'Pack volts at the reserve', value, [shown, rested]),
      ohm: pack.resistance,
      voltsAtRms: atRms,
    },
    row('cell-volts', 'Cell volts at the reserve', value / pack.series, [rested, perCell]),
    chargeAlarm(machine.pack),
  ]
}

/** The charge that a radio or controller counts. */
function chargeAlarm(pack: Checked['machine']['pack']): Alarm {
  const share = pack.usable / (pack.capacity * (pack.stateOfCharge - pack.reserve))
  return {
    id: 'charge-used',
    label: 'Charge used',
    direction: 'alarm when above',
    value: pack.usable,
    kind: 'charge',
    warningSeconds: null,
    holdSeconds: 0,
    hysteresis: null,
    working: {
      subject: 'alarm:charge-used',
      title: 'Charge from the given one to the reserve, less what the cold holds back.',
      symbols: [
        {
          symbol: 'Q_p',
          name: 'pack as labelled',
          value: pack.capacity,
          kind: 'charge',
          from: 'pack.capacityMah',
        },
        { symbol: 'c_0', name: 'charge at the start', value: pack.stateOfCharge, kind: 'fraction' },
        { symbol: 'c_r', name: 'reserve', value: pack.reserve, kind: 'fraction' },
        { symbol: 's_c', name: 'what cells this cold give', value: share, kind: 'fraction' },
      ],
      steps: [
        {
          symbol: 'Q',
          name: 'charge down to the reserve',
          expression: 'Q_p * (c_0 - c_r) * s_c',
          value: pack.usable,
          kind: 'charge',
        },
      ],
      state: 'any',
      source: '`docs/model.md` §2; capacity in the cold: common practice, no source',
      assumptions: ['The pack is at service.packTemperatureC.'],
    },
  }
}
