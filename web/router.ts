export const jobPages = ['profile', 'part', 'wood', 'work', 'rack', 'checks'] as const
export type JobPage = (typeof jobPages)[number]

/** What to ask the yard for, boards picked at the yard, boards on hand. */
export const lumberPages = ['lumber', 'yard', 'boards'] as const
export type LumberPage = (typeof lumberPages)[number]

/** Where the person is. */
export type Route =
  | { page: 'jobs' | 'new' | 'profiles' | 'shop' | 'ships' | 'missing' | LumberPage }
  | { page: JobPage; jobId: string }
  | { page: 'library' | 'measure'; profileId: string }

/** The route of an address; `missing` for one that leads nowhere. */
export function routeOf(path: string): Route {
  const steps = stepsOf(path)
  if (!steps) return { page: 'missing' }
  if (steps.length === 0 || (steps[0] === 'jobs' && steps.length === 1)) return { page: 'jobs' }
  if ((steps[0] === 'shop' || steps[0] === 'ships') && steps.length === 1) return { page: steps[0] }
  if (steps[0] === 'profiles') return libraryRoute(steps)
  if (steps[0] === 'lumber') return lumberRoute(steps)
  if (steps[0] !== 'jobs') return { page: 'missing' }
  if (steps[1] === 'new' && steps.length === 2) return { page: 'new' }
  const page = (steps[2] ?? 'profile') as JobPage
  return jobPages.includes(page) && steps.length <= 3 ? { page, jobId: steps[1]! } : { page: 'missing' }
}

/** The library, one of its profiles (`new` for one not stored yet), the measuring sheet of it. */
function libraryRoute([, profileId, page, ...more]: string[]): Route {
  if (profileId === undefined) return { page: 'profiles' }
  if (more.length > 0 || (page !== undefined && page !== 'measure')) return { page: 'missing' }
  return { page: page ?? 'library', profileId: profileId === 'new' ? '' : profileId }
}

function lumberRoute([lumber, page, ...more]: string[]): Route {
  const named = (page ?? lumber) as LumberPage
  return more.length === 0 && page !== 'lumber' && lumberPages.includes(named)
    ? { page: named }
    : { page: 'missing' }
}

/** The address of a page about lumber. */
export const lumberPath = (page: LumberPage): string => (page === 'lumber' ? '/lumber' : `/lumber/${page}`)

/** Where the yard is asked, or boards are picked, for these jobs. */
export const lumberPathFor = (jobIds: readonly string[], page: 'lumber' | 'yard' = 'lumber'): string =>
  jobIds.length === 0
    ? lumberPath(page)
    : `${lumberPath(page)}?${new URLSearchParams({ jobs: jobIds.join(',') })}`

/** The jobs an address names. */
export const jobsNamed = (search: string): string[] =>
  (new URLSearchParams(search).get('jobs') ?? '').split(',').filter(Boolean)

/** The steps of an address; nothing for one whose escapes cannot be read. */
function stepsOf(path: string): string[] | undefined {
  try {
    return path.split('/').filter(Boolean).map(decodeURIComponent)
  } catch {
    return undefined
  }
}

/** The address of a job's page. */
export const jobPath = (jobId: string, page: JobPage): string => `/jobs/${encodeURIComponent(jobId)}/${page}`

/** The address of a profile of the library, or of its measuring sheet; of a new one for `''`. */
export const profilePath = (profileId: string, page: 'library' | 'measure' = 'library'): string =>
  `/profiles/${profileId ? encodeURIComponent(profileId) : 'new'}${page === 'measure' ? '/measure' : ''}`

/** Goes to an address of this program without loading the document again. */
export function go(path: string, { replace = false } = {}): void {
  history[replace ? 'replaceState' : 'pushState'](null, '', path)
  dispatchEvent(new PopStateEvent('popstate'))
}

/** Follows links of this program by `go`; others (prints, other hosts, new windows) the browser follows. */
export function followLinks(event: MouseEvent): void {
  if (
    event.defaultPrevented ||
    event.button !== 0 ||
    event.metaKey ||
    event.ctrlKey ||
    event.shiftKey ||
    event.altKey
  )
    return
  const link = event
    .composedPath()
    .find((node): node is HTMLAnchorElement => node instanceof HTMLAnchorElement)
  if (!link || link.target || link.hasAttribute('download') || link.origin !== location.origin) return
  if (link.pathname.startsWith('/api/') || link.getAttribute('href')?.startsWith('#')) return
  event.preventDefault()
  go(link.pathname + link.search)
}
