import { rowAmpsSquared, rowControllerLoss, rowIronLoss } from '../cases/pattern-state.ts'
import type { RowState } from '../vehicle/row-state.ts'
import type { QuantityKind } from '../units/kinds.ts'
import type { Draft } from './draft.ts'

/** Rows that a working writes one by one; a longer pattern stands as its mean alone. */
const mostShown = 8

export const steadyRows =
  'Each row is a steady state at the charge half way to the reserve; getting up to speed is left out.'

/** What of a row is averaged: its symbol, kind and name, and how it is read. */
interface Averaged {
  readonly symbol: string
  readonly kind: QuantityKind
  readonly name: string
  readonly of: (row: RowState) => number
}

export const rowAmps: Averaged = {
  symbol: 'I',
  kind: 'amps',
  name: 'motor current',
  of: (row) => Math.sqrt(rowAmpsSquared(row)),
}
export const rowIron: Averaged = {
  symbol: 'P_i',
  kind: 'watts',
  name: 'iron loss of one motor',
  of: rowIronLoss,
}
export const rowController: Averaged = {
  symbol: 'P_c',
  kind: 'watts',
  name: 'loss of one controller',
  of: rowControllerLoss,
}
const weighted = (of: (row: RowState, turning: boolean) => number) => (row: RowState) =>
  row.turnShare > 0 ? (1 - row.turnShare) * of(row, false) + row.turnShare * of(row, true) : of(row, false)
const packAmps = (row: RowState, turning: boolean) => (turning ? row.turn : row.straight).packAmps
export const rowPackAmps: Averaged = {
  symbol: 'I_p',
  kind: 'amps',
  name: 'pack current',
  of: weighted(packAmps),
}
export const rowPackAmpsRms: Averaged = {
  ...rowPackAmps,
  of: (row) => Math.sqrt(weighted((one, turning) => packAmps(one, turning) ** 2)(row)),
}
export const rowSpeed: Averaged = {
  symbol: 'v',
  kind: 'speed',
  name: 'speed, pivot turns counted as standing',
  of: (row) => row.straight.groundSpeed * (1 - row.turnShare),
}

/** What a row's state is worked out from, by figures that have workings of their own. */
export function drivenBy(d: Draft): string {
  const { pattern } = d.checked.evaluation
  d.figure('v_t', 'topSpeedMps')
  d.figure('I_t', 'topMotorAmps')
  d.figure('F_m0', 'startThrustN')
  d.figure('R_0', 'groundResistanceN')
  d.figure('rho_air', 'airDensity')
  d.figure('R_b', 'packOhm')
  d.figure('I_a', 'accessoryAmps')
  d.entry('c_0', 'service.stateOfChargePercent')
  d.entry('c_r', 'service.reservePercent')
  d.entry('D_1', 'track.internalDragNPerMps')
  d.entry('R_20', 'motor.resistanceMilliohm')
  d.entry('R_esc', 'controller.resistanceMilliohm')
  const words =
    'steady, by what gives v_t, I_t, F_m0, R_0, rho_air, D_1, R_20, R_esc, R_b and I_a too, half way from c_0 to c_r'
  if (!(pattern.turnSeconds > 0)) return words
  d.figure('I_v', 'pivotMotorAmps')
  return `${words}; turning as by I_v`
}

/**
 * A mean over the pattern's rows, written out where there are few.
 *
 * @param power 1: mean; 2: root of the mean square
 * @returns the value of the symbol
 */
export function meanOfRows(
  d: Draft,
  averaged: Averaged,
  result: readonly [symbol: string, name: string],
  power: 1 | 2,
  value: number,
): number {
  const { pattern } = d.checked.evaluation
  d.assume(steadyRows)
  const [symbol, name] = result
  const told = [averaged.kind, name] as const
  const words = power === 1 ? 'mean over time' : 'root of the mean square over time'
  const driven = drivenBy(d)
  if (pattern.count > mostShown)
    return d.found(symbol, told, `${words}, of ${pattern.count} rows, ${driven}`, value)
  const terms: string[] = []
  const times: string[] = []
  for (let index = 0; index < pattern.count; index += 1) {
    const row = pattern.rows[index]
    if (row === undefined) break
    const at = `${index + 1}`
    d.given(`t_${at}`, ['time', `row ${at}`], row.seconds)
    d.found(
      `${averaged.symbol}_${at}`,
      [averaged.kind, `${averaged.name}, row ${at}`],
      driven,
      averaged.of(row),
    )
    times.push(`t_${at}`)
    terms.push(`t_${at} * ${averaged.symbol}_${at}${power === 2 ? '^2' : ''}`)
  }
  const mean = `(${terms.join(' + ')}) / (${times.join(' + ')})`
  return d.step(symbol, told, power === 2 ? `sqrt(${mean})` : mean, words)
}
