import { randomUUID } from 'node:crypto'
import request from 'supertest'
import { afterAll, beforeAll } from 'vitest'
import { buildApp } from '../../server/app.ts'
import { type Config, readConfig } from '../../server/config.ts'
import { type Context, openContext } from '../../server/context.ts'
import { searchCut } from '../../server/jobs/exact-cut.ts'
import type { App } from '../../server/routes/route.ts'
import type { Piece } from '../../shared/piece.ts'

export const newKey = (): string => randomUUID()

export interface Serving {
  app: App
  context: Context
}

/** Long enough to search for a cut in tests. */
const shortSearch: Context['exactCut'] = (order) => searchCut({ order, milliseconds: 50 })

/** A server on a database in memory, without the demo, for the tests of one file. */
export function withServer(change: Partial<Config> = {}) {
  let serving: Serving
  beforeAll(async () => {
    const config = { ...readConfig({}), database: ':memory:', demo: false, rateMax: 1e9, ...change }
    const context = { ...(await openContext(config)), exactCut: shortSearch }
    serving = { context, app: await buildApp(context) }
  })
  afterAll(async () => {
    await serving.app.close()
    await serving.context.db.destroy()
  })

  const ask = () => request(serving.app.server)
  return {
    context: () => serving.context,
    app: () => serving.app,
    ask,
    get: (path: string) => ask().get(path),
    post: (path: string, body: unknown) =>
      ask()
        .post(path)
        .send(body as object),
    /** Enters a job and answers it. */
    enter: async (file: Record<string, unknown>) => {
      const answer = await ask()
        .post('/api/jobs')
        .send({ ...file, key: newKey() })
        .expect(201)
      return answer.body as Record<string, any>
    },
    /** Enters a job, starts its batch, and answers the job’s id and its pieces. */
    start: async (file: Record<string, unknown>) => {
      const { body: job } = await ask()
        .post('/api/jobs')
        .send({ ...file, key: newKey() })
        .expect(201)
      const { body: pieces } = await ask()
        .post(`/api/jobs/${job.id}/start`)
        .send({ key: newKey() })
        .expect(201)
      return { id: job.id as string, pieces: pieces as Piece[] }
    },
  }
}
