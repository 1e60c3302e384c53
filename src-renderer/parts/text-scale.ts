/** px of the page's letters where nobody has asked for larger ones: the browsers' own default. */
const usual = 16

/** How much larger than usual the person asked the system or the browser to set letters: 1.25 for 20 px in place of 16. */
export function textScale(): number {
  const size = Number.parseFloat(getComputedStyle(document.documentElement).fontSize)
  return Number.isFinite(size) && size > 0 ? size / usual : 1
}
