import type { Checked } from '../check.ts'
import { openCircuitVolts } from '../reference/chemistry.ts'
import type { Alarm } from './alarms.ts'

/**
 * Volts that the pack shows under the run's current when its charge is at the reserve: time to come back.
 *
 * V = S ocv(reserve) − I R_b,  I = q I_top + I_a.
 *
 * *Source:* `docs/model.md` §§2 and 7; the share of the current is an assumption.
 */
export function packAlarms({ build, machine, evaluation }: Checked): Alarm[] {
  const { pack, service } = machine
  const cell = openCircuitVolts(build.pack.chemistry, pack.reserve)
  const drive = evaluation.top.packDriveAmps
  const runs = evaluation.top.exists
  const amps = service.loadShare * drive + evaluation.accessoryAmps
  const value = pack.series * cell - amps * pack.resistance
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
      symbol: 'q',
      name: 'share of the top-speed current',
      value: service.loadShare,
      kind: 'none',
    },
    {
      symbol: 'I_top',
      name: 'drive current of the pack at top speed',
      value: runs ? drive : null,
      kind: 'amps',
      from: 'figure:topPackAmps',
    },
    {
      symbol: 'I_a',
      name: 'current of the accessories',
      value: evaluation.accessoryAmps,
      kind: 'amps',
      from: 'figure:accessoryAmps',
    },
    {
      symbol: 'R_b',
      name: 'resistance of pack and wiring',
      value: pack.resistance,
      kind: 'ohms',
      from: 'figure:packOhm',
    },
  ] as const
  const under = [
    { symbol: 'I', name: 'current of the run', expression: 'q * I_top + I_a', value: amps, kind: 'amps' },
    { symbol: 'V', name: 'pack volts under it', expression: 'S * V_cell - I * R_b', value, kind: 'volts' },
  ] as const
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
    value: runs ? volts : null,
    kind: 'volts',
    warningSeconds: null,
    holdSeconds: 3,
    hysteresis: runs ? 0.02 * volts : null,
    working: {
      subject: `alarm:${id}`,
      title: `${label} at the reserve, under the run’s current.`,
      symbols,
      steps: runs ? steps : [],
      state: 'the run’s current, charge at the reserve',
      source: '`docs/model.md` §2; hold time and hysteresis common practice, no source',
      assumptions: [
        'The run draws 60 % of the top-speed current.',
        'The pack is at service.packTemperatureC.',
      ],
      ...(runs ? {} : { missing: 'the machine does not get going, so that no run draws a current' }),
    },
  })
  return [
    row('pack-volts', 'Pack volts under load', value, under),
    row('cell-volts', 'Cell volts under load', value / pack.series, [...under, perCell]),
  ]
}
