/**
 * What a line or a face is for; its colour is the theme's business. Series differ in dash and marker too, so that
 * no plot depends on colour alone.
 */
export type Role = 'paper' | 'ink' | 'quiet' | 'hairline' | 'accent' | 'near' | 'over' | SeriesRole

type SeriesRole = 'series1' | 'series2' | 'series3' | 'series4' | 'series5' | 'series6'

export type Marker = 'disc' | 'square' | 'triangle' | 'diamond' | 'cross' | 'ring' | 'flag'

/** How a series is told apart: colour (by role), dash and marker. */
export interface SeriesStyle {
  readonly role: SeriesRole
  readonly dash: readonly number[]
  readonly marker: Marker
}

export const seriesStyles: readonly SeriesStyle[] = [
  { role: 'series1', dash: [], marker: 'disc' },
  { role: 'series2', dash: [8, 3], marker: 'square' },
  { role: 'series3', dash: [2, 3], marker: 'triangle' },
  { role: 'series4', dash: [10, 3, 2, 3], marker: 'diamond' },
  { role: 'series5', dash: [5, 5], marker: 'cross' },
  { role: 'series6', dash: [14, 4], marker: 'ring' },
]

/** Style of the n-th series, counted from 0; starts again after six. */
export function seriesStyle(index: number): SeriesStyle {
  return seriesStyles[index % seriesStyles.length] ?? { role: 'series1', dash: [], marker: 'disc' }
}
