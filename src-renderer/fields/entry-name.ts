import { fieldOf, groups } from '../../shared-engine/entries/fields.ts'
import { patternOf } from '../../shared-engine/entries/path.ts'
import { partName } from './forms.ts'
import { partOfPath } from './part-of-path.ts'

/**
 * What a person calls an entry or a group of entries, never its key in the file.
 *
 * @example entryLabel('stages.0.joint') // 'Wheel on its shaft'
 */
export const entryLabel = (path: string): string =>
  fieldOf(path)?.label ?? groups[patternOf(path)]?.label ?? path

/**
 * The same with the part that it belongs to, and which of several it is.
 *
 * @example entryName('wires.1.areaMm2') // 'Section of the copper (Wires 2)'
 */
export function entryName(path: string): string {
  const part = partOfPath(path)
  const [head = '', index = ''] = path.split('.')
  const which = head !== 'stages' && /^\d+$/.test(index) ? ` ${Number(index) + 1}` : ''
  return `${entryLabel(path)} (${partName(part)}${which})`
}
