import type { Checked } from '../../../shared-engine/check.ts'
import type { Figure } from '../../../shared-engine/figures/figure.ts'
import { bestWords } from '../../../shared-engine/explain/best.ts'
import { orderOf } from '../../../shared-engine/explain/order.ts'
import { sheetBandWords } from '../../../shared-engine/explain/sheet-band.ts'
import { countsAnswer } from '../../../shared-engine/report/answer.ts'
import { marginText } from '../../../shared-engine/limits/margin-words.ts'
import { figureSubjects } from '../../../shared-engine/report/subjects.ts'
import { groupWords, limitGroups } from '../../../shared-engine/limits/group.ts'
import { type LimitRow } from '../../../shared-engine/limits/ledger.ts'
import { isLeast, type Standing } from '../../../shared-engine/limits/limit.ts'
import { wireFiguresOf } from '../../../shared-engine/figures/wiring.ts'
import { limitOf } from '../../../shared-engine/limits/table.ts'
import { oneLine } from '../../../shared-engine/mistakes/shown.ts'
import { displayUnit, format, formatText } from '../../../shared-engine/units/display.ts'
import type { QuantityKind, UnitSystem } from '../../../shared-engine/units/kinds.ts'
import { consequenceOf } from '../../../shared-engine/explain/consequences.ts'
import { mishapsOf, mishapSentence } from '../../../shared-engine/explain/mishaps.ts'
import { wrapped } from '../../../shared-engine/explain/wrap.ts'
import { caution } from '../../../shared-engine/constants.ts'

const width = 80

const headings: Readonly<Record<Standing, string>> = {
  over: 'Over the limit',
  near: 'Near the limit, less than 20 % in hand',
  within: 'Within the limit',
}

/** A check as text for a person: the answer, limits worst first, figures by subject, notes. At most 80 columns. */
export function checkedText(checked: Checked, system: UnitSystem): string {
  const blocks = [
    [...wrapped(oneLine(checked.name, 200), width), ...wrapped(countsAnswer(checked.limits), width)],
    ...limitBlocks(checked, system),
    notJudgedBlock(checked),
    ...figureSubjects.map(([heading, figures]) => figureBlock(heading, figures, checked, system)),
    wireBlock(checked, system),
    [...wrapped(bestWords(checked, system), width), ...wrapped(sheetBandWords(checked, system), width)],
    orderBlock(checked, system),
    checked.notes.flatMap((note) => wrapped(`Note: ${note}`, width, '  ')),
    wrapped(caution, width),
  ]
  return `${blocks
    .filter((lines) => lines.length > 0)
    .map((lines) => lines.join('\n'))
    .join('\n\n')}\n`
}

/** A block for each group; in it the standings, worst first. */
function limitBlocks(checked: Checked, system: UnitSystem): readonly (readonly string[])[] {
  const { limits } = checked
  return limitGroups.map((group) => {
    const told =
      group === 'mishap'
        ? mishapsOf(checked).map((one) => mishapSentence(one, system))
        : limits
            .filter((row) => row.group === group && row.standing === 'over')
            .map(({ id }) => consequenceOf(id))
    const lines = (['over', 'near', 'within'] as const).flatMap((standing) => {
      const rows = limits.filter((limit) => limit.group === group && limit.standing === standing)
      return rows.length === 0 ? [] : [` ${headings[standing]}`, ...rows.map((row) => limitLine(row, system))]
    })
    return lines.length === 0
      ? []
      : [groupWords[group], ...told.flatMap((text) => wrapped(text, width, '  ', ' ')), ...lines]
  })
}

/** `  motor.free-rpm    41,200  ≤ 38,000 rpm   −8.4 %  free` */
function limitLine(row: LimitRow, system: UnitSystem): string {
  const limit = limitOf(row.id)
  const kind = limit?.kind ?? 'none'
  const unit = displayUnit(kind, system, row.allowed ?? row.actual ?? 0)
  const actual = format(row.actual, kind, system, unit)
  const allowed = format(row.allowed, kind, system, unit)
  const sign = isLeast(limit?.sense) ? '≥' : '≤'
  const numbers = `${actual.text.padStart(9)} ${sign} ${allowed.text.padEnd(9)} ${unit.padEnd(5)}`
  return `  ${row.id.padEnd(29)} ${numbers} ${marginText(row.margin, limit?.sense).padStart(9)}  ${row.case}${row.unsure === true ? ' (unsure)' : ''}`.trimEnd()
}

/** `  track.tension  needs track.breakingTensionN`. */
function notJudgedBlock({ notJudged }: Checked): readonly string[] {
  if (notJudged.length === 0) return []
  const lines = notJudged.flatMap(({ id, needs }) => {
    const what = needs.length === 0 ? 'a top speed' : needs.join(', ')
    return wrapped(`${id} needs ${what}`, width, '    ', '  ')
  })
  return ['Not judged, for lack of an entry', ...lines]
}

function figureBlock(
  heading: string,
  figures: readonly Figure[],
  checked: Checked,
  system: UnitSystem,
): readonly string[] {
  const values: Readonly<Record<string, number | null>> = checked.figures
  const lines = figures.map(({ name, label, kind }) => {
    const { text, unit } = format(values[name] ?? null, kind, system)
    // The number takes what the label leaves of 45 columns, so that a long one of either still lines up.
    return `  ${label} ${text.padStart(44 - label.length)} ${unit.padEnd(5)} ${name}`
  })
  return [heading, ...lines]
}

/** Resistance, temperatures and currents of each wire; nothing without one. */
function wireBlock({ evaluation, machine }: Checked, system: UnitSystem): readonly string[] {
  const figures = wireFiguresOf(evaluation, machine)
  if (figures.length === 0) return []
  const shown = (value: number | null, kind: QuantityKind) => formatText(value, kind, system)
  return [
    'Wires',
    ...figures.flatMap(({ ohm, steadyC, burstC, ampacity, fusingAmps }, index) => {
      const name = oneLine(machine.wires[index]?.name ?? '', 40)
      return [
        `  ${index + 1} ${name}: ${shown(ohm, 'ohms')}`,
        `    warm through ${shown(steadyC, 'temperature')}, after a burst ${shown(burstC, 'temperature')}`,
        `    bears ${shown(ampacity, 'amps')} for long, melts in a burst of ${shown(fusingAmps, 'amps')}`,
      ]
    }),
  ]
}

/** What to buy or cut by the build's geometry. */
function orderBlock(checked: Checked, system: UnitSystem): readonly string[] {
  const lines = orderOf(checked, system).flatMap(({ label, words }) =>
    wrapped(`${label}: ${words}`, width, '    ', '  '),
  )
  return ['To order', ...lines]
}
