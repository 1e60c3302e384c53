import type { Checked } from '../../../shared-engine/index.ts'
import { momentState } from '../../../shared-engine/log/derive/moment-state.ts'
import { trackOnUntil } from '../../../shared-engine/log/facts/facts.ts'
import { valueAt, type SeriesId } from '../../../shared-engine/log/series.ts'
import { formatText } from '../../../shared-engine/units/display.ts'
import type { QuantityKind, UnitSystem } from '../../../shared-engine/units/kinds.ts'
import type { RecordedMoment } from '../../state/workspace.svelte.ts'
import type { ToldLog } from './log.svelte.ts'

/** Said beside the drawing where the log has it. */
const beside: readonly (readonly [id: SeriesId, label: string, kind: QuantityKind])[] = [
  ['motorC', 'motor', 'temperature'],
  ['controllerC', 'controller', 'temperature'],
  ['toothN', 'tooth', 'force'],
]

/** A moment of a log's segment for the drawing of the machine; null where the log has no rpm there. */
export function logMomentOf(
  { series, result }: ToldLog,
  segment: number,
  seconds: number,
  checked: Checked,
  system: UnitSystem,
): RecordedMoment | null {
  const valueOf = (...ids: readonly SeriesId[]): number => {
    for (const id of ids) {
      const found = series.find((one) => one.segment === segment && one.id === id)
      const value = found === undefined ? NaN : valueAt(found, seconds)
      if (!Number.isNaN(value)) return value
    }
    return NaN
  }
  const rpm = valueOf('rpm')
  if (Number.isNaN(rpm)) return null
  const state = momentState(checked, {
    rpm,
    volts: valueOf('volts'),
    packAmps: valueOf('amps', 'driveAmps'),
    motorAmps: valueOf('motorAmps', 'oneMotorAmps'),
    duty: valueOf('duty', 'throttle'),
    groundSpeed: valueOf('speed', 'speedByRpm'),
    carries: seconds <= trackOnUntil(result.episodes)(segment - 1),
  })
  const said = beside.flatMap(([id, label, kind]) => {
    const value = valueOf(id)
    return Number.isNaN(value) ? [] : [`${label} ${formatText(value, kind, system)}`]
  })
  const at = `At ${seconds.toFixed(2)}\u202Fs of the log`
  return { state, words: said.length === 0 ? at : `${at}: ${said.join(', ')}` }
}
