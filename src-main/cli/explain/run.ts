import { check, type Checked } from '../../../shared-engine/check.ts'
import { figureOf, figureTable } from '../../../shared-engine/figures/table.ts'
import { limitNamed, limitsOf } from '../../../shared-engine/limits/table.ts'
import type { Mistake } from '../../../shared-engine/mistakes/mistake.ts'
import { bestOf, bestWords } from '../../../shared-engine/explain/best.ts'
import { orderOf } from '../../../shared-engine/explain/order.ts'
import { wrapped } from '../../../shared-engine/explain/wrap.ts'
import { stageFits } from '../../../shared-engine/limits/stage.ts'
import { workingText } from '../../../shared-engine/explain/text.ts'
import { workingOf } from '../../../shared-engine/explain/table.ts'
import { buildOf } from '../build-file.ts'
import { exit } from '../exit.ts'
import type { Io } from '../io.ts'
import { mistake, report } from '../trouble.ts'
import { jsonText } from '../json.ts'

/** Prints how one figure or limit of a build comes about. */
export function explainBuild(file: string, subject: string, json: boolean, io: Io): number {
  const build = buildOf(file, io)
  if (build === null) return exit.unreadable
  const checked = check(build)
  if (subject === 'order') {
    io.out(json ? jsonText({ order: stageFits(checked.machine), best: bestOf(checked) }) : orderText(checked))
    return exit.within
  }
  const working = workingOf(checked, subject)
  if (working === null) return report(io, file, [refusalOf(subject, checked)])
  io.out(json ? jsonText(working) : workingText(working))
  return exit.within
}

/** What to buy or cut, and where the motor is at its best. */
function orderText(checked: Checked): string {
  const lines = orderOf(checked, 'metric').flatMap(({ label, words }) =>
    wrapped(`${label}: ${words}`, 80, '  '),
  )
  const best = wrapped(bestWords(checked, 'metric'), 80)
  const source =
    'Source: lengths round the wheels, docs/model.md §4; chains in even numbers of links, belts in whole teeth.'
  return `${[...lines, ...best, ...wrapped(source, 80, '  ')].join('\n')}\n`
}

/** Why there is no working: the name is unknown, or the limit needs entries that this build does not have. */
function refusalOf(subject: string, checked: Checked): Mistake {
  const limit = limitNamed(subject)
  if (limit === undefined && figureOf(subject) === undefined) {
    const near = namesLike(subject, checked)
    return mistake('unknown-subject', {
      value: subject,
      allowed:
        near.length === 0
          ? 'a name that check prints, such as freeRpm or track.tooth-shear'
          : near.join(', '),
    })
  }
  const needs = limit?.needs ?? []
  return mistake('no-such-limit', {
    value: subject,
    allowed: needs.length === 0 ? '' : `it needs ${needs.join(', ')}`,
  })
}

/** Names that hold what was typed, or are held by it, whatever the capitals and dots. */
function namesLike(typed: string, { machine }: Checked): readonly string[] {
  const plain = (text: string) => text.toLowerCase().replace(/[^a-z0-9]/g, '')
  const wanted = plain(typed)
  if (wanted.length < 3) return []
  const names = [...figureTable.map(({ name }) => name), ...limitsOf(machine).map(({ id }) => id)]
  return names.filter((name) => plain(name).includes(wanted) || wanted.includes(plain(name))).slice(0, 6)
}
