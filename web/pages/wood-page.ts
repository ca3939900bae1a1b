import { html, LitElement } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import { pageWear } from '../styles/all.ts'

@customElement('wood-page')
export class WoodPage extends LitElement {
  static override styles = pageWear
  @property() jobId = ''

  override render() {
    return html`<h1>wood</h1>`
  }
}
