import { z } from 'zod'
import { cutPlanSchema } from '../../shared/contract/cut.ts'
import { jobFileSchema, readJobFile } from '../../shared/contract/job.ts'
import { matchSchema } from '../../shared/contract/match.ts'
import { planSchema } from '../../shared/contract/plan.ts'
import { readCutOrder } from '../../shared/cutting/order.ts'
import { matchSet } from '../../shared/matching/match.ts'
import { readSetFile } from '../../shared/matching/set-file.ts'
import { planNow } from '../batch/plan.ts'
import { answers, type Routes } from './route.ts'

/** Longest search for a cut while a client waits, ms. */
const SEARCH_MS_MAX = 60_000

/** What can be worked out without storing anything. */
export const trialRoutes: Routes = (app, context) => {
  const tags = ['trials']
  const order = z.looseObject({}).describe('A cut order')
  const set = z.looseObject({}).describe('A set file')

  app.post(
    '/api/plan',
    {
      schema: {
        tags,
        summary: 'Plan a job file',
        body: jobFileSchema,
        response: answers(200, 'The plan; nothing is stored', planSchema),
      },
    },
    (request) => planNow(context, readJobFile(request.body).job),
  )

  app.post(
    '/api/cut',
    {
      schema: {
        tags,
        summary: 'Plan a cut',
        body: order,
        response: answers(200, 'The cutting plan; nothing is stored', cutPlanSchema),
      },
    },
    (request) => {
      const asked = readCutOrder(request.body)
      return context.exactCut(asked, Math.min(asked.seconds * 1000, SEARCH_MS_MAX))
    },
  )

  app.post(
    '/api/match',
    {
      schema: {
        tags,
        summary: 'Match a set',
        body: set,
        response: answers(200, 'The match; nothing is stored', matchSchema),
      },
    },
    async (request) => matchSet(readSetFile(request.body)),
  )
}
