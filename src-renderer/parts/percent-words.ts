/** "50 %", "57.7 %": a throttle as it is shown wherever it is looked at. */
export function percentWords(percent: number): string {
  return `${Math.round(percent * 10) / 10}\u202F%`
}
