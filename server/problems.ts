import type { FastifyError, FastifyReply, FastifyRequest } from 'fastify'
import type { ProblemDetails } from '../shared/contract/problem.ts'
import { Problem, type ProblemCode, problems } from '../shared/problem.ts'

/** The refusal behind an error that the web framework or we ourselves threw; absent for our own failures. */
function problemOf(error: unknown): Problem | undefined {
  if (error instanceof Problem) return error
  const { code, statusCode, message } = error as Partial<FastifyError>
  if (code === 'FST_ERR_CTP_BODY_TOO_LARGE') return refusal('too-large', 'The body is larger than 5 MB.')
  if (code?.startsWith('FST_ERR_CTP_INVALID_MEDIA_TYPE'))
    return refusal('wrong-media-type', 'Send the body as JSON, with content-type application/json.')
  if (statusCode === 404) return refusal('not-found', message ?? problems['not-found'].title)
  if (statusCode === 429) return refusal('too-many-requests', problems['too-many-requests'].title)
  if (statusCode !== undefined && statusCode >= 400 && statusCode < 500)
    return refusal('bad-input', `The request cannot be read: ${message}`)
  return undefined
}

function refusal(code: ProblemCode, message: string): Problem {
  return new Problem(code, message, [{ path: '', message }])
}

/** The body of the answer to an error; what is not a refusal says nothing of our inside. */
export function problemDetails(error: unknown): ProblemDetails {
  const problem =
    problemOf(error) ?? new Problem('internal', 'The server could not answer; its log says why.')
  const { code, status, message: detail, errors } = problem
  return { type: `/api/problems/${code}`, title: problems[code].title, status, detail, errors }
}

/** Answers an error as problem details. Our own failures go to the log, never to the client. */
export function answerProblem(error: unknown, request: FastifyRequest, reply: FastifyReply): void {
  const details = problemDetails(error)
  if (details.status >= 500) request.log.error(error)
  const body = JSON.stringify(details)
  reply.code(details.status).type('application/problem+json; charset=utf-8').send(body)
}
