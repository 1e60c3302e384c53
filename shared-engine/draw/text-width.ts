/** Widths of a humanist sans (shares of its size), by kind of letter: close enough to lay labels without a screen. */
const narrow = new Set([..."iljftI.,:;|!'() ·–"])
const wide = new Set([...'mwMW%@—−×'])

/**
 * About how wide a text will be, px; a few per cent off for any one font.
 *
 * @example textWidth('38.2 km/h', 13) > 40 && textWidth('38.2 km/h', 13) < 70 // true
 */
export function textWidth(text: string, size: number): number {
  let ems = 0
  for (const letter of text) {
    if (narrow.has(letter)) ems += 0.28
    else if (wide.has(letter)) ems += 0.82
    else if (letter >= 'A' && letter <= 'Z') ems += 0.6
    else ems += 0.5
  }
  return ems * size
}
