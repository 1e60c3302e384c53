import { z } from 'zod'
import table from './glossary.json' with { type: 'json' }

const schema = z.array(
  z.object({
    term: z.string().min(1),
    /** Words by which it is known in the program's own text, the longest first to be looked for. */
    forms: z.array(z.string().min(1)).min(1),
    means: z.string().min(1),
  }),
)

/** A word of the trade, or of this program, and what it means. */
type GlossaryTerm = Readonly<z.infer<typeof schema>[number]>

/** Every word that the program explains, by alphabet: the one list, for the window and for `docs/glossary.md`. */
export const glossary: readonly GlossaryTerm[] = schema
  .parse(table)
  .sort((a, b) => a.term.localeCompare(b.term, 'en'))
