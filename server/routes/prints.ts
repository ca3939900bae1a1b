import { z } from 'zod'
import { readJob } from '../../shared/job.ts'
import type { Plan } from '../../shared/plan.ts'
import { styleOf } from '../../shared/units/length.ts'
import { jobOf } from '../batch/find.ts'
import { piecesOf } from '../batch/pieces.ts'
import { planOf } from '../batch/plan.ts'
import { type Context, shopOf } from '../context.ts'
import { type PrintName, patternSvg, printNames, printPdf } from '../prints/index.ts'
import type { StoredJob } from '../storage/read/jobs.ts'
import { planOfBatch } from '../storage/read/plans.ts'
import { answers, byId, type Routes } from './route.ts'

const paper = z.enum(['letter', 'a4'])
const printQuery = z.object({
  paper: paper.optional().describe('letter for shops in inches, a4 for those in mm, unless said'),
  style: z.enum(['fraction', 'decimal', 'mm']).optional().describe('how lengths are written'),
})

const fileName = (name: unknown, what: string): string =>
  `${
    String(name)
      .normalize('NFKD')
      .replace(/[^\w]+/g, '-')
      .replace(/^-+|-+$/g, '')
      .slice(0, 60) || 'job'
  }-${what}`

/** A frozen plan with what may be changed after the start as it is now: who the batch is for, and what to note. */
function withPresentNames(plan: Plan, { file }: StoredJob): Plan {
  const { name, customer, due, notes } = readJob(file)
  return { ...plan, job: { ...plan.job, name, customer, due, notes } }
}

/** The print of a job's plan on the paper and in the style asked for, else in those of shop and job. */
async function printOf(
  context: Context,
  what: PrintName,
  job: StoredJob,
  query: z.output<typeof printQuery>,
) {
  const frozen = await planOfBatch(context.db, job.id)
  const plan = frozen ? withPresentNames(frozen.plan, job) : await planOf(context, job)
  const shop = await shopOf(context)
  const { paper = shop.units === 'mm' ? 'a4' : 'letter', style = styleOf(plan.job.units) } = query
  const wood = [...shop.species, ...context.woods].find(({ key }) => key === plan.job.species)?.name
  return printPdf(what, plan, {
    paper,
    style,
    shop,
    wood,
    madeAt: frozen?.madeAt,
    ...(frozen && { pieces: await piecesOf(context, job) }),
  })
}

export const printRoutes: Routes = (app, context) => {
  const tags = ['prints']

  for (const what of printNames)
    app.get(
      `/api/jobs/:id/prints/${what}.pdf`,
      {
        schema: {
          tags,
          summary: `A job on paper: ${what.replace('-', ' ')}`,
          params: byId,
          querystring: printQuery,
          response: answers(200, 'The print', z.string(), 'application/pdf'),
        },
      },
      async (request, reply) => {
        const job = await jobOf(context, request.params.id)
        const pdf = await printOf(context, what, job, request.query)
        const name = fileName(job.file.name, `${what}.pdf`)
        reply.type('application/pdf').header('content-disposition', `inline; filename="${name}"`)
        // The reader built into browsers brings styles of its own, which the pages’ policy would refuse.
        return reply.header('content-security-policy', "frame-ancestors 'self'").send(pdf)
      },
    )

  app.get(
    '/api/jobs/:id/prints/pattern.svg',
    {
      schema: {
        tags,
        summary: 'The pattern as a drawing',
        params: byId,
        response: answers(200, 'The drawing, true to scale', z.string(), 'image/svg+xml'),
      },
    },
    async (request, reply) =>
      reply
        .type('image/svg+xml')
        .send(patternSvg(await planOf(context, await jobOf(context, request.params.id)))),
  )
}
