import type { Column, Row } from '../../../../shared-engine/report/block.ts'
import { colours, type Face, type Writer } from './writer.ts'

const gap = 6
/** Closely set rows nearly touch their rules. */
const paddingOf = (writer: Writer) => (writer.isClose ? 0.3 : 1.4)
const body: Face = { size: 8.5 }
const head: Face = { size: 8, colour: colours.quiet }

interface Place {
  readonly x: number
  readonly width: number
  readonly end: boolean
}

/** Where the columns stand: by their shares, numbers no narrower than their widest line. */
function placesOf(writer: Writer, columns: readonly Column[]): readonly Place[] {
  const all = columns.reduce((sum, { share }) => sum + share, 0)
  let x = writer.left
  return columns.map(({ share, align }) => {
    const width = (writer.width * share) / all
    const place = { x, width: width - gap, end: align === 'end' }
    x += width
    return place
  })
}

type Cells = readonly (readonly string[])[]

const cellsOf = (writer: Writer, texts: readonly string[], places: readonly Place[], face: Face): Cells =>
  texts.map((text, at) => writer.lines(text, places[at]?.width ?? 0, face))

const heightOf = (writer: Writer, cells: Cells, face: Face) =>
  Math.max(...cells.map(({ length }) => length)) * writer.lineHeight(face) + 2 * paddingOf(writer)

function putRow(writer: Writer, cells: Cells, places: readonly Place[], face: Face): void {
  const height = heightOf(writer, cells, face)
  cells.forEach((lines, at) => {
    const place = places[at]
    if (place === undefined) return
    lines.forEach((line, number) => {
      const x = place.end ? place.x + place.width - writer.widthOf(line, face) : place.x
      writer.put(line, x, writer.y + paddingOf(writer) + number * writer.lineHeight(face), face)
    })
  })
  writer.y += height
  writer.rule(writer.y)
}

function faceOf({ tone }: Row): Face {
  if (tone === undefined) return body
  return { ...body, colour: colours[tone], ...(tone === 'over' ? { weight: 'strong' } : {}) }
}

/** Height of a table's headings and its first row: what a heading above it has to have below itself. */
export function tableStart(writer: Writer, columns: readonly Column[], rows: readonly Row[]): number {
  const places = placesOf(writer, columns)
  const [first] = rows
  const heads = heightOf(
    writer,
    cellsOf(
      writer,
      columns.map(({ label }) => label),
      places,
      head,
    ),
    head,
  )
  return (
    heads +
    (first === undefined
      ? 0
      : heightOf(writer, cellsOf(writer, first.cells, places, faceOf(first)), faceOf(first)))
  )
}

/** A table; pages and columns of a page break between its rows, and each has its headings. */
export function putTable(writer: Writer, columns: readonly Column[], rows: readonly Row[]): void {
  const labels = columns.map(({ label }) => label)
  const putHeads = () => {
    const places = placesOf(writer, columns)
    putRow(writer, cellsOf(writer, labels, places, head), places, head)
  }
  writer.room(tableStart(writer, columns, rows))
  putHeads()
  for (const row of rows) {
    const face = faceOf(row)
    // As wide in every column of the page, but elsewhere: where it stands is asked once there is room.
    const cells = cellsOf(writer, row.cells, placesOf(writer, columns), face)
    if (writer.room(heightOf(writer, cells, face))) putHeads()
    putRow(writer, cells, placesOf(writer, columns), face)
  }
  writer.y += writer.isClose ? 2 : 6
}
