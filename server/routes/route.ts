import type { IncomingMessage, ServerResponse } from 'node:http'
import type { FastifyBaseLogger, FastifyInstance, FastifyReply, RawServerDefault } from 'fastify'
import type { ZodTypeProvider } from 'fastify-type-provider-zod'
import { z } from 'zod'
import { id } from '../../shared/contract/key.ts'
import { problemSchema } from '../../shared/contract/problem.ts'
import type { Context } from '../context.ts'

export type App = FastifyInstance<
  RawServerDefault,
  IncomingMessage,
  ServerResponse,
  FastifyBaseLogger,
  ZodTypeProvider
>

/** Adds the routes of one noun. */
export type Routes = (app: App, context: Context) => void

export const byId = z.object({ id })

/** An entry of a job or a piece, by its key. */
export const byIdAndKey = byId.extend({ key: id })

const described = (description: string, type: string, schema: z.ZodType) => ({
  description,
  content: { [type]: { schema } },
})

/** The answers of a route: the good one, and a refusal as problem details. */
export function answers(status: number, description: string, schema: z.ZodType, type = 'application/json') {
  return {
    [status]: described(description, type, schema),
    '4xx': described('A refusal, with the fields found wrong', 'application/problem+json', problemSchema),
  }
}

/** The answer of a route that has nothing to say. */
export const nothing = answers(204, 'Done', z.null())

/** The schema of a route that takes an entry back. */
export const takingBack = (tag: string, summary: string) => ({
  tags: [tag],
  summary,
  description: 'It counts no more. It is kept, and its key stays used.',
  params: byIdAndKey,
  response: nothing,
})

/** What the answer is a revision of; `If-Match` takes it back. */
export const withRevision = (reply: FastifyReply, revision: number): FastifyReply =>
  reply.header('etag', `"${revision}"`)
