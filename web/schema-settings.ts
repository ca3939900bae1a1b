// Stands in for `zod` in the browser (see vite.config.ts). Schemas must not probe for `new Function`: the page's
// content policy forbids it, and this has to be said before the first schema is made.
import { z } from 'zod/v4'

z.config({ jitless: true })

export * from 'zod/v4'
export { z }
