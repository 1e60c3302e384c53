import { z } from 'zod'

// Schemas may not build functions from text: the page's content policy forbids it, and asking raises a report.
z.config({ jitless: true })

export { z }
