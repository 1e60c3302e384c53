/** A paper that the sheet is laid out for. */
export type Paper = 'a4' | 'letter'

/** Names of the papers, as style sheets and people know them. */
export const paperWords: Readonly<Record<Paper, string>> = { a4: 'A4', letter: 'Letter' }
