import type { Table } from '../../../shared-engine/draw/scene.ts'
import type { Alarm } from '../../../shared-engine/alarms/alarms.ts'
import { alarmWords, signalLost } from '../../../shared-engine/alarms/words.ts'
import { format, oneText } from '../../../shared-engine/units/display.ts'
import type { UnitSystem } from '../../../shared-engine/units/kinds.ts'

/** Where an alarm is quiet again: back from its value, away from the limit. */
export function quietAt({ value, hysteresis, direction }: Alarm): number | null {
  if (value === null || hysteresis === null) return null
  return direction === 'alarm when above' ? value - hysteresis : value + hysteresis
}

/** The card as a table, in the units on the screen: for a file and for the clipboard. */
export function alarmTable(alarms: readonly Alarm[], system: UnitSystem): Table {
  const columns = [
    'What',
    'Direction',
    'Value',
    'Unit',
    'Quiet again at',
    'Has to last (s)',
    'Warning before the limit (s)',
    'Throttle cap (%)',
    'Comes from',
    'Can it guard',
    'What it guards',
  ]
  const rows = alarms.map((alarm) => {
    const { label, direction, value, kind, holdSeconds, warningSeconds, rpm } = alarm
    const shown = format(value, kind, system)
    const words = alarmWords(alarm, alarms, system)
    return [
      label,
      direction,
      value === null ? '' : shown.text.replace(/,/g, ''),
      shown.unit,
      value === null ? '' : format(quietAt(alarm), kind, system, shown.unit).text.replace(/,/g, ''),
      holdSeconds,
      warningSeconds === null ? '' : Number(warningSeconds.toPrecision(2)),
      rpm === undefined || rpm.capPercent === null ? '' : Math.floor(rpm.capPercent * 10) / 10,
      words?.from ?? '',
      words?.verdict ?? '',
      words?.guards ?? '',
    ]
  })
  const lost = [signalLost.label, 'no signal for', String(signalLost.seconds), 's', '', '', '', '', '', '']
  return {
    columns: columns.map((label) => ({ label, unit: '' })),
    rows: [...rows, [...lost, signalLost.words]],
  }
}

/** The alarm that leaves the least time, for the answer; the rpm alarm where none is timed. */
export function firstAlarm(alarms: readonly Alarm[]): Alarm | undefined {
  const timed = alarms.filter(({ warningSeconds }) => warningSeconds !== null)
  const soonest = timed.toSorted((one, other) => (one.warningSeconds ?? 0) - (other.warningSeconds ?? 0))[0]
  return soonest ?? alarms.find(({ value }) => value !== null)
}

/** A value on one line in the unit of another. */
export function besideText(value: number | null, beside: number | null, { kind }: Alarm, system: UnitSystem) {
  return oneText(format(value, kind, system, format(beside, kind, system).unit))
}
