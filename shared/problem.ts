/** One thing that is wrong with an input: where it stands, what was read, what is allowed. */
export interface Breach {
  /** Dotted path of the field, e.g. `profile.stations[3].diameter`; empty for the whole input. */
  path: string
  message: string
}

/** The one catalogue of refusals: what each is called and the HTTP status it answers with. */
export const problems = {
  'bad-input': { status: 422, title: 'The input cannot be used as it stands' },
  'bad-request': { status: 400, title: 'The request cannot be read' },
  'not-json': { status: 400, title: 'The input is not JSON' },
  'too-large': { status: 413, title: 'The input is larger than 5 MB' },
  'wrong-media-type': { status: 415, title: 'The body must be JSON (application/json)' },
  'not-found': { status: 404, title: 'There is nothing here by that name' },
  'method-not-allowed': { status: 405, title: 'This address does not take that method' },
  'revision-required': { status: 428, title: 'Say which revision you change: send If-Match' },
  'revision-stale': { status: 412, title: 'It was changed meanwhile: load it again' },
  'key-reused': { status: 409, title: 'This key was used before with other content' },
  'wrong-state': { status: 409, title: 'That cannot be done in the present state' },
  'too-many-requests': { status: 429, title: 'Too many requests: wait a moment' },
  internal: { status: 500, title: 'Something went wrong on our side' },
} as const satisfies Record<string, { status: number; title: string }>

export type ProblemCode = keyof typeof problems

/** A refusal that a person can act on. Everything else that is thrown is our own failure. */
export class Problem extends Error {
  readonly code: ProblemCode
  readonly errors: Breach[]

  constructor(code: ProblemCode, detail: string, errors: Breach[] = []) {
    super(detail)
    this.name = 'Problem'
    this.code = code
    this.errors = errors
  }

  get status(): number {
    return problems[this.code].status
  }
}

/**
 * What a reader gives; where it refuses, its breaches are put to those found before, so that all can be told at once.
 * @throws what is no Problem
 */
export function gathering<T>(found: Breach[], read: () => T): T | undefined {
  try {
    return read()
  } catch (error) {
    if (!(error instanceof Problem)) throw error
    found.push(...error.errors)
    return undefined
  }
}

/** Bad input with the breaches found; the sentence names the first and counts the rest. */
export function badInput(errors: Breach[]): Problem {
  const first = errors[0]
  const lead = first ? `${first.path ? `${first.path}: ` : ''}${first.message}` : problems['bad-input'].title
  const more = errors.length > 1 ? ` (and ${errors.length - 1} more)` : ''
  return new Problem('bad-input', lead + more, errors)
}
