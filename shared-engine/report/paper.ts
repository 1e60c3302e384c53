/** A paper that the sheet is laid out for. */
export type Paper = 'a4' | 'letter'

/** Names of the papers, as style sheets and people know them. */
export const paperWords: Readonly<Record<Paper, string>> = { a4: 'A4', letter: 'Letter' }

/** Width and height in points, 1/72 inch. *Source:* ISO 216, A4: 210 mm by 297 mm; ANSI/ASME Y14.1, A: 8.5 in by 11 in. */
export const paperSizes: Readonly<Record<Paper, readonly [width: number, height: number]>> = {
  a4: [(210 / 25.4) * 72, (297 / 25.4) * 72],
  letter: [8.5 * 72, 11 * 72],
}
