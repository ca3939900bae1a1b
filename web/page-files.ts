import type { Route } from './router.ts'

type Fetching = () => Promise<unknown>

const ofJob = (page: Fetching): Fetching => {
  return () => Promise.all([import('./pages/job-frame.ts'), page()])
}

const profile: Fetching = () => import('./pages/profile-page.ts')

/** Fetches what a page is made of; each is fetched when it is first gone to, and once only. */
export const pageFiles: Record<Exclude<Route['page'], 'missing'>, Fetching> = {
  jobs: () => import('./pages/jobs-page.ts'),
  new: profile,
  shop: () => import('./pages/shop-page.ts'),
  ships: () => import('./pages/ships-page.ts'),
  profiles: () => import('./pages/profiles-page.ts'),
  library: () => import('./pages/library-page.ts'),
  measure: () => import('./pages/measure-page.ts'),
  lumber: () => import('./pages/lumber-page.ts'),
  yard: () => import('./pages/yard-page.ts'),
  boards: () => import('./pages/boards-page.ts'),
  profile: ofJob(profile),
  part: ofJob(() => import('./pages/part-page.ts')),
  wood: ofJob(() => import('./pages/wood-page.ts')),
  work: ofJob(() => import('./pages/work-page.ts')),
  rack: ofJob(() => import('./pages/rack-page.ts')),
  checks: ofJob(() => import('./pages/checks-page.ts')),
}

/** Fetches all of them, so that no page is missed when the server goes out of reach. */
export async function fetchAllPages(): Promise<void> {
  const panel: Fetching = () => import('./elements/display-panel.ts')
  const yardParts: Fetching = async () => (await import('./pages/yard-page.ts')).fetchParts()
  for (const fetchPage of [panel, ...Object.values(pageFiles), yardParts]) {
    try {
      await fetchPage()
    } catch {
      // It is asked for again when it is gone to.
    }
  }
}
