import { entryLabel } from '../fields/entry-name.ts'

const named = 2

/**
 * The assumed entries that decide a standing, in a few words.
 *
 * @param paths the strongest first
 * @example restWords(['stages.1.widthMm']) // 'by an assumed belt width'
 */
export function restWords(paths: readonly string[]): string {
  const words = paths.slice(0, named).map((path) => {
    const label = entryLabel(path)
    return label.charAt(0).toLowerCase() + label.slice(1)
  })
  return `by an assumed ${words.join(', ')}${paths.length > named ? ` and ${paths.length - named} more` : ''}`
}
