import { z } from 'zod'
import {
  jobAnswerSchema,
  jobFileSchema,
  newJobSchema,
  readJobFile,
  readNewJob,
} from '../../shared/contract/job.ts'
import { frozenPlanSchema, planSchema, quoteSchema } from '../../shared/contract/plan.ts'
import { Problem } from '../../shared/problem.ts'
import { jobOf } from '../batch/find.ts'
import { addJob, changeJob, dropJob } from '../batch/job.ts'
import { planOf } from '../batch/plan.ts'
import { jobList, type StoredJob } from '../storage/read/jobs.ts'
import { planList } from '../storage/read/plans.ts'
import { checkRevision } from './revision.ts'
import { answers, byId, nothing, type Routes, withRevision } from './route.ts'

/** A job as answered: its file as entered, and what the server knows of it. */
export function jobAnswer({ file, ...known }: StoredJob) {
  return { ...file, ...known }
}

export const jobRoutes: Routes = (app, context) => {
  const tags = ['jobs']

  app.get(
    '/api/jobs',
    {
      schema: {
        tags,
        summary: 'Every job',
        response: answers(200, 'The jobs, the oldest first', z.array(jobAnswerSchema)),
      },
    },
    async () => (await jobList(context.db)).map(jobAnswer),
  )

  app.post(
    '/api/jobs',
    {
      schema: {
        tags,
        summary: 'Enter a job',
        body: newJobSchema,
        response: answers(201, 'The job', jobAnswerSchema),
      },
    },
    async (request, reply) => {
      const job = await addJob(context, readNewJob(request.body))
      return withRevision(reply, job.revision).code(201).send(jobAnswer(job))
    },
  )

  app.get(
    '/api/jobs/:id',
    { schema: { tags, summary: 'A job', params: byId, response: answers(200, 'The job', jobAnswerSchema) } },
    async (request, reply) => {
      const job = await jobOf(context, request.params.id)
      return withRevision(reply, job.revision).send(jobAnswer(job))
    },
  )

  app.put(
    '/api/jobs/:id',
    {
      schema: {
        tags,
        summary: 'Change a job',
        params: byId,
        body: jobFileSchema,
        response: answers(200, 'The job', jobAnswerSchema),
      },
    },
    async (request, reply) => {
      const { id, revision } = await jobOf(context, request.params.id)
      checkRevision(request, revision)
      const job = await changeJob(context, { id, revision }, readJobFile(request.body))
      return withRevision(reply, job.revision).send(jobAnswer(job))
    },
  )

  app.delete(
    '/api/jobs/:id',
    { schema: { tags, summary: 'Take a job off the list', params: byId, response: nothing } },
    async (request, reply) => {
      const { id, revision } = await jobOf(context, request.params.id)
      checkRevision(request, revision)
      await dropJob(context, { id, revision })
      return reply.code(204).send(null)
    },
  )

  app.get(
    '/api/jobs/:id/plan',
    {
      schema: {
        tags,
        summary: 'The plan of a job',
        params: byId,
        response: answers(200, 'The plan the batch was started with, else one worked out now', planSchema),
      },
    },
    async (request) => planOf(context, await jobOf(context, request.params.id)),
  )

  app.get(
    '/api/jobs/:id/plans',
    {
      schema: {
        tags,
        summary: 'The frozen plans of a job',
        params: byId,
        response: answers(200, 'The plans, the oldest first', z.array(frozenPlanSchema)),
      },
    },
    async (request) => planList(context.db, (await jobOf(context, request.params.id)).id),
  )

  app.get(
    '/api/jobs/:id/quote',
    {
      schema: {
        tags,
        summary: 'The price of a job',
        params: byId,
        response: answers(200, 'The price', quoteSchema),
      },
    },
    async (request) => {
      const { quote, cautions } = await planOf(context, await jobOf(context, request.params.id))
      if (quote) return quote
      throw new Problem(
        'wrong-state',
        `There is no price: ${cautions.find(({ about }) => about === 'price')?.text ?? 'the shop has no prices'}`,
      )
    },
  )
}
