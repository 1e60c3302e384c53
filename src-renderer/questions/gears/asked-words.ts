import { measureWords, type SearchForm } from './form.ts'

/** What is asked of a search in a line: "4 entries varied; nothing over, top speed at least 40 km/h; least tooth force". */
export function askedWords(form: SearchForm): string {
  const varied = form.rows.filter((row) => row.on).length + (form.motors.length > 0 ? 1 : 0)
  const bounds = form.bounds.map(
    ({ figure, side, text }) =>
      `${measureWords(figure).label.toLowerCase()} at ${side === 'atLeast' ? 'least' : 'most'} ${text}`,
  )
  const aims = form.aims.map(({ figure, best }) => `${best} ${measureWords(figure).label.toLowerCase()}`)
  const held = [form.inHand === null ? 'limits not held' : heldWords(form.inHand), ...bounds].join(', ')
  return `${varied} entr${varied === 1 ? 'y' : 'ies'} varied; ${held}; ${aims.join(' and ')}`
}

/** How much of every limit is kept in hand. */
export function heldWords(inHand: number | null): string {
  if (inHand === null) return 'not held'
  return inHand === 0 ? 'nothing over' : `${Math.round(inHand * 100)} % in hand`
}
