import { scheduleQuery, shipsSchema } from '../../shared/contract/schedule.ts'
import { scheduleOf } from '../batch/schedule.ts'
import { answers, type Routes } from './route.ts'

export const scheduleRoutes: Routes = (app, context) => {
  app.get(
    '/api/schedule',
    {
      schema: {
        tags: ['schedule'],
        summary: 'When every open job ships',
        description:
          'Started batches by what is left of them, drafts with a due date, and others asked for, in the order that is late by the fewest working days in all.',
        querystring: scheduleQuery,
        response: answers(200, 'Every open job with its days', shipsSchema),
      },
    },
    async ({ query }) => scheduleOf(context, query),
  )
}
