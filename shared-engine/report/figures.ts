import type { Checked } from '../check.ts'
import { wireFiguresOf } from '../figures/wiring.ts'
import { oneLine } from '../mistakes/shown.ts'
import { format, formatText } from '../units/display.ts'
import type { UnitSystem } from '../units/kinds.ts'
import { heading, numbers, quiet, run, words, type Block } from './block.ts'
import { figureSubjects, pageSubjects } from './subjects.ts'

const columns = [words('Figure', 60), numbers('Value', 22), words('Unit', 18)]

/** Every figure that exists, by subject; those that do not are named. */
export function figureBlocks(checked: Checked, system: UnitSystem): readonly Block[] {
  const values: Readonly<Record<string, number | null>> = checked.figures
  const tables = figureSubjects.flatMap(([subject, figures]): Block[] => {
    const rows = figures.flatMap(({ name, label, kind }) => {
      const value = values[name] ?? null
      if (value === null) return []
      const { text, unit } = format(value, kind, system)
      return [{ cells: [label, text, unit] }]
    })
    return rows.length === 0 ? [] : [heading(subject), { block: 'table', columns, rows }]
  })
  const unknown = figureSubjects.flatMap(([, figures]) =>
    figures.filter(({ name }) => (values[name] ?? null) === null).map(({ label }) => label),
  )
  const rest =
    unknown.length === 0 ? [] : [quiet(`Not known, or none, with these entries: ${unknown.join('; ')}.`)]
  return [...tables, ...wireBlocks(checked, system), ...rest]
}

function wireBlocks({ evaluation, machine }: Checked, system: UnitSystem): readonly Block[] {
  const rows = wireFiguresOf(evaluation, machine).map(
    ({ ohm, steadyC, burstC, ampacity, fusingAmps }, at) => ({
      cells: [
        `${at + 1} ${oneLine(machine.wires[at]?.name ?? '', 40)}`.trim(),
        formatText(ohm, 'ohms', system),
        formatText(steadyC, 'temperature', system),
        formatText(burstC, 'temperature', system),
        formatText(ampacity, 'amps', system),
        formatText(fusingAmps, 'amps', system),
      ],
    }),
  )
  if (rows.length === 0) return []
  const heads = ['Resistance', 'Warm through', 'After a burst', 'Bears for long', 'Melts in a burst']
  const wide = [words('Wire', 30), ...heads.map((label) => numbers(label, 16))]
  return [heading('Wires'), { block: 'table', columns: wide, rows }]
}

/** Figures set closely, a subject after the other, and which subjects the whole sheet has besides. */
export function figureRuns(checked: Checked, system: UnitSystem): readonly Block[] {
  const values: Readonly<Record<string, number | null>> = checked.figures
  const runs = pageSubjects.flatMap(([subject, figures]): Block[] => {
    const known = figures.flatMap(({ name, label, kind }) => {
      const value = values[name] ?? null
      return value === null ? [] : [`${label} ${formatText(value, kind, system)}`]
    })
    return known.length === 0 ? [] : [run(subject, `${known.join('; ')}.`)]
  })
  const others = figureSubjects.filter((one) => !pageSubjects.includes(one)).map(([subject]) => subject)
  return [...runs, quiet(`The whole sheet has more: ${others.join(', ').toLowerCase()}, wires.`)]
}
