import { z } from 'zod'
import { lumberSchema } from '../../shared/contract/lumber.ts'
import { styleOf } from '../../shared/units/length.ts'
import { lumberOf } from '../batch/lumber.ts'
import { paperOf, yardListPdf } from '../prints/index.ts'
import { drawingQuery, printQuery, sendPdf } from './prints.ts'
import { answers, type Routes } from './route.ts'

const asked = {
  jobs: z.string().max(4000).default('').describe('ids of jobs, with commas between'),
  yard: z.string().max(80).optional().describe('one of the shop’s yards by its name; the first when absent'),
}

export const lumberRoutes: Routes = (app, context) => {
  const tags = ['lumber']

  app.get(
    '/api/lumber',
    {
      schema: {
        tags,
        summary: 'What to ask the yard for jobs together',
        querystring: drawingQuery.extend(asked),
        response: answers(200, 'What to ask for, what buying together saves, and messages', lumberSchema),
      },
    },
    async ({ query }) => (await lumberOf(context, query)).lumber,
  )

  app.get(
    '/api/lumber/prints/yard-list.pdf',
    {
      schema: {
        tags,
        summary: 'What to ask the yard, on paper',
        querystring: printQuery.extend(asked),
        response: answers(200, 'The print', z.string(), 'application/pdf'),
      },
    },
    async ({ query: { jobs: ids, yard, style: wished, ...paper } }, reply) => {
      const { lumber, jobs, shop } = await lumberOf(context, { jobs: ids, yard, style: wished })
      const style = wished ?? styleOf(shop.units)
      const pdf = await yardListPdf(lumber, jobs, { style, paper: paperOf(paper, shop.units), shop })
      return sendPdf(reply, pdf, 'lumber', 'yard-list')
    },
  )
}
