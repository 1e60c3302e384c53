/** A number to so many figures, with no zeros at its end beyond the point and a true minus. */
export function shown(value: number, figures = 3): string {
  const rounded = Number(value.toPrecision(figures))
  return rounded.toLocaleString('en-GB', { maximumSignificantDigits: figures }).replace('-', '−')
}

/** How far a figure is from what was measured, in percent of the latter: `+12 %`, `−0.4 %`, `0 %`. */
export function errorOf(figure: number, measured: number): string {
  const percent = 100 * (figure / measured - 1)
  const rounded = Math.abs(percent) < 10 ? Math.round(10 * percent) / 10 : Math.round(percent)
  if (rounded === 0) return '0 %'
  return `${rounded > 0 ? '+' : '−'}${Math.abs(rounded)} %`
}

/** The same of several, each against its own. */
export function errorsOf(pairs: readonly (readonly [figure: number, measured: number])[]): string {
  return [...new Set(pairs.map(([figure, measured]) => errorOf(figure, measured)))].join(', ')
}

/**
 * The word for the way in which figures are off: low, high, or either way where they are not on one side.
 *
 * @param low, high words for too little and too much, for this case
 */
export function directionOf(
  pairs: readonly (readonly [figure: number, measured: number])[],
  low: string,
  high: string,
): string {
  const shares = pairs.map(([figure, measured]) => figure / measured - 1)
  const agree = 5e-3 // half a percent is agreement: what is measured has no more figures
  const below = shares.some((share) => share < -agree)
  const above = shares.some((share) => share > agree)
  if (below && above) return 'either way'
  return below ? low : above ? high : 'none'
}

/** How far a figure is outside of a measured range: against its nearer end; 0 within. */
export function rangeError(figure: number, low: number, high: number): readonly [number, number] {
  if (figure < low) return [figure, low]
  return figure > high ? [figure, high] : [figure, figure]
}
