/** Papers that the sheet is laid out for. On A3 the one page has letters for the workshop wall, read from a step away. */
export const papers = ['a4', 'letter', 'a3'] as const
export type Paper = (typeof papers)[number]

/** Names of the papers, as style sheets and people know them. */
export const paperWords = { a4: 'A4', letter: 'Letter', a3: 'A3' } as const satisfies Record<Paper, string>

/** Width and height in points, 1/72 inch. *Source:* ISO 216: A4 210 mm by 297 mm, A3 297 mm by 420 mm; ANSI/ASME Y14.1, A: 8.5 in by 11 in. */
export const paperSizes: Readonly<Record<Paper, readonly [width: number, height: number]>> = {
  a4: [(210 / 25.4) * 72, (297 / 25.4) * 72],
  letter: [8.5 * 72, 11 * 72],
  a3: [(297 / 25.4) * 72, (420 / 25.4) * 72],
}
