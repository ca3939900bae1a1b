import { html, LitElement, nothing } from 'lit'
import { customElement, property, state } from 'lit/decorators.js'
import { live } from 'lit/directives/live.js'
import { inches, nm, readLength } from '../../shared/units/length.ts'
import { changeSession, DEFAULT_ROLL, SessionController, session } from '../session.ts'
import { pageWear } from '../styles/all.ts'

/** Whole inches that a plotter’s roll is inside of; common practice, no source. */
const [NARROWEST, WIDEST] = [inches(8), inches(78)]

/** A width without a unit is in inches, whatever the shop writes in. */
const withUnit = (typed: string): string =>
  typed !== '' && readLength(typed, 'in') !== readLength(typed, 'mm') ? `${typed} in` : typed

/** What prints are made for: Letter, A4, or a roll of some width. Kept on this device. */
@customElement('paper-choice')
export class PaperChoice extends LitElement {
  static override styles = pageWear

  @property() label = 'Paper of prints'
  /** A width that is no length or no roll’s: it stays in its field and prints keep to the one before. */
  @state() private refused: string | undefined

  constructor() {
    super()
    new SessionController(this)
  }

  private readonly choose = (event: Event) => {
    const chosen = (event.target as HTMLSelectElement).value
    changeSession({ paper: chosen === '' ? undefined : (chosen as 'letter' | 'a4' | 'roll') })
  }

  private readonly enterWidth = (event: Event) => {
    const typed = (event.target as HTMLInputElement).value.trim()
    const mm = readLength(typed, 'in')
    const fits = typed === '' || (mm !== undefined && nm(mm) >= nm(NARROWEST) && nm(mm) <= nm(WIDEST))
    this.refused = fits ? undefined : typed
    if (fits) changeSession({ rollWidth: withUnit(typed) || undefined })
  }

  override render() {
    const { paper, rollWidth = '' } = session()
    return html`
      <div class="fields">
        <div class="field wide">
          <label for="paper">${this.label}</label>
          <select id="paper" @change=${this.choose} .value=${paper ?? ''}>
            <option value="" .selected=${live(!paper)}>as the shop’s units</option>
            <option value="letter" .selected=${live(paper === 'letter')}>Letter</option>
            <option value="a4" .selected=${live(paper === 'a4')}>A4</option>
            <option value="roll" .selected=${live(paper === 'roll')}>a roll</option>
          </select>
        </div>
        ${paper === 'roll' ? this.width(rollWidth) : nothing}
      </div>
    `
  }

  private width(rollWidth: string) {
    const { refused } = this
    return html`<div class="field wide">
      <label for="roll-width">Width of the roll</label>
      <input id="roll-width" autocomplete="off" .value=${refused ?? rollWidth} placeholder=${DEFAULT_ROLL} @change=${this.enterWidth}
        aria-invalid=${refused === undefined ? nothing : 'true'} aria-describedby=${refused === undefined ? 'roll-hint' : 'roll-error'} />
      ${
        refused === undefined
          ? html`<p class="hint" id="roll-hint">inches unless mm is said; for patterns and story sticks</p>`
          : html`<p class="error" id="roll-error">must be a length from 8 in (203 mm) to 78 in (1981 mm), such as 36 in or 914 mm; read “${refused}”. Prints keep to ${rollWidth || DEFAULT_ROLL}.</p>`
      }
    </div>`
  }
}
