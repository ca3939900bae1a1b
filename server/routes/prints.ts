import type { FastifyReply } from 'fastify'
import { z } from 'zod'
import { LEGS_MAX } from '../../shared/cutting/set-layout.ts'
import { readJob } from '../../shared/job.ts'
import type { Plan } from '../../shared/plan.ts'
import { styleOf } from '../../shared/units/length.ts'
import { jobOf } from '../batch/find.ts'
import { piecesOf } from '../batch/pieces.ts'
import { planOf } from '../batch/plan.ts'
import { type Context, shopOf } from '../context.ts'
import {
  type PrintName,
  type PrintOptions,
  paperOf,
  papers,
  patternSvg,
  printNames,
  printPdf,
} from '../prints/index.ts'
import type { StoredJob } from '../storage/read/jobs.ts'
import { planOfBatch } from '../storage/read/plans.ts'
import { answers, byId, type Routes } from './route.ts'

export const drawingQuery = z.object({
  style: z.enum(['fraction', 'decimal', 'mm']).optional().describe('how lengths are written'),
})
export const printQuery = drawingQuery.extend({
  paper: z
    .enum(papers)
    .optional()
    .describe(
      'letter for shops in inches, a4 for those in mm, unless said; a roll takes pattern, story-stick and gauges',
    ),
  width: z.string().optional().describe('of the roll, a length such as 36 in or 914 mm; with paper=roll'),
  length: z.string().optional().describe('the longest sheet to be cut off the roll; with paper=roll'),
  legs: z.coerce
    .number()
    .int()
    .min(1)
    .max(LEGS_MAX)
    .optional()
    .describe('legs to a stand of a matching set, drawn on the cut list'),
})
type PrintQuery = z.output<typeof printQuery>

/** The name in letters that every system takes, without its accents; what is printed alone where none is left. */
function fileName(name: unknown, what: string): string {
  const plain = String(name)
    .normalize('NFKD')
    .replace(/\p{M}+/gu, '')
    .replace(/\W+/g, '-')
    .slice(0, 60)
    .replace(/^-+|-+$/g, '')
  return plain === '' ? what : `${plain}-${what}`
}

/** A frozen plan with what may be changed after the start as it is now: who the batch is for, and what to note. */
function withPresentNames(plan: Plan, { file }: StoredJob): Plan {
  const { name, customer, due, notes } = readJob(file)
  return { ...plan, job: { ...plan.job, name, customer, due, notes } }
}

/** A plan on the paper and in the style asked for, else in those of shop and plan. */
export async function printOfPlan(
  context: Context,
  what: PrintName,
  plan: Plan,
  query: PrintQuery,
  known: Partial<PrintOptions> = {},
): Promise<Buffer> {
  const shop = await shopOf(context)
  const { style = styleOf(plan.job.units), legs, ...asked } = query
  const paper = paperOf(asked, shop.units)
  const wood = [...shop.species, ...context.woods].find(({ key }) => key === plan.job.species)?.name
  return printPdf(what, plan, { paper, style, shop, wood, legs, ...known })
}

/** What is printed of a job: its plan, of a started batch the frozen one with when it was made. */
async function planToPrint(context: Context, job: StoredJob): Promise<{ plan: Plan; madeAt?: string }> {
  const frozen = await planOfBatch(context.db, job.id)
  if (!frozen) return { plan: await planOf(context, job) }
  return { plan: withPresentNames(frozen.plan, job), madeAt: frozen.madeAt }
}

/** The print of a job's plan; that of a started batch tells its pieces. */
async function printOfJob(context: Context, what: PrintName, job: StoredJob, query: PrintQuery) {
  const { plan, madeAt } = await planToPrint(context, job)
  const known = madeAt === undefined ? {} : { madeAt, pieces: await piecesOf(context, job) }
  return printOfPlan(context, what, plan, query, known)
}

/** Sends a PDF that names itself after what is printed. */
export function sendPdf(
  reply: FastifyReply,
  pdf: Buffer,
  name: unknown,
  what: PrintName | 'yard-list',
): FastifyReply {
  const disposition = `inline; filename="${fileName(name, `${what}.pdf`)}"`
  reply.type('application/pdf').header('content-disposition', disposition)
  // The reader built into browsers brings styles of its own, which the pages’ policy would refuse.
  return reply.header('content-security-policy', "frame-ancestors 'self'").send(pdf)
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
        return sendPdf(reply, await printOfJob(context, what, job, request.query), job.file.name, what)
      },
    )

  app.get(
    '/api/jobs/:id/prints/pattern.svg',
    {
      schema: {
        tags,
        summary: 'The pattern as a drawing',
        params: byId,
        querystring: drawingQuery,
        response: answers(200, 'The drawing, true to scale', z.string(), 'image/svg+xml'),
      },
    },
    async (request, reply) => {
      const { plan } = await planToPrint(context, await jobOf(context, request.params.id))
      return reply.type('image/svg+xml').send(patternSvg(plan, request.query.style))
    },
  )
}
