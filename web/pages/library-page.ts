import { html, LitElement } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import { pageWear } from '../styles/all.ts'

/** One profile of the library: draw it, compare its versions, make a job of it. */
@customElement('library-page')
export class LibraryPage extends LitElement {
  static override styles = pageWear

  @property() profileId = ''

  override render() {
    return html`<div class="page"></div>`
  }
}
