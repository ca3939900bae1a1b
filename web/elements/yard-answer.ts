import { css, html, LitElement, nothing, type TemplateResult } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import { putBack } from '../../shared/cutting/pick.ts'
import { pageWear } from '../styles/all.ts'
import { feetMissingWords, liftRuns, missingWords, proofWords, unpricedWords } from '../yard-answer-words.ts'
import type { Choice } from '../yard-order.ts'
import { onPile, type YardTally } from '../yard-tally.ts'
import { chargeWords } from '../yard-words.ts'

/**
 * What the boards on the pile are good for: the cheapest choice with its proof and what goes back, or what is still
 * missing. Sends `restack` with how the boards went back.
 */
@customElement('yard-answer')
export class YardAnswer extends LitElement {
  static override styles = [
    ...pageWear,
    css`
      .large {
        font-size: 1.125rem;
      }
      @media (max-width: 30rem) {
        .card {
          padding: var(--space-3) var(--space-2);
        }
      }
    `,
  ]

  @property({ attribute: false }) choice!: Choice
  @property({ attribute: false }) tally!: YardTally
  /** A better choice is still looked for. */
  @property({ type: Boolean }) searching = false

  override render() {
    const { choice, tally } = this
    const isEnough = choice.missing === 0
    const unpriced = unpricedWords(onPile(tally), tally)
    return html`<section class="card" aria-labelledby="answer">
      <h2 id="answer">${isEnough ? 'The cheapest choice so far' : 'Pull more'}</h2>
      ${isEnough ? html`<p class="large">${proofWords(choice, tally.currency, this.searching)}</p>` : this.missing()}
      ${choice.onHand > 0 ? html`<p>${choice.onHand === 1 ? 'One board' : `${choice.onHand} boards`} on hand used first.</p>` : nothing}
      ${unpriced ? html`<p class="caution">${unpriced}</p>` : nothing}
      ${chargeWords(choice.keep, tally).map((line) => html`<p class="caution">${line}</p>`)}
      ${isEnough && choice.back.length > 0 ? this.puttingBack() : nothing}
    </section>`
  }

  private missing(): TemplateResult {
    const { choice, tally } = this
    const { wanted, missing } = choice
    return html`<p class="large">${wanted - missing} of ${wanted} blanks can be cut so far. ${feetMissingWords(choice, tally.needs)}</p>
      ${tally.needs.length > 1 ? html`<ul>${missingWords(choice, tally.needs).map((line) => html`<li>${line}</li>`)}</ul>` : nothing}`
  }

  private puttingBack(): TemplateResult {
    if (this.searching) return html`<p class="soft">Wait a moment before you put any back.</p>`
    const pile = onPile(this.tally)
    const back = putBack(
      pile.map(({ board }) => board),
      new Set(this.choice.keep.map(({ board }) => board.key)),
    )
    const numbers = new Map(pile.map(({ board, number }) => [board.key, number]))
    return html`<h3>Put back</h3>
      <yard-put-back .runs=${liftRuns(back.lifts, pile)} .stay=${back.stay.map((key) => numbers.get(key)!)}
        @done=${() => this.dispatchEvent(new CustomEvent('restack', { detail: back }))}></yard-put-back>`
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'yard-answer': YardAnswer
  }
}
