import type { Changes } from '../../../shared-engine/log/changes/result.ts'
import {
  changesAnswer,
  changeSentence,
  changesNotes,
  conditionsTold,
  notComparedSentence,
} from '../../../shared-engine/log/changes/sentences.ts'
import { repairWords } from '../../../shared-engine/log/story/repair-words.ts'
import { sentenceOf, tellingOf } from '../../../shared-engine/log/story/sentence.ts'
import { factLines } from '../../../shared-engine/log/story/fact-lines.ts'
import type { LogResult } from '../../../shared-engine/log/result.ts'
import { wrapped } from '../../../shared-engine/explain/wrap.ts'
import { oneLine } from '../../../shared-engine/mistakes/shown.ts'
import { formatText } from '../../../shared-engine/units/display.ts'
import type { UnitSystem } from '../../../shared-engine/units/kinds.ts'

const width = 80

/** Said below every log. */
const caution =
  'A log shows what its sensors saw, not what broke: look at the machine before it runs again, on a stand, pack unplugged first. Estimates, not approvals: follow the makers’ limits and your local rules.'

/** Wrapped lines, two blanks in front of the first and four of the others. */
const indented = (text: string) => wrapped(text, width, '    ', '  ')

/** A log for a person: the story in order of time, facts, repairs, what was not judged, cautions. */
export function logText(
  result: LogResult,
  file: string,
  system: UnitSystem,
  changes: readonly Changes[] = [],
): string {
  const blocks = [
    headLines(result, file),
    storyLines(result, system),
    ['Facts', ...factLines(result.facts, system).flatMap(factLine)],
    alarmLines(result),
    ...changes.map((one) => changesLines(one, system)),
    repairLines(result),
    result.notes.flatMap((note) => wrapped(`Note: ${oneLine(note, 600)}`, width, '  ')),
    wrapped(caution, width),
  ]
  return `${blocks
    .filter((lines) => lines.length > 0)
    .map((lines) => lines.join('\n'))
    .join('\n\n')}\n`
}

/** Label and value; what does not fit the page goes below. */
function factLine([label, value]: readonly [string, string]): readonly string[] {
  return wrapped(value, width, ' '.repeat(39), `  ${label.padEnd(36)}`)
}

function headLines({ build, reading, segments, rpmScale }: LogResult, file: string): readonly string[] {
  const parts = segments.length === 1 ? 'one segment' : `${segments.length} segments`
  const seconds = segments.reduce((sum, one) => sum + one.seconds, 0)
  const rows = segments.reduce((sum, one) => sum + one.rows, 0)
  const start = reading.start === null ? '' : `, begun ${reading.start}`
  const rpm = rpmScale === null ? '' : `, rpm read as ${rpmScale.meaning}`
  return [
    ...wrapped(`Log of ${oneLine(build, 120)}: ${oneLine(file, 160)}`, width),
    ...wrapped(`${rows} rows in ${parts}, ${formatText(seconds, 'time', 'metric')}${start}${rpm}.`, width),
  ]
}

function storyLines({ episodes, facts, segments }: LogResult, system: UnitSystem): readonly string[] {
  if (episodes.length === 0) return ['What happened', '  Nothing that a log like this can tell of.']
  const telling = tellingOf(facts, segments.length, system)
  const lines = episodes.flatMap((episode) => {
    const mark = episode.over ? '! ' : '  '
    return wrapped(sentenceOf(episode, telling), width, '  ', mark)
  })
  return ['What happened (! a limit was passed, or something went)', ...lines]
}

function changesLines(found: Changes, system: UnitSystem): readonly string[] {
  const { against, changes, notCompared } = found
  return [
    ...wrapped(
      `${against === 'log' ? 'Before and after' : 'This run and its build'}: ${changesAnswer(found)}`,
      width,
    ),
    ...changes.flatMap((one) => [
      ...wrapped(changeSentence(one, against, system), width, '    ', one.told ? '* ' : '  '),
      ...wrapped(`(${conditionsTold(one, system)})`, width, '    '),
    ]),
    ...notCompared.flatMap((one) => indented(notComparedSentence(one, system))),
    ...changesNotes(found).flatMap(indented),
  ]
}

function alarmLines({ alarms }: LogResult): readonly string[] {
  if (alarms.length === 0) return []
  const lines = alarms.flatMap(({ id, spoke, falseAlarms, missed, firstAt }) => {
    const label = oneLine(id, 40)
    if (spoke === null) return [`  ${label}: the log lacks its channel`]
    const first = firstAt === null ? '' : `, first at ${firstAt.t.toFixed(1)} s`
    return indented(
      `${label}: spoke ${spoke} ${spoke === 1 ? 'time' : 'times'}${first}; ${falseAlarms ?? 0} with nothing behind it, passages unannounced: ${missed ?? 0}`,
    )
  })
  return ['Alarms, replayed', ...lines]
}

function repairLines({ repairs }: LogResult): readonly string[] {
  if (repairs.length === 0) return ['Repairs', '  none: every row and value was taken as it stands']
  const lines = repairs.flatMap(({ code, channel, count, firstRow }) =>
    indented(
      `${count} × ${repairWords[code]}${channel === null ? '' : ` (${channel})`}; first in line ${firstRow}`,
    ),
  )
  return ['Repairs: what was left out or changed', ...lines]
}
