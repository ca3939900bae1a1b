import { z } from 'zod'
import { answers, type Routes } from './route.ts'

/** Between two signs of life, so that nothing on the way closes a silent line. */
const HEARTBEAT_MS = 20_000

export const eventRoutes: Routes = (app, context) => {
  app.get(
    '/api/events',
    {
      schema: {
        tags: ['events'],
        summary: 'What changes, as it changes (server-sent events)',
        response: answers(200, 'Events named change: {kind, id}', z.string(), 'text/event-stream'),
      },
    },
    (_request, reply) => {
      reply.hijack()
      const headers = {
        ...reply.getHeaders(),
        'content-type': 'text/event-stream; charset=utf-8',
        'cache-control': 'no-store',
      }
      reply.raw.writeHead(200, headers as Record<string, string>)
      reply.raw.write('retry: 3000\n\n')
      const stop = context.changes.listen((change) =>
        reply.raw.write(`event: change\ndata: ${JSON.stringify(change)}\n\n`),
      )
      const beat = setInterval(() => reply.raw.write(': here\n\n'), HEARTBEAT_MS)
      reply.raw.once('close', () => {
        clearInterval(beat)
        stop()
      })
    },
  )
}
