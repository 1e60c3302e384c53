import { readStoredBuild } from '../../../shared-engine/entries/read.ts'
import type { StoredBuild } from '../../../shared-engine/entries/schema.ts'
import { compare, mostCompared, type Comparison } from '../../../shared-engine/compare/compare.ts'
import { oneLine } from '../../../shared-engine/mistakes/shown.ts'
import { marginText } from '../../../shared-engine/limits/margin-words.ts'
import { displayUnit, format } from '../../../shared-engine/units/display.ts'
import type { UnitSystem } from '../../../shared-engine/units/kinds.ts'
import { wrapped } from '../../../shared-engine/explain/wrap.ts'
import { contentOf, readsInputTwice } from '../build-file.ts'
import type { CheckManner } from '../check/run.ts'
import { exit, exitOf } from '../exit.ts'
import type { Io } from '../io.ts'
import { mistake, report } from '../trouble.ts'
import { jsonText } from '../json.ts'
import { caution } from '../../../shared-engine/constants.ts'

const width = 80

/** Puts builds side by side; gives the exit code. */
export function compareBuilds(files: readonly string[], { json, system }: CheckManner, io: Io): number {
  if (files.length < 2) {
    const allowed = 'pitchline compare <build> <build>, up to 4'
    return report(io, 'pitchline', [mistake('missing-argument', { value: 'a second build', allowed })])
  }
  if (files.length > mostCompared) {
    return report(io, 'pitchline', [
      mistake('too-many-arguments', { value: files[mostCompared] ?? '', allowed: 'up to 4 builds' }),
    ])
  }
  if (readsInputTwice(files, io)) return exit.unreadable
  // Every file is read before any is given up, so that the mistakes of all are reported at once.
  const read = files.map((file) => contentOf(file, readStoredBuild, io))
  const builds = read.filter((build): build is StoredBuild => build !== null)
  if (builds.length < read.length) return exit.unreadable
  const comparison = compare(builds)
  io.out(json ? comparisonJson(comparison) : comparisonText(comparison, system))
  return exitOf(comparison.checked.flatMap(({ limits }) => limits))
}

function comparisonJson({ checked, figures, entries, limits }: Comparison): string {
  const data = {
    format: 'pitchline-compare',
    version: 1,
    names: checked.map(({ name }) => name),
    entries: entries.map(({ path, values }) => ({ path, values: values.map((value) => value ?? null) })),
    figures: Object.fromEntries(figures.map(({ figure, values }) => [figure.name, values])),
    limits: limits.map(({ id, rows }) => ({
      id,
      builds: rows.map(
        (row) =>
          row && { actual: row.actual, allowed: row.allowed, margin: row.margin, standing: row.standing },
      ),
    })),
  }
  return jsonText(data)
}

const column = 11
const labels = 31

/** At most 80 columns: names by number, then a column for each build. */
function comparisonText({ checked, figures, entries, limits }: Comparison, system: UnitSystem): string {
  const cells = (texts: readonly string[]) =>
    texts.map((text) => oneLine(text, column).padStart(column)).join(' ')
  const row = (label: string, texts: readonly string[]) =>
    `${oneLine(label, labels).padEnd(labels)} ${cells(texts)}`.trimEnd()
  const heading = (text: string) =>
    row(
      text,
      checked.map((_, at) => `(${at + 1})`),
    )
  const shownEntry = (value: unknown) => (value === undefined ? '–' : String(value))
  const figureRows = figures.flatMap(({ figure: { label, kind }, values }) => {
    if (values.every((value) => value === null)) return []
    const unit = displayUnit(kind, system, Math.max(...values.map((value) => Math.abs(value ?? 0))))
    return [
      row(
        unit === '' ? label : `${label}, ${unit}`,
        values.map((value) => format(value, kind, system, unit).text),
      ),
    ]
  })
  const blocks = [
    checked.flatMap(({ name }, at) => wrapped(`(${at + 1}) ${oneLine(name, 200)}`, width, '    ')),
    entries.length === 0
      ? ['No entry differs.']
      : [
          heading('Entries that differ'),
          ...entries.map(({ path, values }) => row(path, values.map(shownEntry))),
        ],
    [heading('Figures'), ...figureRows],
    [
      heading('Margins, worst first'),
      ...limits.map(({ id, rows }) =>
        row(
          id,
          rows.map((limit) =>
            limit === null ? '–' : limit.margin === null ? 'over' : marginText(limit.margin),
          ),
        ),
      ),
    ],
    wrapped(caution, width),
  ]
  return `${blocks.map((lines) => lines.join('\n')).join('\n\n')}\n`
}
