import { readStoredBuild } from '../../../shared-engine/entries/read.ts'
import { benchUnitOf } from '../../../shared-engine/entries/fields.ts'
import { tableCsv } from '../../../shared-engine/draw/table.ts'
import type { SweepInput } from '../../../shared-engine/jobs/sweep.ts'
import { sweepOf, sweepPlanOf, type Sweep, type SweepPoint } from '../../../shared-engine/sweep/sweep.ts'
import { sentenceOf } from '../../../shared-engine/mistakes/catalogue.ts'
import { displayUnit, format } from '../../../shared-engine/units/display.ts'
import type { UnitSystem } from '../../../shared-engine/units/kinds.ts'
import { wrapped } from '../../../shared-engine/explain/wrap.ts'
import { contentOf } from '../build-file.ts'
import type { OptionValues } from '../command.ts'
import { exit } from '../exit.ts'
import type { Io } from '../io.ts'
import { mistake, report } from '../trouble.ts'
import { jsonText } from '../json.ts'
import { caution } from '../../../shared-engine/constants.ts'
import { systemOf } from '../option-values.ts'
import { partOf, type WhichPart } from '../parts/option.ts'
import { oneLine } from '../../../shared-engine/mistakes/shown.ts'

const width = 80

/** Varies one entry of a build and prints what becomes of the machine; gives the exit code. */
export async function sweepBuild(
  file: string,
  words: readonly string[],
  options: OptionValues,
  io: Io,
): Promise<number> {
  const stored = contentOf(file, readStoredBuild, io)
  const [path = '', ...typed] = words
  const names = ['from', 'to', 'steps']
  const numbers = typed.map((word) => (word.trim() === '' ? NaN : Number(word)))
  const wrong = numbers.flatMap((number, at) =>
    Number.isFinite(number)
      ? []
      : [mistake('not-a-number', { path: `<${names[at] ?? ''}>`, value: `"${typed[at] ?? ''}"` })],
  )
  if (wrong.length > 0) report(io, 'pitchline', wrong)
  const part = partOf(options, io)
  if (stored === null || wrong.length > 0 || part === undefined) return exit.unreadable
  const [from = NaN, to = NaN, steps = NaN] = numbers
  const asked = options['figures']
  const figures = (typeof asked === 'string' ? asked : '').split(',').map((name) => name.trim())
  const request = { path, from, to, steps, figures: figures.filter((name) => name !== '') }
  const plan = sweepPlanOf(stored, request)
  if (!plan.ok) return report(io, 'pitchline', plan.mistakes)
  if (part !== null) return dividedSweep({ stored, request }, part, io)
  return tellSweep(stored.name, sweepOf(plan.value), options, io)
}

/** Loaded here alone: a whole sweep needs no job. */
async function dividedSweep(input: SweepInput, part: WhichPart, io: Io): Promise<number> {
  const { sweepJob } = await import('../../../shared-engine/jobs/sweep.ts')
  const { runPart } = await import('../parts/run.ts')
  return runPart(sweepJob, input, part, 1, io)
}

/** Prints what became of the machine; gives the exit code. */
export function tellSweep(name: string, swept: Sweep, options: OptionValues, io: Io): number {
  if (options['json'] === true) io.out(sweepJson(name, swept))
  else if (options['csv'] === true) io.out(sweepCsv(swept))
  else io.out(sweepText(name, swept, systemOf(options)))
  const margin = swept.today?.margin ?? null
  return margin !== null && margin >= 0 ? exit.within : exit.over
}

function sweepJson(name: string, { path, points, today, crossings, measures }: Sweep): string {
  const pointData = ({ value, figures, margin, worstLimit, gap }: SweepPoint) => ({
    value,
    figures: Object.fromEntries(measures.map((measure, at) => [measure.name, figures[at] ?? null])),
    margin,
    worstLimit,
    gap: gap === null ? null : sentenceOf(gap),
  })
  const data = {
    format: 'pitchline-sweep',
    version: 1,
    name,
    path,
    points: points.map(pointData),
    today: today === null ? null : pointData(today),
    crossings: crossings.map(({ id, value, goesOver }) => ({ id, value, goesOver })),
  }
  return jsonText(data)
}

function sweepCsv({ path, points, measures }: Sweep): string {
  const own = measures.map(({ name }) => name)
  return tableCsv({
    columns: [path, ...own, 'worstLimit', 'gap'].map((label) => ({ label, unit: '' })),
    rows: points.map(({ value, figures, worstLimit, gap }) => [
      value,
      ...figures,
      worstLimit,
      gap === null ? null : sentenceOf(gap),
    ]),
  })
}

const column = 14

/** A table of at most 80 columns, the build as it is below it, the limits crossed. */
function sweepText(
  name: string,
  { label, field, measures, points, today, crossings }: Sweep,
  system: UnitSystem,
): string {
  const unit = benchUnitOf(field)
  const inUnit = (value: number) => `${Number(value.toPrecision(10))}${unit === '' ? '' : ` ${unit}`}`
  const shown = measures.slice(0, 4)
  const units = shown.map(({ kind }, at) => {
    const sizes = points.map(({ figures }) => Math.abs(figures[at] ?? 0))
    return displayUnit(kind, system, Math.max(...sizes))
  })
  const line = ({ value, figures, gap }: SweepPoint) => {
    const start = inUnit(value).padStart(column + 2)
    if (gap !== null) return wrapped(sentenceOf(gap), width, ' '.repeat(column + 4), `${start}  `)
    const cells = shown.map(({ kind }, at) =>
      format(figures[at] ?? null, kind, system, units[at]).text.padStart(column),
    )
    return [`${start} ${cells.join(' ')}`]
  }
  const heads = shown.flatMap((measure, at) =>
    wrapped(`${at + 1}: ${measure.label}${units[at] === '' ? '' : `, ${units[at]}`}`, width, '   '),
  )
  const numbers = `${''.padStart(column + 2)} ${shown.map((_, at) => `(${at + 1})`.padStart(column)).join(' ')}`
  const crossed = crossings.flatMap(({ label: limit, value, goesOver }) =>
    wrapped(`${limit}: ${goesOver ? 'over' : 'kept'} from ${inUnit(value)} on`, width, '    ', '  '),
  )
  const blocks = [
    [...wrapped(oneLine(name, 200), width), ...wrapped(`${oneLine(label, 200)} varied`, width)],
    heads,
    [numbers, ...points.flatMap(line)],
    today === null ? [] : ['As it is:', ...line(today)],
    crossed.length === 0 ? ['No limit is crossed.'] : ['Limits crossed:', ...crossed],
    wrapped(caution, width),
  ]
  return `${blocks
    .filter((lines) => lines.length > 0)
    .map((lines) => lines.join('\n'))
    .join('\n\n')}\n`
}
