import { channelRows, type ChannelId } from '../../reference/columns.ts'
import type { ColumnsChoice } from './choice.ts'
import type { ReadLog } from '../read.ts'
import type { GridColumn } from '../text/grid.ts'
import { foldedName } from '../text/heading.ts'
import { classesOf, scoreOf } from './words.ts'

/** What a column's meaning rests on. */
export interface ColumnEvidence {
  /** First number of the file, and least and largest of the first thousand; null without one. As written. */
  readonly first: number | null
  readonly least: number | null
  readonly most: number | null
  /** Who says what it means: a person, its name, its numbers being times; null: nothing does. */
  readonly by: 'choice' | 'name' | 'time' | null
  /** Where its unit comes from; null for none. */
  readonly unitFrom: 'choice' | 'heading' | 'cells' | 'usual' | null
  /** What its name would say, where it is not used for that. */
  readonly named: ChannelId | null
  /** Whether another column has that meaning; else the machine cannot have such numbers. */
  readonly isTaken: boolean
}

/** What the meaning of each column of a log rests on, in their order. */
export function evidenceOfColumns(
  { text, columns, stamps }: ReadLog,
  choice: ColumnsChoice,
): readonly ColumnEvidence[] {
  return text.grid.columns.map((column, place) => {
    const own = columns.find((one) => one.place === place)
    const laid = choiceOf(choice, text.grid.columns, place)
    const isTime = place === stamps.place
    const named = own === undefined && !isTime ? namedBy(column) : null
    const numbers = column.firstNumbers(text.grid.count)
    const ranked = numbers.toSorted((one, other) => one - other)
    return {
      first: numbers[0] ?? null,
      least: ranked[0] ?? null,
      most: ranked.at(-1) ?? null,
      by: laid?.channel !== undefined ? 'choice' : isTime ? 'time' : own === undefined ? null : 'name',
      unitFrom:
        own === undefined || own.unit === null
          ? null
          : laid?.unit !== undefined
            ? 'choice'
            : own.unit.key === column.unit?.key
              ? 'heading'
              : own.unit.key === column.cellUnit
                ? 'cells'
                : 'usual',
      named,
      isTaken: columns.some(({ channel }) => channel === named),
    }
  })
}

function choiceOf({ columns = {} }: ColumnsChoice, all: readonly GridColumn[], place: number) {
  const name = foldedName(all[place]?.name ?? '')
  const key = Object.keys(columns).find((one) => foldedName(one) === name) ?? String(place + 1)
  return columns[key]
}

/** The channel that a column's words say; null where they say none. */
function namedBy({ name, unit }: GridColumn): ChannelId | null {
  const classes = classesOf(name, unit)
  const scored = channelRows.map((row) => ({ id: row.id, score: scoreOf(row, classes, unit) }))
  const best = scored.toSorted((one, other) => other.score - one.score)[0]
  return best !== undefined && best.score > 0 ? best.id : null
}
