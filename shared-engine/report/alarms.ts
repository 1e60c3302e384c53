import { alarmCaution, alarmsOf, type Alarm } from '../alarms/alarms.ts'
import type { Checked } from '../check.ts'
import { differenceFromEngine } from '../units/convert.ts'
import { format, formatText, numberText } from '../units/display.ts'
import type { UnitSystem } from '../units/kinds.ts'
import { list, numbers, words, type Block } from './block.ts'

const columns = [
  words('What', 34),
  words('Direction', 24),
  numbers('Set to', 16),
  numbers('Quiet again', 18),
  numbers('Has to last', 14),
  numbers('Warning', 14),
]

const closeColumns = [words('What', 40), words('Alarm when', 30), numbers('Lasts', 14), numbers('Warns', 16)]

function cellsOf(alarm: Alarm, system: UnitSystem): readonly string[] {
  const { label, direction, value, kind, holdSeconds, hysteresis, warningSeconds } = alarm
  const { text, unit } = format(value, kind, system)
  const back =
    hysteresis === null ? '–' : `${numberText(differenceFromEngine(hysteresis, kind, unit))} ${unit} back`
  const warning = warningSeconds === null ? '–' : formatText(warningSeconds, 'time', system)
  return [label, direction, `${text} ${unit}`.trim(), back, `${numberText(holdSeconds)} s`, warning]
}

/** The alarm card: what to set on transmitter and controller, and which alarms lack an entry. */
export function alarmBlocks(checked: Checked, system: UnitSystem): readonly Block[] {
  const alarms = alarmsOf(checked)
  const rows = alarms
    .filter(({ value }) => value !== null)
    .map((alarm) => ({ cells: cellsOf(alarm, system) }))
  const unset = alarms.filter(({ value }) => value === null)
  return [
    ...(rows.length === 0 ? [] : [{ block: 'table', columns, rows } as const]),
    ...(unset.length === 0
      ? []
      : [list(unset.map(({ label, working }) => `${label}: no alarm; ${working.missing ?? ''}`))]),
    { block: 'caution', text: alarmCaution },
  ]
}

/** The card closely: what, which way and where to; the rest is in the window and on the whole sheet. */
export function closeAlarmBlocks(checked: Checked, system: UnitSystem): readonly Block[] {
  return alarmBlocks(checked, system).map((block): Block => {
    if (block.block !== 'table') return block
    const rows = block.rows.map(({ cells: [what = '', way = '', to = '', , last = '', warning = ''] }) => ({
      cells: [what, `${way.replace('alarm when ', '')} ${to}`, last, warning],
    }))
    return { block: 'table', columns: closeColumns, rows }
  })
}
