import { alarmRows } from '../../../shared-engine/alarms/rows.ts'
import { spreadsOf } from '../../../shared-engine/uncertainty/spreads.ts'
import type { Checked } from '../../../shared-engine/check.ts'
import { bestOf } from '../../../shared-engine/explain/best.ts'
import { wireFiguresOf } from '../../../shared-engine/figures/wiring.ts'
import { stageFits } from '../../../shared-engine/limits/stage.ts'
import { jsonText } from '../json.ts'

/** The result of a check for programs: SI numbers, `null` for a figure that does not exist. */
export function checkedJson(checked: Checked): string {
  const { name, figures, limits, stages, notJudged, notes, evaluation, machine } = checked
  const wires = wireFiguresOf(evaluation, machine)
  const rows = limits.map((limit) => ({
    id: limit.id,
    group: limit.group,
    actual: limit.actual,
    allowed: limit.allowed,
    unit: limit.unit,
    margin: limit.margin,
    standing: limit.standing,
    case: limit.case,
    ...(limit.unsure === true ? { unsure: true } : {}),
  }))
  const head = { format: 'pitchline-check', version: 2, name, figures, limits: rows }
  return jsonText({
    ...head,
    stages,
    order: stageFits(machine),
    best: bestOf(checked),
    wires,
    alarms: alarmRows(checked),
    spreads: spreadsOf(checked.build),
    notJudged,
    notes,
  })
}
