import { html, LitElement } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import { pageWear } from '../styles/all.ts'

/** Name, state and leading figures of the job at hand, on every page of it. */
@customElement('job-strip')
export class JobStrip extends LitElement {
  static override styles = pageWear
  @property() jobId = ''

  override render() {
    return html``
  }
}
