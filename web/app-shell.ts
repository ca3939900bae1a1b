import { css, html, LitElement, nothing } from 'lit'
import { customElement, state } from 'lit/decorators.js'
import './elements/display-choices.ts'
import { hasNewerVersion, watchOffline } from './offline.ts'
import { pageFiles } from './page-files.ts'
import {
  followLinks,
  type JobPage,
  jobPages,
  jobPath,
  type LumberPage,
  lumberPages,
  lumberPath,
  type Route,
  routeOf,
} from './router.ts'
import { pageWear } from './styles/all.ts'

const titles: Record<Route['page'], string> = {
  jobs: 'Jobs',
  new: 'New job',
  shop: 'Shop',
  ships: 'When it ships',
  missing: 'Not found',
  profiles: 'Profiles',
  library: 'Profile',
  measure: 'Copy a piece',
  lumber: 'Ask the yard',
  yard: 'At the yard',
  boards: 'Boards on hand',
  profile: 'Profile',
  part: 'Part',
  wood: 'Wood',
  work: 'Work',
  rack: 'Rack',
  checks: 'Checks',
} // prettier-ignore

/** The frame of every page: navigation, the strip of the job at hand, the page itself. */
@customElement('app-shell')
export class AppShell extends LitElement {
  static override styles = [
    ...pageWear,
    css`
      .skip {
        position: absolute;
        left: var(--space-2);
        top: -5rem;
        z-index: 2;
      }
      .skip:focus {
        top: var(--space-2);
      }
      header {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        gap: 0 var(--space-4);
        padding: var(--space-1) var(--space-4);
        border-bottom: 1px solid var(--line);
      }
      .brand {
        font-family: var(--serif);
        font-size: var(--size-large);
        font-weight: 700;
        color: var(--ink);
        text-decoration: none;
        min-height: var(--touch);
        display: inline-flex;
        align-items: center;
      }
      .brand img {
        display: none;
      }
      nav {
        display: flex;
        gap: var(--space-1);
      }
      nav a {
        display: inline-flex;
        align-items: center;
        justify-content: center;
        min-height: var(--touch);
        min-width: var(--touch);
        padding: 0 var(--space-3);
        color: var(--ink);
        text-decoration: none;
        font-weight: 600;
        border-bottom: 3px solid transparent;
      }
      nav a:hover {
        color: var(--accent);
      }
      nav a[aria-current] {
        color: var(--accent);
        border-bottom-color: var(--accent);
      }
      display-choices {
        margin-left: auto;
      }
      .job-nav {
        padding: 0 var(--space-4);
        border-bottom: 1px solid var(--line);
        background: var(--sheet);
      }
      .newer {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        gap: 0 var(--space-4);
        padding: var(--space-1) var(--space-4);
        background: var(--accent-wash);
      }
      .newer p {
        margin: 0;
      }
      @media (max-width: 30rem) {
        header {
          gap: 0;
          padding: var(--space-1) var(--space-2);
        }
        .brand {
          min-width: var(--touch);
        }
        .brand img {
          display: block;
        }
        .brand span {
          display: none;
        }
        nav {
          gap: 0;
        }
        header nav a {
          padding: 0 var(--space-1);
          font-size: var(--size-small);
        }
        .job-nav {
          padding: 0;
        }
        .job-nav a {
          flex: 1;
          padding: 0 var(--space-1);
          line-height: 1.2;
          text-align: center;
        }
      }
      main {
        display: block;
        max-width: 84rem;
        margin: 0 auto;
        padding: var(--space-4) var(--space-4) 4rem;
      }
      main:focus {
        outline: none;
      }
      @media print {
        main {
          padding: var(--space-4) 0 0;
          max-width: none;
        }
      }
    `,
  ]

  @state() private route: Route = routeOf(location.pathname)
  /** The pages whose files are here. */
  @state() private here: ReadonlySet<Route['page']> = new Set(['missing'])
  /** Whether the files of the page gone to cannot be had. */
  @state() private outOfReach = false
  private unwatch?: () => void

  private get main(): HTMLElement | null {
    return this.renderRoot.querySelector('main')
  }

  override connectedCallback() {
    super.connectedCallback()
    addEventListener('popstate', this.follow)
    document.addEventListener('click', followLinks)
    addEventListener('online', this.fetchAgain)
    this.unwatch = watchOffline(() => this.requestUpdate())
    this.entitle()
    void this.fetchPage()
  }

  override disconnectedCallback() {
    removeEventListener('popstate', this.follow)
    removeEventListener('online', this.fetchAgain)
    document.removeEventListener('click', followLinks)
    this.unwatch?.()
    super.disconnectedCallback()
  }

  private readonly follow = () => {
    this.route = routeOf(location.pathname)
    this.entitle()
    void this.fetchPage()
    scrollTo(0, 0)
    this.main?.focus({ preventScroll: true })
  }

