import { z } from 'zod'
import { jobMatchSchema, matchQuerySchema } from '../../shared/contract/match.ts'
import {
  newStepSchema,
  pieceSchema,
  readNewStep,
  readSpoil,
  readStart,
  spoilSchema,
  startSchema,
  stepSchema,
} from '../../shared/contract/piece.ts'
import { newReadingsSchema, readNewReadings, storedReadingSchema } from '../../shared/contract/reading.ts'
import { jobOf, pieceOf, startedPlan } from '../batch/find.ts'
import { matchOfJob } from '../batch/match.ts'
import { piecesOf } from '../batch/pieces.ts'
import { logReadings } from '../batch/reading.ts'
import { startBatch } from '../batch/start.ts'
import { logStep, spoilPiece } from '../batch/step.ts'
import { takeBackReading, takeBackStep } from '../batch/take-back.ts'
import { stepsOfPiece } from '../storage/read/pieces.ts'
import { readingList } from '../storage/read/readings.ts'
import { answers, byId, type Routes, takingBack } from './route.ts'

export const pieceRoutes: Routes = (app, context) => {
  const tags = ['pieces']

  app.post(
    '/api/jobs/:id/start',
    {
      schema: {
        tags,
        summary: 'Start the batch',
        params: byId,
        body: startSchema,
        response: answers(201, 'The numbered pieces', z.array(pieceSchema)),
      },
    },
    async (request, reply) => {
      const { key } = readStart(request.body)
      return reply.code(201).send(await startBatch(context, request.params.id, key))
    },
  )

  app.get(
    '/api/jobs/:id/pieces',
    {
      schema: {
        tags,
        summary: 'The pieces of a job',
        params: byId,
        response: answers(
          200,
          'The pieces by their numbers; none before the batch is started',
          z.array(pieceSchema),
        ),
      },
    },
    async (request) => piecesOf(context, await jobOf(context, request.params.id)),
  )

  app.get(
    '/api/pieces/:id/steps',
    {
      schema: {
        tags,
        summary: 'What was done on a piece',
        params: byId,
        response: answers(200, 'The steps in the order they were done', z.array(stepSchema)),
      },
    },
    async (request) => stepsOfPiece(context.db, (await pieceOf(context, request.params.id)).piece.id),
  )

  app.post(
    '/api/pieces/:id/steps',
    {
      schema: {
        tags,
        summary: 'Log an operation as done',
        params: byId,
        body: newStepSchema,
        response: answers(201, 'The step', stepSchema),
      },
    },
    async (request, reply) =>
      reply.code(201).send(await logStep(context, request.params.id, readNewStep(request.body))),
  )

  app.delete(
    '/api/pieces/:id/steps/:key',
    { schema: takingBack('pieces', 'Take back a step that was logged') },
    async (request, reply) => {
      await takeBackStep(context, request.params.id, request.params.key)
      return reply.code(204).send(null)
    },
  )

  app.post(
    '/api/pieces/:id/spoil',
    {
      schema: {
        tags,
        summary: 'Mark a piece as spoiled',
        params: byId,
        body: spoilSchema,
        response: answers(201, 'The piece', pieceSchema),
      },
    },
    async (request, reply) =>
      reply.code(201).send(await spoilPiece(context, request.params.id, readSpoil(request.body))),
  )

  app.get(
    '/api/jobs/:id/checks',
    {
      schema: {
        tags,
        summary: 'The readings of a job',
        params: byId,
        response: answers(200, 'The readings, the oldest first', z.array(storedReadingSchema)),
      },
    },
    async (request) => readingList(context.db, (await jobOf(context, request.params.id)).id),
  )

  app.post(
    '/api/jobs/:id/checks',
    {
      schema: {
        tags,
        summary: 'Log readings',
        params: byId,
        body: newReadingsSchema,
        response: answers(
          201,
          'The readings with their verdicts: one, or a list for a list',
          z.union([storedReadingSchema, z.array(storedReadingSchema)]),
        ),
      },
    },
    async (request, reply) => {
      const job = await jobOf(context, request.params.id)
      const { plan } = await startedPlan(context, job)
      const isList = Array.isArray(request.body)
      const stored = await logReadings(context, job, readNewReadings(request.body, plan.job.units), isList)
      return reply.code(201).send(isList ? stored : stored[0])
    },
  )

  app.delete(
    '/api/jobs/:id/checks/:key',
    { schema: takingBack('pieces', 'Take back a reading that was logged') },
    async (request, reply) => {
      await takeBackReading(context, request.params.id, request.params.key)
      return reply.code(204).send(null)
    },
  )

  app.get(
    '/api/jobs/:id/match',
    {
      schema: {
        tags,
        summary: 'How alike the pieces are',
        params: byId,
        querystring: matchQuerySchema,
        response: answers(200, 'Spread, verdicts and what to bring down', jobMatchSchema),
      },
    },
    async (request) => matchOfJob(context, await jobOf(context, request.params.id), request.query),
  )
}
