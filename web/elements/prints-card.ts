import { css, html, LitElement } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import { SessionController } from '../session.ts'
import { pageWear } from '../styles/all.ts'
import './paper-choice.ts'

/** What can be printed true to scale, and the address of each print. */
export interface PrintLink {
  href: string
  name: string
  what: string
}

/** Prints at their own size, with the paper they are made for. Properties in; it sends nothing. */
@customElement('prints-card')
export class PrintsCard extends LitElement {
  static override styles = [
    ...pageWear,
    css`
      ul {
        display: grid;
        gap: var(--space-2);
      }
      li {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        gap: 0 var(--space-3);
      }
    `,
  ]

  @property({ attribute: false }) links: readonly PrintLink[] = []

  constructor() {
    super()
    new SessionController(this)
  }

  override render() {
    return html`
      <div class="page">
        <paper-choice></paper-choice>
        <ul class="plain">
          ${this.links.map(
            ({ href, name, what }) => html`<li>
              <a class="button" href=${href} target="_blank">${name}</a>
              <span class="small soft">${what}</span>
            </li>`,
          )}
        </ul>
        <p class="small soft">Print at 100 %, never “fit to page”, and lay a rule on the bars of every sheet before use.</p>
      </div>
    `
  }
}
