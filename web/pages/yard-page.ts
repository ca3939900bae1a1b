import { html, LitElement } from 'lit'
import { customElement } from 'lit/decorators.js'
import { pageWear } from '../styles/all.ts'

/** At the yard. */
@customElement('yard-page')
export class YardPage extends LitElement {
  static override styles = pageWear

  override render() {
    return html`<div class="page"><div class="page-head"><h1>At the yard</h1></div></div>`
  }
}
