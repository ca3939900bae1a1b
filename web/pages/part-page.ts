import { html, LitElement } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import { pageWear } from '../styles/all.ts'

/** The part of a job by itself: whip, movement, weight, joints, how it is turned and split. */
@customElement('part-page')
export class PartPage extends LitElement {
  static override styles = pageWear

  @property() jobId = ''

  override render() {
    return html`<div class="page"></div>`
  }
}
