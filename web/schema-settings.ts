import { z } from 'zod'

// Schemas must not probe for `new Function`: the page's content policy forbids it. This has to run before
// the first schema is made, so `main.ts` imports it first.
z.config({ jitless: true })
