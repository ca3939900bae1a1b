import { html, LitElement, nothing, type TemplateResult } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import { pageWear } from '../styles/all.ts'
import { type Choice, sumOf } from '../yard-order.ts'
import { onPile, type PulledBoard, type YardTally } from '../yard-tally.ts'
import { chargeWords, sumWords } from '../yard-words.ts'
import './ask-twice.ts'

/** The end of a visit: which boards were bought. Sends `bought` with them, once it was asked twice. */
@customElement('yard-buying')
export class YardBuying extends LitElement {
  static override styles = pageWear

  @property({ attribute: false }) tally!: YardTally
  @property({ attribute: false }) choice?: Choice | undefined

  override render() {
    const { choice } = this
    const pile = onPile(this.tally)
    if (pile.length === 0) return nothing
    const chosen = choice && choice.missing === 0 && choice.back.length > 0 ? choice.keep : []
    return html`<section class="card" aria-labelledby="buying">
      <h2 id="buying">Bought?</h2>
      <p class="soft">The boards become boards on hand, sent as soon as the server is in reach. Until then everything is kept on this device.</p>
      ${choice ? nothing : chargeWords(pile, this.tally).map((line) => html`<p class="caution">${line}</p>`)}
      ${chosen.length > 0 ? this.way('those to keep', chosen) : nothing} ${this.way('all on the pile', pile)}
    </section>`
  }

  private way(which: string, boards: readonly PulledBoard[]): TemplateResult {
    const label = `Bought ${which}: ${sumWords(sumOf(boards, this.tally), this.tally.currency)}`
    return html`<ask-twice label=${label} answer="Yes, bought" question="${label}? The tally is closed by it."
      @confirmed=${() => this.dispatchEvent(new CustomEvent('bought', { detail: boards }))}></ask-twice>`
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'yard-buying': YardBuying
  }
}
