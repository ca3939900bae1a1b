import { css, html, LitElement, nothing } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import type { JobState } from '../../shared/contract/job.ts'
import type { Plan } from '../../shared/plan.ts'
import type { StoredJob } from '../job-file.ts'
import { jobPath } from '../router.ts'
import { pageWear } from '../styles/all.ts'
import { boardFeetText, hours, priceText } from './amounts.ts'
import { cardLook } from './card-look.ts'
import './turned-part.ts'

export const stateWords: Record<JobState, string> = { draft: 'draft', started: 'in work', done: 'done' }

/** How far a batch has come: pieces finished of those ordered, and the share of the work, 0 to 1. */
export interface Progress {
  made: number
  share: number
}

/** One job of the list: what it is, its part drawn, what its plan comes to. Sends `duplicate` and `delete`. */
@customElement('job-card')
export class JobCard extends LitElement {
  static override styles = [
    ...pageWear,
    cardLook,
    css`
      .day {
        white-space: nowrap;
      }
      progress {
        width: 100%;
        height: 0.75rem;
        accent-color: var(--accent);
      }
      .quantity {
        font-size: var(--size-figure);
        font-weight: 650;
        line-height: 1;
      }
      .part {
        height: 4.5rem;
      }
      dl.figures {
        gap: var(--space-1) var(--space-4);
      }
      dl.figures dd {
        font-size: var(--size);
      }
    `,
  ]

  @property({ attribute: false }) job!: StoredJob
  @property({ attribute: false }) wood = ''
  @property({ attribute: false }) come?: Progress
  /** The day it ships, in words; absent where nobody waits for it. */
  @property() ships = ''
  /** Absent until it is fetched, or where the job cannot be planned. */
  @property({ attribute: false }) plan?: Plan

  override render() {
    const { job, plan } = this
    const page = job.state === 'draft' ? 'profile' : job.state === 'started' ? 'rack' : 'checks'
    return html`
      <div class="line">
        <a class="name" href=${jobPath(job.id, page)}>${job.name}</a>
        <span class="mark ${job.state === 'started' ? 'going' : job.state === 'done' ? 'in' : ''}">${stateWords[job.state]}</span>
      </div>
      <div class="part">
        ${plan ? html`<turned-part compact orientation="horizontal" .profile=${plan.job.profile} .species=${plan.job.species}></turned-part>` : nothing}
      </div>
      <div>
        <p class="line"><span class="quantity">${job.quantity}</span> ${this.pieces()} in ${this.wood}</p>
        <p class="soft">
          ${job.customer ? `for ${job.customer}` : job.due ? nothing : 'no customer, no date'}${job.customer && job.due ? ', ' : nothing}${job.due ? html`<span class="day">due ${job.due}</span>` : nothing}
        </p>
        ${this.ships ? html`<p>${this.ships}</p>` : nothing}
        ${plan ? this.figures(plan) : nothing}
        ${this.progress()}
      </div>
      <div class="buttons no-print">
        <button type="button" aria-label="Duplicate ${job.name}" @click=${() => this.send('duplicate')}>Duplicate</button>
        <button type="button" class="danger" aria-label="Delete ${job.name}" @click=${() => this.send('delete')}>Delete</button>
      </div>
    `
  }

  private readonly pieces = () => (this.job.profile.split ? 'halves' : 'pieces')

  private figures({ blank, boardFeet, time, quote }: Plan) {
    return html`<dl class="figures">
      ${fact('Blanks', `${blank.count}, ${blank.spares} spare`)}
      ${fact('Wood to buy', boardFeetText(boardFeet.bought))}
      ${fact('Time', `${hours(time.p50)} h`)}
      ${quote ? fact('Price', priceText(quote.total, quote.currency)) : nothing}
    </dl>`
  }

  private progress() {
    const { come, job } = this
    if (!come) return nothing
    return html`<p class="small">
      <progress max="1" value=${come.share} aria-label="Progress of ${job.name}"></progress>
      ${come.made} of ${job.quantity} ${this.pieces()} finished, ${Math.round(come.share * 100)} % of the work done
    </p>`
  }

  private send(name: 'duplicate' | 'delete') {
    this.dispatchEvent(new CustomEvent(name))
  }
}

const fact = (name: string, value: string) => html`<div><dt>${name}</dt><dd>${value}</dd></div>`
