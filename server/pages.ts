import { existsSync } from 'node:fs'
import { join } from 'node:path'
import fastifyStatic from '@fastify/static'
import type { FastifyReply, FastifyRequest } from 'fastify'
import { Problem } from '../shared/problem.ts'
import { packageRoot } from './package-root.ts'
import type { App } from './routes/route.ts'

const webFolder = join(packageRoot, 'dist', 'web')

/** Methods that some route takes at this address. */
function methodsTaken(routes: { method: string; pattern: RegExp }[], path: string): string[] {
  return [...new Set(routes.filter(({ pattern }) => pattern.test(path)).map(({ method }) => method))]
}

const patternOf = (url: string): RegExp =>
  new RegExp(`^${url.replace(/[.]/g, '\\.').replace(/:\w+/g, '[^/]+')}/?$`)

/** Keeps account of every route, to tell a wrong method from a wrong address. */
function accountOfRoutes(app: App): { method: string; pattern: RegExp }[] {
  const routes: { method: string; pattern: RegExp }[] = []
  app.addHook('onRoute', ({ method, url }) => {
    if (url.startsWith('/api/'))
      for (const each of [method].flat()) routes.push({ method: each, pattern: patternOf(url) })
  })
  return routes
}

/** A file with its content in its name never changes; everything else is asked for anew. */
function setAge(reply: FastifyReply, path: string): void {
  const isNamedByContent = /[/\\]assets[/\\]/.test(path)
  reply.header('cache-control', isNamedByContent ? 'public, max-age=31536000, immutable' : 'no-cache')
}

/**
 * Serves the built pages; an address that is neither a file nor of the interface gets the first page, which
 * knows the addresses of all others. Call it before the routes are added.
 */
export async function servePages(app: App, folder = webFolder): Promise<void> {
  const routes = accountOfRoutes(app)
  const isBuilt = existsSync(join(folder, 'index.html'))
  if (isBuilt)
    await app.register(fastifyStatic, {
      root: folder,
      wildcard: false,
      cacheControl: false,
      setHeaders: (reply, path) => setAge(reply as unknown as FastifyReply, path),
    })

  app.setNotFoundHandler((request: FastifyRequest, reply) => {
    const path = request.url.split('?')[0]!
    const isRead = request.method === 'GET' || request.method === 'HEAD'
    if (isBuilt && isRead && !/^\/api(\/|$)/.test(path) && !/\.\w+$/.test(path))
      return reply.sendFile('index.html')
    const allowed = methodsTaken(routes, path)
    if (allowed.length === 0) throw new Problem('not-found', `There is nothing at ${path}.`)
    reply.header('allow', allowed.join(', '))
    throw new Problem('method-not-allowed', `${path} takes ${allowed.join(', ')}; read ${request.method}.`)
  })
}
