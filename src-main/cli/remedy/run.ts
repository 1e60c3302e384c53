import { shownEntry } from '../../../shared-engine/entries/entry-reader.ts'
import { check } from '../../../shared-engine/check.ts'
import { remediesFor, type Remedies, type Remedy } from '../../../shared-engine/remedy/remedy.ts'
import { oneLine } from '../../../shared-engine/mistakes/shown.ts'
import { marginText } from '../../../shared-engine/limits/margin-words.ts'
import { formatText } from '../../../shared-engine/units/display.ts'
import type { UnitSystem } from '../../../shared-engine/units/kinds.ts'
import { wrapped } from '../../../shared-engine/explain/wrap.ts'
import { buildOf } from '../build-file.ts'
import { exit, exitOf } from '../exit.ts'
import type { Io } from '../io.ts'
import { mistake, report } from '../trouble.ts'
import { jsonText } from '../json.ts'

/** Prints what would hold; gives the exit code. */
export function remedyBuild(
  file: string,
  asked: string,
  manner: { readonly json: boolean; readonly system: UnitSystem },
  io: Io,
): number {
  const build = buildOf(file, io)
  if (build === null) return exit.unreadable
  const { limits } = check(build)
  const limit = limits.find(({ id }) => id === asked)?.id
  if (asked !== '' && limit === undefined) {
    const allowed = limits.map(({ id }) => id).join(', ')
    return report(io, file, [mistake('no-such-limit', { value: `"${oneLine(asked, 60)}"`, allowed })])
  }
  const found = remediesFor(build, limit)
  io.out(
    manner.json
      ? jsonText({ format: 'pitchline-remedy', version: 1, ...found })
      : remedyText(found, manner.system),
  )
  return exitOf(limits)
}

const percent = (margin: number | null) => formatText(margin, 'fraction', 'metric')

function remedyText(
  { name, limit, marginNow, target, holds, remedies }: Remedies,
  system: UnitSystem,
): string {
  const head = wrapped(
    `${oneLine(name, 160)}: ${limit ?? 'no limit'}, margin ${marginText(marginNow)}, wanted ${percent(target)}`,
    80,
  )
  if (holds) return `${[...head, 'Nothing to change.'].join('\n')}\n`
  const block = (heading: string, rows: readonly Remedy[]) =>
    rows.length === 0 ? [] : ['', heading, ...rows.flatMap((row) => remedyLines(row, system))]
  const lines = [
    ...head,
    ...block(
      'Each of these alone would do',
      remedies.filter((one) => one.reached),
    ),
    ...block(
      'Cannot be reached by these alone; the best they can do',
      remedies.filter((one) => !one.reached),
    ),
    ...(remedies.length === 0 ? ['No single entry that a builder controls moves it.'] : []),
  ]
  return `${lines.join('\n')}\n`
}

function remedyLines(remedy: Remedy, system: UnitSystem): string[] {
  const { path, label, from, to, margin, topSpeedBefore, topSpeedAfter, newlyOver, newlyNear, cleared } =
    remedy
  const shown = (value: number | string | null) =>
    value === null ? 'none' : typeof value === 'number' ? shownEntry(path, value) : value
  const list = (word: string, ids: readonly string[]) =>
    ids.length === 0 ? [] : [`${word}: ${ids.join(', ')}`]
  const speed =
    topSpeedAfter === topSpeedBefore
      ? []
      : [
          `top speed ${formatText(topSpeedBefore, 'speed', system)} to ${formatText(topSpeedAfter, 'speed', system)}`,
        ]
  const effects = [
    `margin ${marginText(margin)}`,
    ...speed,
    ...list('now over', newlyOver),
    ...list('now near', newlyNear),
    ...list('no longer over', cleared),
  ].join('; ')
  return [
    ...wrapped(`${label}: ${shown(from)} to ${shown(to)} (${path})`, 80, '    ', '  '),
    ...wrapped(effects, 80, '      ', '      '),
  ]
}
