import type { ColumnChoice, ColumnsChoice } from '../../../shared-engine/log/columns/choice.ts'
import type { ColumnReading } from '../../../shared-engine/log/result.ts'
import { foldedName } from '../../../shared-engine/log/text/heading.ts'
import type { ChannelId } from '../../../shared-engine/reference/columns.ts'

/** How a choice names a column: by its heading where no other has the same, else by its number from 1. */
export function columnKey(columns: readonly Pick<ColumnReading, 'name'>[], place: number): string {
  const name = columns[place]?.name ?? ''
  const alike = columns.filter((one) => foldedName(one.name) === foldedName(name))
  return alike.length === 1 && name.trim() !== '' ? name : String(place + 1)
}

/** A choice with one column's meaning laid down; another column that was given the same meaning before loses it. */
export function withColumn(
  choice: ColumnsChoice,
  columns: readonly Pick<ColumnReading, 'name'>[],
  place: number,
  channel: ChannelId | null,
): ColumnsChoice {
  const kept = Object.entries(choice.columns ?? {}).filter(
    ([, one]: [string, ColumnChoice]) => channel === null || one.channel !== channel,
  )
  // A unit of another kind of channel would not fit the new one.
  return { ...choice, columns: { ...Object.fromEntries(kept), [columnKey(columns, place)]: { channel } } }
}

/** A choice with one column's unit, or factor, laid down; null: as the program sees it. */
export function withPart<Name extends 'unit' | 'factor'>(
  choice: ColumnsChoice,
  columns: readonly ColumnReading[],
  place: number,
  name: Name,
  value: ColumnChoice[Name] | null,
): ColumnsChoice {
  const key = columnKey(columns, place)
  const { [key]: own = {}, ...others } = choice.columns ?? {}
  const kept = Object.fromEntries(Object.entries(own).filter(([one]) => one !== name)) as ColumnChoice
  return { ...choice, columns: { ...others, [key]: value === null ? kept : { ...kept, [name]: value } } }
}

/** The factor that was laid down for a column; 1 where none was. */
export function factorIn(
  { columns = {} }: ColumnsChoice,
  all: readonly ColumnReading[],
  place: number,
): number {
  return columns[columnKey(all, place)]?.factor ?? 1
}

/** Whether nothing was laid down. */
export function isPlain({ columns = {}, ...rest }: ColumnsChoice): boolean {
  return Object.keys(columns).length === 0 && Object.values(rest).every((one) => one === undefined)
}
