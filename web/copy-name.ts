import { NAME_MOST } from '../shared/job.ts'

const COPY = ' (copy)'

/** What a copy is called at first; a name too long for it is cut, so that the copy can be stored. */
export const copyName = (name: string): string => `${name.slice(0, NAME_MOST - COPY.length).trimEnd()}${COPY}`
