import type { Pattern } from '../../../shared-engine/drive/drive.ts'
import { storedPatternOf } from '../../../shared-engine/drive/rows.ts'

/** The pattern as the text of a file. */
export function patternText(pattern: Pattern): string {
  return `${JSON.stringify(storedPatternOf(pattern), null, 2)}\n`
}
