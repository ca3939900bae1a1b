import type { FastifyRequest } from 'fastify'
import { Problem } from '../../shared/problem.ts'

/** The stored revision is not the one that was changed. */
function stale(revision: number): Problem {
  return new Problem(
    'revision-stale',
    `It was changed meanwhile and is at revision ${revision} now: load it again.`,
  )
}

/**
 * Whether the request may change what stands at a revision.
 * @throws Problem `revision-required` without `If-Match`, `revision-stale` with another revision
 */
export function checkRevision({ headers }: FastifyRequest, revision: number): void {
  const sent = headers['if-match']
  if (sent === undefined) {
    const message = 'is missing; send the ETag of the revision that you change'
    throw new Problem('revision-required', `If-Match ${message}.`, [{ path: 'If-Match', message }])
  }
  const tags = sent.split(',').map((tag) => tag.trim().replace(/^W\//, ''))
  if (!tags.includes('*') && !tags.includes(`"${revision}"`)) throw stale(revision)
}
