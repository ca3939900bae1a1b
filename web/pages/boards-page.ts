import { html, LitElement } from 'lit'
import { customElement } from 'lit/decorators.js'
import { pageWear } from '../styles/all.ts'

/** Boards on hand. */
@customElement('boards-page')
export class BoardsPage extends LitElement {
  static override styles = pageWear

  override render() {
    return html`<div class="page"><div class="page-head"><h1>Boards on hand</h1></div></div>`
  }
}
