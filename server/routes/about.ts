import { z } from 'zod'
import { healthSchema } from '../../shared/contract/health.ts'
import { type ProblemCode, problems } from '../../shared/problem.ts'
import { version } from '../package-root.ts'
import { jobById } from '../storage/read/jobs.ts'
import { answers, type Routes } from './route.ts'

export const aboutRoutes: Routes = (app, context) => {
  const tags = ['about']

  app.get(
    '/api/health',
    {
      schema: {
        tags,
        summary: 'Whether the server and its database answer',
        response: answers(200, 'They do', healthSchema),
      },
    },
    async () => {
      await jobById(context.db, '')
      return { status: 'ok' as const, version }
    },
  )

  const byCode = z.object({ code: z.enum(Object.keys(problems) as [ProblemCode]) })
  const refusal = z.object({ code: z.string(), status: z.number(), title: z.string() })
  app.get(
    '/api/problems/:code',
    {
      schema: {
        tags,
        summary: 'What a kind of refusal means',
        params: byCode,
        response: answers(200, 'Its title', refusal),
      },
    },
    async (request) => ({
      code: request.params.code,
      ...problems[request.params.code],
    }),
  )

  app.get(
    '/api/openapi.json',
    {
      schema: {
        tags,
        summary: 'This interface as OpenAPI 3.1',
        response: answers(200, 'The document', z.looseObject({})),
      },
    },
    async () => app.swagger(),
  )
}