  private entitle(jobName?: string) {
    document.title = [titles[this.route.page], jobName, 'Setwright'].filter(Boolean).join(' · ')
  }

  private readonly fetchAgain = () => void this.fetchPage()

  private async fetchPage() {
    const { page } = this.route
    this.outOfReach = false
    if (page === 'missing' || this.here.has(page)) return
    try {
      await pageFiles[page]()
      this.here = new Set([...this.here, page])
    } catch (error) {
      console.error(error)
      if (page === this.route.page) this.outOfReach = true
    }
  }

  private readonly nameJob = (event: CustomEvent<string>) => this.entitle(event.detail)

  private readonly skip = () => this.main?.focus()

  override render() {
    const { route } = this
    const current = (page: Route['page']) => (route.page === page ? 'page' : nothing)
    return html`
      <header class="no-print">
        <button type="button" class="skip" @click=${this.skip}>Skip to the page</button>
        <a class="brand" href="/jobs" aria-label="Setwright">
          <img src="/mark.svg" alt="" width="32" height="32" /><span>Setwright</span>
        </a>
        <nav aria-label="Main">
          <a href="/jobs" aria-current=${current('jobs')}>Jobs</a>
          <a href="/profiles" aria-current=${current('profiles')}>Profiles</a>
          <a href="/lumber" aria-current=${lumberPages.includes(route.page as LumberPage) ? 'true' : nothing}>Lumber</a>
          <a href="/shop" aria-current=${current('shop')}>Shop</a>
        </nav>
        <display-choices></display-choices>
      </header>
      ${'jobId' in route ? this.jobFrame(route) : nothing}
      ${lumberPages.includes(route.page as LumberPage) ? this.lumberNav() : nothing}
      ${hasNewerVersion() ? this.newerVersion() : nothing}
      <main id="main" tabindex="-1">${this.here.has(route.page) ? this.page() : this.fetching()}</main>
    `
  }

  private fetching() {
    if (!this.outOfReach) return html`<p class="soft" role="status">Fetching…</p>`
    return html`<div class="page">
      <div class="page-head"><h1>${titles[this.route.page]}</h1></div>
      <div class="problem" role="alert">
        <p>This page cannot be fetched: the server is out of reach, and this device has not kept it.</p>
        <p><button type="button" @click=${this.fetchAgain}>Try again</button></p>
      </div>
    </div>`
  }

  private newerVersion() {
    return html`<div class="newer no-print" role="status">
      <p>A newer version of Setwright is on this device; it comes with the next load. What you entered stays.</p>
      <button type="button" @click=${() => location.reload()}>Load it now</button>
    </div>`
  }

  private jobFrame(route: { page: JobPage; jobId: string }) {
    return html`
      <job-frame .jobId=${route.jobId} @job-named=${this.nameJob}></job-frame>
      <nav class="job-nav no-print" aria-label="Job">
        ${jobPages.map(
          (
            page,
          ) => html`<a href=${jobPath(route.jobId, page)} aria-current=${route.page === page ? 'page' : nothing}>
            ${titles[page]}
          </a>`,
        )}
      </nav>
    `
  }

  private lumberNav() {
    return html`<nav class="job-nav no-print" aria-label="Lumber">
      ${lumberPages.map(
        (
          page,
        ) => html`<a href=${lumberPath(page)} aria-current=${this.route.page === page ? 'page' : nothing}>
          ${titles[page]}
        </a>`,
      )}
    </nav>`
  }

  private page() {
    const { route } = this
    switch (route.page) {
      case 'jobs':
        return html`<jobs-page></jobs-page>`
      case 'new':
        return html`<profile-page .jobId=${''}></profile-page>`
      case 'profile':
        return html`<profile-page .jobId=${route.jobId}></profile-page>`
      case 'part':
        return html`<part-page .jobId=${route.jobId}></part-page>`
      case 'wood':
        return html`<wood-page .jobId=${route.jobId}></wood-page>`
      case 'work':
        return html`<work-page .jobId=${route.jobId}></work-page>`
      case 'rack':
        return html`<rack-page .jobId=${route.jobId}></rack-page>`
      case 'checks':
        return html`<checks-page .jobId=${route.jobId}></checks-page>`
      case 'profiles':
        return html`<profiles-page></profiles-page>`
      case 'library':
        return html`<library-page .profileId=${route.profileId}></library-page>`
      case 'measure':
        return html`<measure-page .profileId=${route.profileId}></measure-page>`
      case 'lumber':
        return html`<lumber-page></lumber-page>`
      case 'yard':
        return html`<yard-page></yard-page>`
      case 'boards':
        return html`<boards-page></boards-page>`
      case 'shop':
        return html`<shop-page></shop-page>`
      case 'ships':
        return html`<ships-page></ships-page>`
      case 'missing':
        return html`<h1>Nothing here</h1>
          <p>No page has the address ${location.pathname}. <a href="/jobs">Go to the jobs</a></p>`
    }
  }
}
