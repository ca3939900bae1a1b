import { html, LitElement } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import { pageWear } from '../styles/all.ts'

@customElement('profile-page')
export class ProfilePage extends LitElement {
  static override styles = pageWear
  @property() jobId = ''

  override render() {
    return html`<h1>profile</h1>`
  }
}
