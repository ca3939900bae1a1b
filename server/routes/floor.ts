import { z } from 'zod'
import {
  newTouchUpSchema,
  newWeighingSchema,
  readNewTouchUp,
  readNewWeighing,
  touchUpSchema,
  weighingSchema,
} from '../../shared/contract/floor.ts'
import { stepSchema } from '../../shared/contract/piece.ts'
import { jobOf } from '../batch/find.ts'
import { logTouchUp, logWeighing } from '../batch/floor.ts'
import { takeBackOfBatch } from '../batch/take-back.ts'
import { stepsOfJob } from '../storage/read/pieces.ts'
import { touchUpList } from '../storage/read/touch-ups.ts'
import { weighingList } from '../storage/read/weighings.ts'
import { answers, byId, type Routes, takingBack } from './route.ts'

const tags = ['floor']

const touchUpRoutes: Routes = (app, context) => {
  app.get(
    '/api/jobs/:id/touch-ups',
    {
      schema: {
        tags,
        summary: 'The edges brought back during a batch',
        params: byId,
        response: answers(200, 'The touch-ups and regrinds, the oldest first', z.array(touchUpSchema)),
      },
    },
    async (request) => touchUpList(context.db, (await jobOf(context, request.params.id)).id),
  )

  app.post(
    '/api/jobs/:id/touch-ups',
    {
      schema: {
        tags,
        summary: 'Log an edge as brought back',
        params: byId,
        body: newTouchUpSchema,
        response: answers(201, 'The touch-up', touchUpSchema),
      },
    },
    async (request, reply) =>
      reply.code(201).send(await logTouchUp(context, request.params.id, readNewTouchUp(request.body))),
  )

  app.delete(
    '/api/jobs/:id/touch-ups/:key',
    { schema: takingBack('floor', 'Take back a touch-up that was logged') },
    async (request, reply) => {
      await takeBackOfBatch(context, 'touch_ups', request.params.id, request.params.key)
      return reply.code(204).send(null)
    },
  )
}

const weighingRoutes: Routes = (app, context) => {
  app.get(
    '/api/jobs/:id/weighings',
    {
      schema: {
        tags,
        summary: 'What the wood of a batch weighed while it dried',
        params: byId,
        response: answers(200, 'Weights and meter readings, the oldest first', z.array(weighingSchema)),
      },
    },
    async (request) => weighingList(context.db, (await jobOf(context, request.params.id)).id),
  )

  app.post(
    '/api/jobs/:id/weighings',
    {
      schema: {
        tags,
        summary: 'Log what a piece weighs, or what the meter says of it',
        params: byId,
        body: newWeighingSchema,
        response: answers(201, 'The weighing', weighingSchema),
      },
    },
    async (request, reply) =>
      reply.code(201).send(await logWeighing(context, request.params.id, readNewWeighing(request.body))),
  )

  app.delete(
    '/api/jobs/:id/weighings/:key',
    { schema: takingBack('floor', 'Take back a weighing that was logged') },
    async (request, reply) => {
      await takeBackOfBatch(context, 'weighings', request.params.id, request.params.key)
      return reply.code(204).send(null)
    },
  )
}

export const floorRoutes: Routes = (app, context) => {
  app.get(
    '/api/jobs/:id/steps',
    {
      schema: {
        tags,
        summary: 'What was done on all pieces of a batch',
        params: byId,
        response: answers(200, 'The steps, the oldest first', z.array(stepSchema)),
      },
    },
    async (request) => stepsOfJob(context.db, (await jobOf(context, request.params.id)).id),
  )
  touchUpRoutes(app, context)
  weighingRoutes(app, context)
}
