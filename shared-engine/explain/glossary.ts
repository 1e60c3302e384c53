import { glossary } from '../reference/glossary.ts'

/** A stretch of text; with a term where it is a word that the glossary explains. */
export interface Stretch {
  readonly text: string
  readonly term: string | null
}

const byForm = new Map(
  glossary.flatMap(({ term, forms }) => forms.map((form) => [form.toLowerCase(), term] as const)),
)
const escaped = (form: string) => form.replace(/[.*+?^${}()|[\]\\]/g, '\\$&')
/** Whole words alone, the longer form before a shorter one that begins like it. */
const forms = new RegExp(
  `(?<![\\p{L}-])(?:${[...byForm.keys()]
    .sort((a, b) => b.length - a.length)
    .map(escaped)
    .join('|')})(?![\\p{L}-])`,
  'giu',
)

/**
 * A text cut where it has words that the glossary explains, each term at its first place only: once explained, it need not
 * be pointed at again.
 *
 * @param said terms that were explained before, as in a list's rows above; those of this text are added
 * @returns stretches that together are the text
 * @example wordsExplained('More slip, less grip').map(({ term }) => term) // [null, 'slip', null, 'grip']
 */
export function wordsExplained(text: string, said = new Set<string>()): readonly Stretch[] {
  const stretches: Stretch[] = []
  let from = 0
  for (const match of text.matchAll(forms)) {
    const term = byForm.get(match[0].toLowerCase())
    if (term === undefined || said.has(term)) continue
    said.add(term)
    if (match.index > from) stretches.push({ text: text.slice(from, match.index), term: null })
    stretches.push({ text: match[0], term })
    from = match.index + match[0].length
  }
  if (from < text.length || stretches.length === 0) stretches.push({ text: text.slice(from), term: null })
  return stretches
}

/** The glossary as a page of the documents. */
export function glossaryPage(): string {
  const rows = glossary.map(({ term, means }) => `- **${term}**: ${means}`)
  return `# Words\n\nWhat the program's words mean; in the window each is reached from the word itself, and all of them by\n*Help*, *Words*.\n\n${rows.join('\n')}\n`
}
