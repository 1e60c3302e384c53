/** Longest bar: a third past its line; what is further over is cut there, and the numbers say how far. */
const longest = 4 / 3

/**
 * Length of a limit's bar, 1 at the allowed line: what is used of the limit, whatever its sense. A limit whose margin
 * cannot be formed is drawn full.
 *
 * @param margin 1 − actual/allowed (or its like for minima and temperatures); null where it cannot be formed
 */
export function barOf(margin: number | null): number {
  return margin === null ? longest : Math.min(longest, Math.max(0, 1 - margin))
}

/** "12 % in hand", "8 % over"; "past any" where no margin can be formed. */
export function marginWords(margin: number | null): string {
  if (margin === null) return 'past any'
  const percent = Math.abs(margin) * 100
  const text = percent >= 1000 ? '> 1,000' : percent >= 10 ? String(Math.round(percent)) : percent.toFixed(1)
  return margin < 0 ? `${text}\u202F% over` : `${text}\u202F% in hand`
}
