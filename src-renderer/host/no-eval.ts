import { z } from 'zod'

// Import first, in the page and in every worker: zod would otherwise try `new Function` once, which the content
// security policy refuses and reports.
z.config({ jitless: true })
