import { z } from 'zod'
import { profileOf } from '../batch/find.ts'
import { planOfProfile } from '../batch/profile.ts'
import { patternSvg, printNames } from '../prints/index.ts'
import { drawingQuery, printOfPlan, printQuery, sendPdf } from './prints.ts'
import { answers, byId, type Routes } from './route.ts'

/** What a profile alone is printed as: what lays out the part, and nothing of a batch. */
const profilePrints = printNames.filter((name) => ['pattern', 'story-stick'].includes(name))

export const profilePrintRoutes: Routes = (app, context) => {
  const tags = ['prints']

  for (const what of profilePrints)
    app.get(
      `/api/profiles/:id/prints/${what}.pdf`,
      {
        schema: {
          tags,
          summary: `A profile on paper: ${what.replace('-', ' ')}`,
          params: byId,
          querystring: printQuery,
          response: answers(200, 'The print', z.string(), 'application/pdf'),
        },
      },
      async (request, reply) => {
        const profile = await profileOf(context, request.params.id)
        const plan = await planOfProfile(context, profile)
        const known = {
          batch: `From the library, version ${profile.revision}`,
          ...(profile.file.species === undefined && { wood: 'no wood named' }),
        }
        const pdf = await printOfPlan(context, what, plan, request.query, known)
        return sendPdf(reply, pdf, profile.file.name, what)
      },
    )

  app.get(
    '/api/profiles/:id/prints/pattern.svg',
    {
      schema: {
        tags,
        summary: 'The pattern of a profile as a drawing',
        params: byId,
        querystring: drawingQuery,
        response: answers(200, 'The drawing, true to scale', z.string(), 'image/svg+xml'),
      },
    },
    async (request, reply) => {
      const profile = await profileOf(context, request.params.id)
      return reply
        .type('image/svg+xml')
        .send(patternSvg(await planOfProfile(context, profile), request.query.style))
    },
  )
}
