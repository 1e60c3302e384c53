import type { ColumnEvidence } from '../../../shared-engine/log/columns/evidence.ts'
import { channelRows, logUnits, type ChannelId } from '../../../shared-engine/reference/columns.ts'
import { channelLabels } from './log-words.ts'

const byWords = {
  choice: 'as you said',
  time: 'numbers that rise as time does',
  name: 'by its heading',
} as const
const unitWords = {
  choice: 'unit as you said',
  heading: 'unit in the heading',
  cells: 'unit in the cells',
  usual: 'unit: the usual one',
} as const

/** What a column's meaning rests on, in a few words. */
export function evidenceTold({ by, unitFrom, named, isTaken }: ColumnEvidence): string {
  if (by === null && named !== null)
    return isTaken
      ? `heading says ${channelLabels[named].toLowerCase()}, which another column is`
      : `heading says ${channelLabels[named].toLowerCase()}, but this machine cannot have such numbers`
  if (by === null) return 'its heading names nothing that is read'
  return unitFrom === null ? byWords[by] : `${byWords[by]}; ${unitWords[unitFrom]}`
}

/** Seen numbers of a column, as the file has them. */
export function numbersTold({ first, least, most }: ColumnEvidence): string {
  if (first === null || least === null || most === null) return 'no numbers'
  const text = (value: number) => String(Number(value.toPrecision(7)))
  return least === most ? text(first) : `${text(first)}; ${text(least)} to ${text(most)}`
}

/** Units that a column of a channel may be in: of those that mean the same the first. */
export function unitsFor(channel: ChannelId | null): readonly string[] {
  const kind = channelRows.find(({ id }) => id === channel)?.kind
  const all = [...logUnits.values()].filter((unit) => unit.kind === kind)
  return all
    .filter(
      (unit, at) => all.findIndex(({ times, zero }) => times === unit.times && zero === unit.zero) === at,
    )
    .map(({ key }) => key)
}
