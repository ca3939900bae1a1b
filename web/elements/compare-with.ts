import { html, LitElement, nothing } from 'lit'
import { customElement, property, state } from 'lit/decorators.js'
import type { Profile } from '../../shared/profile/profile.ts'
import type { LengthStyle } from '../../shared/units/length.ts'
import { pageWear } from '../styles/all.ts'
import type { CompareEnd } from './compare-layout.ts'
import { choiceField } from './field.ts'
import './profile-compare.ts'
import type { Compared } from './profile-compare.ts'

/** A profile that can be compared with the one at hand. */
export interface Comparable extends Compared {
  key: string
  profile: Profile
}

/** A profile compared with one that is chosen. Sends `choose` with its key, empty for none. */
@customElement('compare-with')
export class CompareWith extends LitElement {
  static override styles = pageWear
  static override shadowRootOptions: ShadowRootInit = {
    ...LitElement.shadowRootOptions,
    delegatesFocus: true,
  }

  @property({ attribute: false }) choices: readonly Comparable[] = []
  @property() chosen = ''
  /** The profile at hand. */
  @property({ attribute: false }) drawn!: Compared
  @property({ attribute: false }) lengthStyle: LengthStyle = 'fraction'
  @state() private end: CompareEnd = 'foot'

  override render() {
    const against = this.choices.find(({ key }) => key === this.chosen)
    return html`
      <div class="page">
        <div class="fields">
          ${choiceField({
            path: 'against',
            label: 'Compare with',
            wide: true,
            value: against ? this.chosen : '',
            choices: [['', 'nothing'], ...this.choices.map(({ key, name }) => [key, name] as const)],
            enter: (detail) => this.dispatchEvent(new CustomEvent('choose', { detail })),
          })}
          ${against ? this.ends() : nothing}
        </div>
        ${
          against
            ? html`<profile-compare .a=${against} .b=${this.drawn} .end=${this.end} .lengthStyle=${this.lengthStyle}></profile-compare>`
            : nothing
        }
      </div>
    `
  }

  private ends() {
    return choiceField({
      path: 'end',
      label: 'Laid together at',
      value: this.end,
      choices: [
        ['foot', 'the foot'],
        ['top', 'the top'],
      ],
      enter: (text) => {
        this.end = text as CompareEnd
      },
    })
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'compare-with': CompareWith
  }
}
