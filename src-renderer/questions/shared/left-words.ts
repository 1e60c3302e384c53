import { secondsPerMinute } from '../../../shared-engine/units/factors.ts'

/** How long work goes on, as a person says it: "about 4 s left", "about 3 min left". */
export function leftWords(seconds: number): string {
  if (seconds >= 90) return `about ${Math.round(seconds / secondsPerMinute)} min left`
  return `about ${Math.max(1, Math.round(seconds))} s left`
}
