import { css, html, LitElement } from 'lit'
import { customElement } from 'lit/decorators.js'
import { live } from 'lit/directives/live.js'
import { changeSession, type Session, SessionController, session } from '../session.ts'
import { pageWear } from '../styles/all.ts'
import './paper-choice.ts'

/** What this person chooses for all pages on this device: lengths, light, paper, and the name beside their readings. */
@customElement('display-panel')
export class DisplayPanel extends LitElement {
  static override styles = [
    ...pageWear,
    css`
      :host {
        display: grid;
        gap: var(--space-4);
        grid-template-columns: minmax(0, 1fr);
      }
    `,
  ]

  constructor() {
    super()
    new SessionController(this)
  }

  override render() {
    const { style, theme, by } = session()
    const choose = (field: keyof Session) => (event: Event) =>
      changeSession({ [field]: (event.target as HTMLSelectElement).value || undefined })
    return html`
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
    `
  }
}
