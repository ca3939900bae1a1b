import { html, LitElement } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import { pageWear } from '../styles/all.ts'

/** The measuring sheet: a piece is copied at the bench. */
@customElement('measure-page')
export class MeasurePage extends LitElement {
  static override styles = pageWear

  @property() profileId = ''

  override render() {
    return html`<div class="page"></div>`
  }
}
