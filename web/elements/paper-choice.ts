import { html, LitElement, nothing } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import { readLength } from '../../shared/units/length.ts'
import { changeSession, SessionController, session } from '../session.ts'
import { pageWear } from '../styles/all.ts'

/** What prints are made for: Letter, A4, or a roll of some width. Kept on this device. */
@customElement('paper-choice')
export class PaperChoice extends LitElement {
  static override styles = pageWear

  @property() label = 'Paper of prints'

  constructor() {
    super()
    new SessionController(this)
  }

  private readonly choose = (event: Event) => {
    const chosen = (event.target as HTMLSelectElement).value
    changeSession({ paper: chosen === '' ? undefined : (chosen as 'letter' | 'a4' | 'roll') })
  }

  private readonly enterWidth = (event: Event) =>
    changeSession({ rollWidth: (event.target as HTMLInputElement).value.trim() || undefined })

  override render() {
    const { paper, rollWidth = '' } = session()
    const unreadable = paper === 'roll' && rollWidth !== '' && readLength(rollWidth, 'in') === undefined
    return html`
      <div class="fields">
        <div class="field wide">
          <label for="paper">${this.label}</label>
          <select id="paper" @change=${this.choose} .value=${paper ?? ''}>
            <option value="" ?selected=${!paper}>as the shop’s units</option>
            <option value="letter" ?selected=${paper === 'letter'}>Letter</option>
            <option value="a4" ?selected=${paper === 'a4'}>A4</option>
            <option value="roll" ?selected=${paper === 'roll'}>a roll</option>
          </select>
        </div>
        ${
          paper === 'roll'
            ? html`<div class="field">
              <label for="roll-width">Width of the roll</label>
              <input id="roll-width" autocomplete="off" .value=${rollWidth} placeholder="24 in or 610 mm" @change=${this.enterWidth}
                aria-invalid=${unreadable ? 'true' : nothing} aria-describedby=${unreadable ? 'roll-error' : nothing} />
              ${unreadable ? html`<p class="error" id="roll-error">must be a length such as 24 in or 610 mm</p>` : nothing}
            </div>`
            : nothing
        }
      </div>
    `
  }
}
