import type { Checked } from '../check.ts'
import { openCircuitVolts } from '../reference/chemistry.ts'
import type { WorkingSymbol } from '../workings/working.ts'
import type { Alarm } from './alarms.ts'

type Pack = Checked['machine']['pack']

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
  const cells = [
    { symbol: 'S', name: 'cells in series', value: pack.series, kind: 'count', from: 'pack.series' },
    {
      symbol: 'V_cell',
      name: 'resting volts of a cell at the reserve',
      value: cell,
      kind: 'volts',
      from: 'service.reservePercent',
    },
  ] as const
  const ohm = {
    symbol: 'R_b',
    name: 'resistance of pack and wiring',
    value: pack.resistance,
    kind: 'ohms',
    from: 'figure:packOhm',
  } as const
  const left = untilEmpty(pack, amps)
  // A pack that cannot feed its own pump and lamps half way down to the reserve has no current through the pattern.
  const atRms = Number.isNaN(amps) ? null : value - amps * pack.resistance
  const resting = { symbol: 'V', expression: 'S * V_cell', value, kind: 'volts' } as const
  const rested = { ...resting, name: 'pack volts at rest, at the reserve' } as const
  const perCell = {
    symbol: 'V_c',
    name: 'volts of one cell',
    expression: 'V / S',
    value: value / pack.series,
    kind: 'volts',
  } as const
  const row = (
    id: string,
    label: string,
    volts: number,
    steps: Alarm['working']['steps'],
    symbols: Alarm['working']['symbols'] = left === null ? [] : [left.amps],
  ): Alarm => ({
    id,
    label,
    direction: 'alarm when below',
    value: volts,
    kind: 'volts',
    warningSeconds: left?.step.value ?? null,
    holdSeconds: 3,
    hysteresis: 0.02 * volts,
    working: {
      subject: `alarm:${id}`,
      title: `${label}, with the sag added back: volts and amps times the pack’s resistance.`,
      symbols: [...cells, ...symbols, ...(left?.symbols ?? [])],
      steps: [...steps, ...(left === null ? [] : [left.step])],
      state: 'charge at the reserve',
      source: `\`docs/model.md\` §2; ${holds}`,
      assumptions: ['The pack is at service.packTemperatureC.'],
    },
  })
  const atReserve = 'Pack volts at the reserve'
  const loaded =
    atRms === null
      ? row('pack-volts', atReserve, value, [rested])
      : {
          ...row('pack-volts', atReserve, value, [sagged(atRms), rested], [ampsOf(amps), ohm]),
          voltsAtRms: atRms,
        }
  return [
    { ...loaded, ohm: pack.resistance },
    row('cell-volts', 'Cell volts at the reserve', value / pack.series, [rested, perCell]),
    chargeAlarm(machine.pack, amps),
  ]
}

const ampsOf = (amps: number) =>
  ({
    symbol: 'I',
    name: 'pack current through the pattern, RMS',
    value: amps,
    kind: 'amps',
    from: 'figure:patternPackAmpsRms',
  }) as const

const sagged = (volts: number) =>
  ({
    symbol: 'V_r',
    name: 'what the pack shows under the pattern’s current',
    expression: 'S * V_cell - I * R_b',
    value: volts,
    kind: 'volts',
  }) as const

const capacityOf = ({ capacity }: Pack): WorkingSymbol => ({
  symbol: 'Q_p',
  name: 'pack as labelled',
  value: capacity,
  kind: 'charge',
  from: 'pack.capacityMah',
})

const reserveOf = ({ reserve }: Pack): WorkingSymbol => ({
  symbol: 'c_r',
  name: 'reserve',
  value: reserve,
  kind: 'fraction',
})

const coldShareOf = (pack: Pack) => pack.usable / (pack.capacity * (pack.stateOfCharge - pack.reserve))

const coldOf = (pack: Pack): WorkingSymbol => ({
  symbol: 's_c',
  name: 'what cells this cold give',
  value: coldShareOf(pack),
  kind: 'fraction',
})

/**
 * How long the reserve lasts at the pattern's RMS current, more than its mean: t = Q_p c_r s_c/I; null without a reserve or a
 * current.
 *
 * *Source:* charge over current.
 */
function untilEmpty(pack: Pack, amps: number) {
  const value = (pack.capacity * pack.reserve * coldShareOf(pack)) / amps
  if (!(value > 0 && value < Infinity)) return null
  return {
    amps: ampsOf(amps),
    symbols: [capacityOf(pack), reserveOf(pack), coldOf(pack)],
    step: {
      symbol: 't_w',
      name: 'seconds from there to an empty pack, at the pattern’s current',
      expression: 'Q_p * c_r * s_c / I',
      value,
      kind: 'time',
    },
  } as const
}

/** The charge that a radio or controller counts. */
function chargeAlarm(pack: Pack, amps: number): Alarm {
  const left = untilEmpty(pack, amps)
  return {
    id: 'charge-used',
    label: 'Charge used',
    direction: 'alarm when above',
    value: pack.usable,
    kind: 'charge',
    warningSeconds: left?.step.value ?? null,
    holdSeconds: 0,
    hysteresis: null,
    working: {
      subject: 'alarm:charge-used',
      title: 'Charge from the given one to the reserve, less what the cold holds back.',
      symbols: [
        capacityOf(pack),
        { symbol: 'c_0', name: 'charge at the start', value: pack.stateOfCharge, kind: 'fraction' },
        reserveOf(pack),
        ...(left === null ? [] : [left.amps]),
        coldOf(pack),
      ],
      steps: [
        {
          symbol: 'Q',
          name: 'charge down to the reserve',
          expression: 'Q_p * (c_0 - c_r) * s_c',
          value: pack.usable,
          kind: 'charge',
        },
        ...(left === null ? [] : [left.step]),
      ],
      state: 'any',
      source: '`docs/model.md` §2; capacity in the cold: common practice, no source',
      assumptions: ['The pack is at service.packTemperatureC.'],
    },
  }
}
