import { html, LitElement } from 'lit'
import { customElement } from 'lit/decorators.js'
import { pageWear } from '../styles/all.ts'

/** The library of profiles. */
@customElement('profiles-page')
export class ProfilesPage extends LitElement {
  static override styles = pageWear

  override render() {
    return html`<div class="page"></div>`
  }
}
