import type { ReactiveController, ReactiveControllerHost, TemplateResult } from 'lit'
import { html } from 'lit'
import { Refusal } from './api.ts'

/** Something being fetched for an element: waiting, there, or refused. */
export class Load<T> implements ReactiveController {
  value: T | undefined
  failure: Error | undefined
  private readonly host: ReactiveControllerHost
  private turn = 0

  constructor(host: ReactiveControllerHost) {
    this.host = host
    host.addController(this)
  }

  hostConnected() {}

  /**
   * Asks; what was shown before stays until the answer is there, an older answer that comes late is dropped. Comes to
   * what was fetched; to nothing where it was refused, or overtaken by a later question.
   */
  async from(ask: () => Promise<T>): Promise<T | undefined> {
    const turn = ++this.turn
    try {
      const value = await ask()
      if (turn !== this.turn) return undefined
      this.value = value
      this.failure = undefined
    } catch (failure) {
      if (turn !== this.turn) return undefined
      this.failure = failure as Error
    }
    this.host.requestUpdate()
    return this.failure ? undefined : this.value
  }

  /** There is nothing of that name, and never was here. */
  get isMissing(): boolean {
    return this.value === undefined && this.failure instanceof Refusal && this.failure.status === 404
  }

  /** The page with what was fetched, or a word on why it is not there; the way back where there is no such thing. */
  shown(page: (value: T) => TemplateResult, again: () => void): TemplateResult {
    if (this.value !== undefined && !this.failure) return page(this.value)
    if (!this.failure) return html`<p class="soft" role="status">Fetching…</p>`
    if (this.isMissing) return nothingThere()
    return html`
      <div class="problem" role="alert">
        <p>${this.failure.message}</p>
        <p class="no-print"><button type="button" @click=${again}>Try again</button></p>
      </div>
      ${this.value === undefined ? '' : page(this.value)}
    `
  }
}

/** The page of a job or a profile that is not there. */
function nothingThere(): TemplateResult {
  const [what, back] = location.pathname.startsWith('/profiles')
    ? (['profile', '/profiles'] as const)
    : (['job', '/jobs'] as const)
  return html`<div class="page">
    <div class="page-head"><h1>No such ${what}</h1></div>
    <p role="alert">There is no ${what} at this address: it was deleted, or the address is not right.</p>
    <p><a class="button" href=${back}>All ${what}s</a></p>
  </div>`
}
