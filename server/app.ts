import helmet from '@fastify/helmet'
import rateLimit from '@fastify/rate-limit'
import fastify, { type FastifyServerOptions } from 'fastify'
import type { Context } from './context.ts'
import { INPUT_BYTES_MAX, readJsonBytes } from './json.ts'
import { describeInterface } from './openapi.ts'
import { servePages } from './pages.ts'
import { answerProblem, answerUnreadable } from './problems.ts'
import { aboutRoutes } from './routes/about.ts'
import { boardRoutes } from './routes/boards.ts'
import { eventRoutes } from './routes/events.ts'
import { floorRoutes } from './routes/floor.ts'
import { jobRoutes } from './routes/jobs.ts'
import { lumberRoutes } from './routes/lumber.ts'
import { pieceRoutes } from './routes/pieces.ts'
import { printRoutes } from './routes/prints.ts'
import { profilePrintRoutes } from './routes/profile-prints.ts'
import { profileRoutes } from './routes/profiles.ts'
import { recordRoutes } from './routes/record.ts'
import type { App } from './routes/route.ts'
import { scheduleRoutes } from './routes/schedule.ts'
import { shopRoutes } from './routes/shop.ts'
import { trialRoutes } from './routes/trials.ts'
import { checkParts } from './validation.ts'

const routes = [
  aboutRoutes,
  jobRoutes,
  pieceRoutes,
  floorRoutes,
  recordRoutes,
  printRoutes,
  profileRoutes,
  profilePrintRoutes,
  shopRoutes,
  boardRoutes,
  lumberRoutes,
  scheduleRoutes,
  trialRoutes,
  eventRoutes,
]

/**
 * What pages may load: only what this server sends; templates may make HTML, `own-script.ts` addresses of scripts,
 * nothing else may. The solver in the browser is WebAssembly.
 */
const policy = {
  useDefaults: false,
  directives: {
    defaultSrc: ["'none'"],
    scriptSrc: ["'self'", "'wasm-unsafe-eval'"],
    styleSrc: ["'self'"],
    fontSrc: ["'self'"],
    connectSrc: ["'self'"],
    manifestSrc: ["'self'"],
    workerSrc: ["'self'"],
    imgSrc: ["'self'", 'data:', 'blob:'],
    baseUri: ["'none'"],
    formAction: ["'self'"],
    frameAncestors: ["'self'"],
    requireTrustedTypesFor: ["'script'"],
    trustedTypes: ['lit-html', 'own-scripts'],
  },
}

/** What only means something behind TLS, and is complained about by browsers on a plain local network. */
const plainHttp = { hsts: false, crossOriginOpenerPolicy: false, originAgentCluster: false }

/** Bodies are JSON and nothing else: that also keeps pages of other sites from sending any. */
function takeJsonOnly(app: App): void {
  app.removeAllContentTypeParsers()
  app.addContentTypeParser<Buffer>('application/json', { parseAs: 'buffer' }, (_request, body, done) => {
    try {
      done(null, readJsonBytes(body))
    } catch (error) {
      done(error as Error)
    }
  })
}

/** Answers of the interface are as of now; nothing on the way may keep them. */
function keepNothing(app: App): void {
  app.addHook('onRequest', async ({ url }, reply) => {
    if (url.startsWith('/api/')) reply.header('cache-control', 'no-store')
  })
}

/** The whole server, ready to listen or to be asked in tests. */
export async function buildApp(
  context: Context,
  { logger = false }: { logger?: FastifyServerOptions['logger'] } = {},
): Promise<App> {
  const app: App = fastify({
    logger,
    bodyLimit: INPUT_BYTES_MAX,
    forceCloseConnections: true,
    routerOptions: { maxParamLength: 300, ignoreTrailingSlash: true },
    clientErrorHandler: answerUnreadable,
    frameworkErrors: (error, request, reply) => answerProblem(error, request, reply),
  }) as unknown as App
  app.setValidatorCompiler(checkParts)
  app.setSerializerCompiler(() => (data) => JSON.stringify(data))
  app.setErrorHandler(answerProblem)
  takeJsonOnly(app)
  keepNothing(app)
  await app.register(helmet, { ...plainHttp, contentSecurityPolicy: policy })
  await app.register(rateLimit, { max: context.config.rateMax, timeWindow: '1 minute' })
  await describeInterface(app)
  await servePages(app)
  for (const add of routes) add(app, context)
  await app.ready()
  return app
}
