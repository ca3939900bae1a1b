import { css, html, LitElement, nothing, type TemplateResult } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import type { Plan } from '../../shared/plan.ts'
import type { StoredJob } from '../job-file.ts'
import { jobPath } from '../router.ts'
import { pageWear } from '../styles/all.ts'
import { boardFeetText, hours, priceText } from './amounts.ts'
import { stateWords } from './job-card.ts'

/** Name, state and leading figures of the job at hand, and the way to the start of its batch. */
@customElement('job-strip')
export class JobStrip extends LitElement {
  static override styles = [
    ...pageWear,
    css`
      :host {
        background: var(--sheet);
        padding: var(--space-2) var(--space-4) 0;
      }
      .strip {
        display: flex;
        flex-wrap: wrap;
        gap: var(--space-2) var(--space-6);
        align-items: center;
      }
      .name {
        font-family: var(--serif);
        font-size: var(--size-large);
        font-weight: 600;
        overflow-wrap: anywhere;
      }
      .name p {
        display: inline;
      }
      dl.figures {
        gap: var(--space-1) var(--space-6);
      }
      dl.figures dd {
        font-size: var(--size);
      }
      .quote {
        font-size: var(--size-small);
        font-weight: 400;
      }
      .start {
        margin-left: auto;
      }
      @media (min-width: 46rem) {
        .start {
          order: 1;
        }
      }
      /* On a narrow page the figures stand beside their names, and the batch is started on the Rack page. */
      @media (max-width: 46rem) {
        .start {
          display: none;
        }
        dl.figures {
          gap: 0 var(--space-3);
        }
        dl.figures > div {
          display: flex;
          gap: var(--space-1);
          align-items: baseline;
          position: relative;
        }
        /* What says by itself what it is needs no label where room is short. */
        dl.figures > .plain dt {
          position: absolute;
          width: 1px;
          height: 1px;
          overflow: hidden;
          clip-path: inset(50%);
        }
        .range {
          display: none;
        }
        dl.figures dd {
          font-size: var(--size-small);
        }
      }
    `,
  ]

  @property({ attribute: false }) job!: StoredJob
  @property({ attribute: false }) plan!: Plan
  /** There are edits on this device that the figures do not show. */
  @property({ type: Boolean }) unsaved = false
  /** Address of the quote to print. */
  @property() quotePath = ''

  private price(price: string) {
    return html`<div>
      <dt>Price</dt>
      <dd>${price} <a class="quote no-print" href=${this.quotePath} target="_blank">quote to print</a></dd>
    </div>`
  }

  override render() {
    const { job, plan, unsaved } = this
    const { blank, boardFeet, time, quote } = plan
    return html`
      <section class="strip" aria-label="The job at hand">
        <div class="name">
          <p>${job.name}</p>
          <span class="mark ${job.state === 'started' ? 'going' : job.state === 'done' ? 'in' : ''}">${stateWords[job.state]}</span>
        </div>
        ${
          job.state === 'draft'
            ? html`<div class="start no-print">
              <a class="button main" href=${jobPath(job.id, 'rack')}>To the start of the batch</a>
            </div>`
            : nothing
        }
        <dl class="figures">
          ${fact('Quantity', `${job.quantity} ${plan.job.profile.split ? 'halves' : 'pieces'}`, 'plain')}
          ${fact('Blanks', `${blank.count} blanks, ${blank.spares} spare`, 'plain')}
          ${fact('Wood to buy', boardFeetText(boardFeet.bought))}
          ${fact('Time', html`${hours(time.p50)} h<span class="range"> (${hours(time.p10)}–${hours(time.p90)} h)</span>`)}
          ${quote ? this.price(priceText(quote.total, quote.currency)) : nothing}
        </dl>
      </section>
      ${unsaved ? html`<p class="small soft no-print">The figures are of the job as saved; there are unsaved edits on this device.</p>` : nothing}
    `
  }
}

const fact = (name: string, value: string | TemplateResult, kind = '') =>
  html`<div class=${kind}><dt>${name}</dt><dd>${value}</dd></div>`
