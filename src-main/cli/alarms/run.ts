import { check } from '../../../shared-engine/check.ts'
import { alarmCaution, alarmsOf, type Alarm } from '../../../shared-engine/alarms/alarms.ts'
import { alarmWords, signalLost } from '../../../shared-engine/alarms/words.ts'
import { oneLine } from '../../../shared-engine/mistakes/shown.ts'
import { differenceFromEngine } from '../../../shared-engine/units/convert.ts'
import { format, numberText } from '../../../shared-engine/units/display.ts'
import type { UnitSystem } from '../../../shared-engine/units/kinds.ts'
import { wrapped } from '../../../shared-engine/explain/wrap.ts'
import { buildOf } from '../build-file.ts'
import { exit, exitOf } from '../exit.ts'
import type { Io } from '../io.ts'
import { jsonText } from '../json.ts'

/** Prints the alarm card of a build; gives the exit code. */
export function alarmCard(
  file: string,
  manner: { readonly json: boolean; readonly system: UnitSystem },
  io: Io,
): number {
  const build = buildOf(file, io)
  if (build === null) return exit.unreadable
  const checked = check(build)
  const rows = alarmsOf(checked)
  if (manner.json) {
    const card = {
      format: 'pitchline-alarms',
      version: 1,
      name: build.name,
      alarms: rows,
      caution: alarmCaution,
    }
    io.out(jsonText(card))
  } else {
    const lines = rows.flatMap((row) => alarmLines(row, rows, manner.system))
    const head = wrapped(`Alarm card: ${oneLine(build.name, 160)}`, 80)
    const lost = wrapped(`${signalLost.label}: ${signalLost.words}`, 80, '  ')
    io.out(`${[...head, '', ...lines, ...lost, '', ...wrapped(alarmCaution, 80)].join('\n')}\n`)
  }
  return exitOf(checked.limits)
}

const leads = { guards: 'Guards: ', 'in part': 'Guards in part: ', 'can’t guard': '' } as const

/** What to set, then what it comes from and what it can guard, each further in. */
function alarmLines(alarm: Alarm, alarms: readonly Alarm[], system: UnitSystem): readonly string[] {
  const { label, direction, value, kind, holdSeconds, hysteresis, warningSeconds, working } = alarm
  if (value === null) return wrapped(`${label}: no alarm; ${working.missing ?? ''}`, 80, '  ')
  const { text, unit } = format(value, kind, system)
  const back =
    hysteresis === null
      ? ''
      : `, quiet again ${numberText(differenceFromEngine(hysteresis, kind, unit))} ${unit} back`
  const warning = warningSeconds === null ? '' : `; ${numberText(warningSeconds)} s of warning`
  const hold = `held ${numberText(holdSeconds)} s`
  const words = alarmWords(alarm, alarms, system)
  return [
    ...wrapped(`${label}: ${direction} ${text} ${unit} (${hold}${back})${warning}`, 80, '  '),
    ...(words === null
      ? []
      : wrapped(`from ${words.from}. ${leads[words.verdict]}${words.guards}`, 80, '      ', '    ')),
  ]
}
