import { html, LitElement } from 'lit'
import { customElement } from 'lit/decorators.js'
import { pageWear } from '../styles/all.ts'

/** Ask the yard. */
@customElement('lumber-page')
export class LumberPage extends LitElement {
  static override styles = pageWear

  override render() {
    return html`<div class="page"><div class="page-head"><h1>Ask the yard</h1></div></div>`
  }
}
