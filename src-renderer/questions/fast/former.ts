import type { Checked } from '../../../shared-engine/index.ts'

/** What a change must move to be held beside what was there before: what the plots of this question show. */
const shown = [
  'topSpeedMps',
  'topMotorRpm',
  'freeRpm',
  'startThrustN',
  'gripThrustN',
  'groundResistanceN',
] as const

/** Less than this share is a difference that no curve and no number shows. */
const leastShare = 5e-4

/** Whether two states of the build differ in what is shown of them. */
export function isMoved(former: Checked, now: Checked): boolean {
  return shown.some((name) => {
    const [before, after] = [former.figures[name], now.figures[name]]
    if (before === null || after === null) return before !== after
    return Math.abs(after - before) > leastShare * Math.max(Math.abs(before), Math.abs(after))
  })
}
