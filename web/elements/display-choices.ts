import { css, html, LitElement } from 'lit'
import { customElement } from 'lit/decorators.js'
import { pageWear } from '../styles/all.ts'

/** Where the person chooses how all pages look; what is in it is fetched when it is first opened. */
@customElement('display-choices')
export class DisplayChoices extends LitElement {
  static override styles = [
    ...pageWear,
    css`
      :host {
        position: relative;
      }
      .panel {
        position: absolute;
        right: 0;
        z-index: 3;
        width: min(18rem, calc(100vw - 2rem));
        box-shadow: 0 0.5rem 1.5rem rgb(0 0 0 / 0.25);
      }
    `,
  ]

  private readonly fetchPanel = () => {
    // Out of reach of the server it stays empty; it is asked for again at the next opening.
    import('./display-panel.ts').catch(() => {})
  }

  private readonly leave = (event: FocusEvent) => {
    const details = event.currentTarget as HTMLDetailsElement
    if (event.relatedTarget && !details.contains(event.relatedTarget as Node)) details.open = false
  }

  private readonly escape = (event: KeyboardEvent) => {
    const details = event.currentTarget as HTMLDetailsElement
    if (event.key !== 'Escape' || !details.open) return
    details.open = false
    details.querySelector('summary')!.focus()
  }

  override render() {
    return html`
      <details @toggle=${this.fetchPanel} @focusout=${this.leave} @keydown=${this.escape}>
        <summary>Display</summary>
        <div class="panel card"><display-panel></display-panel></div>
      </details>
    `
  }
}
