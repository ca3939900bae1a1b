import { z } from 'zod'
import { boardAnswerSchema, boardEntrySchema, heldBoardSchema } from '../../shared/contract/board.ts'
import { id } from '../../shared/contract/key.ts'
import { jobWoodSchema, readSawn, sawnAnswerSchema, sawnSchema } from '../../shared/contract/sawn.ts'
import { addBoard, boardsOnRack, changeBoard, dropBoard } from '../batch/board.ts'
import { jobOf } from '../batch/find.ts'
import { sawBatch, takeBackSawn, woodOfJob } from '../batch/sawn.ts'
import { answers, byId, nothing, type Routes } from './route.ts'

const byKey = z.object({ key: id })

export const boardRoutes: Routes = (app, context) => {
  const tags = ['boards']

  app.get(
    '/api/boards',
    {
      schema: {
        tags,
        summary: 'The boards on the rack',
        response: answers(
          200,
          'The boards with the batches that have them reserved, the oldest first; lengths in mm',
          z.array(heldBoardSchema),
        ),
      },
    },
    () => boardsOnRack(context),
  )

  app.post(
    '/api/boards',
    {
      schema: {
        tags,
        summary: 'Put a board on the rack',
        body: boardEntrySchema,
        response: answers(201, 'The board', boardAnswerSchema),
      },
    },
    async (request, reply) => reply.code(201).send(await addBoard(context, request.body)),
  )

  app.put(
    '/api/boards/:key',
    {
      schema: {
        tags,
        summary: 'Change a board',
        params: byKey,
        body: boardEntrySchema,
        response: answers(200, 'The board', boardAnswerSchema),
      },
    },
    (request) => changeBoard(context, request.params.key, request.body),
  )

  app.delete(
    '/api/boards/:key',
    { schema: { tags, summary: 'Take a board off the rack', params: byKey, response: nothing } },
    async (request, reply) => {
      await dropBoard(context, request.params.key)
      return reply.code(204).send(null)
    },
  )

  const sawn = { tags: ['boards'], params: byId }

  app.get(
    '/api/jobs/:id/sawn',
    {
      schema: {
        ...sawn,
        summary: 'The boards a job has reserved, and what was sawn for it',
        response: answers(200, 'What is reserved until it is sawn, then what left and came', jobWoodSchema),
      },
    },
    async (request) => woodOfJob(context, (await jobOf(context, request.params.id)).id),
  )

  app.post(
    '/api/jobs/:id/sawn',
    {
      schema: {
        ...sawn,
        summary: 'Say that the blanks of a batch are sawn',
        body: sawnSchema,
        response: answers(201, 'What left the rack and what came onto it', sawnAnswerSchema),
      },
    },
    async (request, reply) => {
      const { key } = readSawn(request.body)
      return reply.code(201).send(await sawBatch(context, request.params.id, key))
    },
  )

  app.delete(
    '/api/jobs/:id/sawn',
    { schema: { ...sawn, summary: 'Take back that the blanks are sawn', response: nothing } },
    async (request, reply) => {
      await takeBackSawn(context, request.params.id)
      return reply.code(204).send(null)
    },
  )
}
