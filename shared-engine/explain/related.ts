import type { Checked } from '../check.ts'
import { workingOf } from './table.ts'

const figureMark = 'figure:'

/**
 * The entries that a figure or a limit hangs on: those that its working puts in, and those behind the figures that it
 * puts in. Of several load cases it is the worst one that speaks: an entry that moves another case alone is not named.
 *
 * @param subject a figure's name or a limit's id
 * @returns paths in the order in which the working comes to them; none for a name that this machine cannot have
 * *Source:* the workings themselves; test/engine/workings moves every entry and looks at what moves with it.
 * @example entriesBehind(checked, 'advancePerMotorTurnM').slice(0, 2) // ['track.sprocketTeeth', 'track.pitchMm']
 */
export function entriesBehind(checked: Checked, subject: string): readonly string[] {
  const paths = new Set<string>()
  const seen = new Set<string>()
  const waiting = [subject]
  for (let name = waiting.shift(); name !== undefined; name = waiting.shift()) {
    if (seen.has(name)) continue
    seen.add(name)
    for (const { from } of workingOf(checked, name)?.symbols ?? []) {
      if (from === undefined) continue
      if (from.startsWith(figureMark)) waiting.push(from.slice(figureMark.length))
      else paths.add(from)
    }
  }
  return [...paths]
}
