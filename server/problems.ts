import type { Socket } from 'node:net'
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
  if (code === 'FST_ERR_BAD_URL')
    return refusal('bad-request', 'The address cannot be read: write it in UTF-8, percent-encoded.')
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

/** What the connection said in a way that is no request, in words a client can act on. */
const unreadable: Record<string, string> = {
  HPE_INVALID_METHOD: 'There is no such HTTP method.',
  HPE_HEADER_OVERFLOW: 'The head of the request is too large.',
  ERR_HTTP_REQUEST_TIMEOUT: 'The request did not come to its end in time.',
}

/** Answers what could not be read as a request at all, and hangs up. */
export function answerUnreadable(error: NodeJS.ErrnoException, socket: Socket): void {
  if (error.code === 'ECONNRESET' || socket.destroyed) return
  const message = unreadable[error.code ?? ''] ?? 'This is no HTTP request.'
  const body = JSON.stringify(problemDetails(refusal('bad-request', message)))
  const head = [
    'HTTP/1.1 400 Bad Request',
    'content-type: application/problem+json; charset=utf-8',
    `content-length: ${Buffer.byteLength(body)}`,
    'connection: close',
  ]
  if (socket.writable) socket.end(`${head.join('\r\n')}\r\n\r\n${body}`)
  else socket.destroy()
}
