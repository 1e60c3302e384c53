import { workingOf, type Checked, type Working } from '../../shared-engine/index.ts'
import { alarmsOf, type Alarm } from '../../shared-engine/alarms/alarms.ts'

/** The alarm whose working has this name ("alarm:rpm"); undefined for a figure's or a limit's. */
export function alarmOf(checked: Checked, id: string): Alarm | undefined {
  return id.startsWith('alarm:') ? alarmsOf(checked).find(({ working }) => working.subject === id) : undefined
}

/** The working of a figure, a limit or an alarm; null where this build has none of it. */
export function workingIn(checked: Checked, id: string): Working | null {
  return alarmOf(checked, id)?.working ?? workingOf(checked, id)
}
