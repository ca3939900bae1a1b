import { batchTimesSchema, shopRecordSchema } from '../../shared/contract/record.ts'
import { jobOf } from '../batch/find.ts'
import { batchTimes, recordOf } from '../batch/record.ts'
import { answers, byId, type Routes } from './route.ts'

export const recordRoutes: Routes = (app, context) => {
  const tags = ['record']

  app.get(
    '/api/record',
    {
      schema: {
        tags,
        summary: 'What the shop’s own times say',
        description: 'Plans made now go by these factors. Steps taken back and deleted jobs do not count.',
        response: answers(200, 'A factor for every kind of operation that was timed', shopRecordSchema),
      },
    },
    () => recordOf(context),
  )

  app.get(
    '/api/jobs/:id/record',
    {
      schema: {
        tags,
        summary: 'Planned against actual',
        params: byId,
        response: answers(200, 'Minutes planned and taken, by operation', batchTimesSchema),
      },
    },
    async (request) => batchTimes(context, await jobOf(context, request.params.id)),
  )
}
