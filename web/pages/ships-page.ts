import { html, LitElement } from 'lit'
import { customElement } from 'lit/decorators.js'
import { pageWear } from '../styles/all.ts'

/** When every open job ships, and what a job that goes first makes late. */
@customElement('ships-page')
export class ShipsPage extends LitElement {
  static override styles = pageWear

  override render() {
    return html`<div class="page"><h1>When it ships</h1></div>`
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'ships-page': ShipsPage
  }
}
