import { z } from 'zod'
import { boardAnswerSchema, boardEntrySchema } from '../../shared/contract/board.ts'
import { id } from '../../shared/contract/key.ts'
import { addBoard, boardsOnRack, changeBoard, dropBoard } from '../batch/board.ts'
import { answers, nothing, type Routes } from './route.ts'

const byKey = z.object({ key: id })

export const boardRoutes: Routes = (app, context) => {
  const tags = ['boards']

  app.get(
    '/api/boards',
    {
      schema: {
        tags,
        summary: 'The boards on the rack',
        response: answers(200, 'The boards, the oldest first; lengths in mm', z.array(boardAnswerSchema)),
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
}
