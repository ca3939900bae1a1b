import { css, html, LitElement } from 'lit'
import { customElement } from 'lit/decorators.js'
import { live } from 'lit/directives/live.js'
import { changeSession, type Session, SessionController, session } from '../session.ts'
import { pageWear } from '../styles/all.ts'
import './paper-choice.ts'

/** How this person wants lengths and light, and the name that stands beside their readings. */
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

  constructor() {
    super()
    new SessionController(this)
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
    const { style, theme, by } = session()
    const choose = (field: keyof Session) => (event: Event) =>
      changeSession({ [field]: (event.target as HTMLSelectElement).value || undefined })
    return html`
      <details @focusout=${this.leave} @keydown=${this.escape}>
        <summary>Display</summary>
        <div class="panel card">
          <div class="field">
            <label for="style">Lengths shown in</label>
            <select id="style" @change=${choose('style')} .value=${style ?? ''}>
              <option value="" .selected=${live(!style)}>as each job is written</option>
              <option value="fraction" .selected=${live(style === 'fraction')}>inches, fractions</option>
              <option value="decimal" .selected=${live(style === 'decimal')}>inches, decimals</option>
              <option value="mm" .selected=${live(style === 'mm')}>millimetres</option>
            </select>
          </div>
          <div class="field">
            <label for="theme">Light</label>
            <select id="theme" @change=${choose('theme')} .value=${theme ?? ''}>
              <option value="" .selected=${live(!theme)}>as this device is set</option>
              <option value="light" .selected=${live(theme === 'light')}>light</option>
              <option value="dark" .selected=${live(theme === 'dark')}>dark</option>
            </select>
          </div>
          <paper-choice></paper-choice>
          <div class="field">
            <label for="by">Your name, beside readings</label>
            <input id="by" autocomplete="name" .value=${by} @change=${(e: Event) => changeSession({ by: (e.target as HTMLInputElement).value.trim() })} />
          </div>
        </div>
      </details>
    `
  }
}
