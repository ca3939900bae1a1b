import { html, LitElement } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import { pageWear } from '../styles/all.ts'

@customElement('shop-page')
export class ShopPage extends LitElement {
  static override styles = pageWear
  @property() jobId = ''

  override render() {
    return html`<h1>shop</h1>`
  }
}
