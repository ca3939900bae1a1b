/// <reference lib="webworker" />
declare const self: ServiceWorkerGlobalScope

/** Every file of the built program by its address, and a mark of what is in them: written here by the build. */
declare const KEPT: { version: string; files: string[] }

const PREFIX = 'setwright-'
const current = PREFIX + KEPT.version
/** The page that knows the addresses of all others. */
const FIRST_PAGE = '/index.html'

/** A file with its content in its name never changes, so one that is kept already is not fetched again. */
async function fetched(path: string): Promise<Response> {
  const isNamedByContent = path.startsWith('/assets/')
  const known = isNamedByContent ? await caches.match(path) : undefined
  const answer = known ?? (await fetch(path, { cache: isNamedByContent ? 'default' : 'no-cache' }))
  if (!answer.ok) throw new Error(`${path} answered ${answer.status}`)
  return answer
}

/** Keeps all files, or none. */
async function keepAll(): Promise<void> {
  const answers = await Promise.all(KEPT.files.map(fetched))
  const cache = await caches.open(current)
  await Promise.all(answers.map((answer, i) => cache.put(KEPT.files[i]!, answer)))
  await self.skipWaiting()
}

/** Pages that are open go on with the version they came from, so the one before stays until the next. */
async function takeOver(): Promise<void> {
  const older = (await caches.keys()).filter((name) => name.startsWith(PREFIX) && name !== current)
  await Promise.all(older.slice(0, -1).map((name) => caches.delete(name)))
  await self.clients.claim()
}

async function kept(request: Request): Promise<Response> {
  const { pathname } = new URL(request.url)
  const isPage = request.mode === 'navigate' && !/\.\w+$/.test(pathname)
  const file = isPage ? FIRST_PAGE : pathname
  const found = (await caches.match(file, { cacheName: current })) ?? (await caches.match(file))
  return found ?? fetch(request)
}

self.addEventListener('install', (event) => event.waitUntil(keepAll()))
self.addEventListener('activate', (event) => event.waitUntil(takeOver()))
self.addEventListener('fetch', (event) => {
  const { origin, pathname } = new URL(event.request.url)
  const isOwn = origin === self.location.origin && !/^\/api(\/|$)/.test(pathname)
  if (isOwn && event.request.method === 'GET') event.respondWith(kept(event.request))
})
