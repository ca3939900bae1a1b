import { css, html, LitElement } from 'lit'
import { customElement, property, state } from 'lit/decorators.js'
import type { Snap } from '../../shared/profile/edit/snap.ts'
import type { Station } from '../../shared/profile/profile.ts'
import type { LengthStyle } from '../../shared/units/length.ts'
import { lengthText } from '../../shared/units/length.ts'
import { snapChoices } from '../snap-choice.ts'
import { pageWear } from '../styles/all.ts'
import { type Choice, choiceField, textField, tickField } from './field.ts'
import { thickestSize } from './tool-edits.ts'

/** What a person asks of the editor; sizes as typed. */
export type Tool =
  | { tool: 'undo' | 'redo' | 'insert' | 'delete' | 'close-up' | 'copy' | 'paste' }
  | { tool: 'mirror' | 'mirror-after' | 'turn' }
  | { tool: 'split'; parts: string }
  | { tool: 'repeat'; times: string; pitch: string }
  | { tool: 'scale'; what: 'lengths' | 'diameters'; to: string; keepRound: boolean }
  | { tool: 'snap'; snap: Snap }
  | { tool: 'choose'; from: number; to: number }

const scaleChoices: readonly Choice[] = [
  ['lengths', 'lengths'],
  ['diameters', 'diameters'],
]

/** What can be done to the stations of a profile. Sends `tool` with a `Tool`. */
@customElement('profile-tools')
export class ProfileTools extends LitElement {
  static override styles = [
    ...pageWear,
    css`
      :host {
        display: grid;
        gap: var(--space-2);
      }
      .snap {
        display: flex;
        align-items: center;
        gap: var(--space-2);
        margin-left: auto;
      }
      .snap label {
        flex: none;
      }
      .snap select {
        width: 6.5rem;
      }
      .snap .field {
        display: contents;
      }
      .group {
        display: grid;
        gap: var(--space-4);
        padding: var(--space-2) 0 var(--space-3);
      }
      fieldset {
        display: grid;
        gap: var(--space-2);
        border-top: 1px solid var(--line);
        padding-top: var(--space-2);
      }
      .line {
        display: flex;
        flex-wrap: wrap;
        gap: var(--space-2);
        align-items: end;
      }
      .line > .field {
        flex: 0 1 9rem;
        min-width: 6rem;
      }
    `,
  ]

  @property({ attribute: false }) stations: readonly Station[] = []
  @property({ attribute: false }) chosen: readonly [number, number] = [0, 0]
  @property() snap: Snap = '1/64'
  @property() lengthStyle: LengthStyle = 'fraction'
  @property({ type: Boolean }) canUndo = false
  @property({ type: Boolean }) canRedo = false
  @property({ type: Boolean }) canPaste = false
  @state() private times = '5'
  @state() private pitch = ''
  @state() private parts = '2'
  @state() private what: 'lengths' | 'diameters' = 'lengths'
  @state() private to = ''
  @state() private keepRound = true

  private tell(detail: Tool) {
    this.dispatchEvent(new CustomEvent<Tool>('tool', { detail }))
  }

  private button(label: string, tool: Tool, off = false, look = '') {
    return html`<button type="button" class=${look} ?disabled=${off} @click=${() => this.tell(tool)}>${label}</button>`
  }

  override render() {
    const few = this.stations.length <= 2
    return html`
      <div class="buttons" role="toolbar" aria-label="Change the profile">
        ${this.button('Undo', { tool: 'undo' }, !this.canUndo)} ${this.button('Redo', { tool: 'redo' }, !this.canRedo)}
        ${this.button('Insert', { tool: 'insert' })} ${this.button('Delete', { tool: 'delete' }, few)}
        <div class="snap">
          ${choiceField({
            path: 'snap',
            label: 'Snap to',
            value: this.snap,
            choices: [...snapChoices, ['none', 'off']],
            enter: (snap) => this.tell({ tool: 'snap', snap: snap as Snap }),
          })}
        </div>
      </div>
      <details>
        <summary>Groups: ${this.reach()}</summary>
        <div class="group">${this.choosing()} ${this.spans()} ${this.whole()}</div>
      </details>
    `
  }

  private reach() {
    const [from, to] = this.chosen
    return from === to ? `station ${from} is chosen` : `stations ${from} to ${to} are chosen`
  }

  private choosing() {
    const [from, to] = this.chosen
    const choices = this.stations.map(
      ({ at, name }, i): Choice => [
        String(i),
        `${i}: ${lengthText(at, this.lengthStyle)}${name ? `, ${name}` : ''}`,
      ],
    )
    const choice = (path: string, label: string, value: number, enter: (i: number) => void) =>
      choiceField({ path, label, value: String(value), choices, enter: (text) => enter(Number(text)) })
    return html`<div class="line">
      ${choice('from', 'From station', from, (i) => this.tell({ tool: 'choose', from: i, to: Math.max(i, to) }))}
      ${choice('to', 'To station', to, (i) => this.tell({ tool: 'choose', from: Math.min(i, from), to: i }))}
      ${this.button('Copy', { tool: 'copy' })} ${this.button('Paste after', { tool: 'paste' }, !this.canPaste)}
    </div>`
  }

  private spans() {
    const { times, pitch, parts } = this
    return html`
      <fieldset>
        <legend class="hidden-label">The chosen spans</legend>
        <div class="buttons">
          ${this.button('Mirror in place', { tool: 'mirror' })} ${this.button('Mirror image after', { tool: 'mirror-after' })}
          ${this.button('Take out, close up', { tool: 'close-up' }, false, 'danger')}
        </div>
        <div class="line">
          ${textField({ path: 'times', label: 'Times in a row', value: times, inputmode: 'numeric', enter: (text) => (this.times = text) })}
          ${textField({ path: 'pitch', label: 'Pitch', value: pitch, placeholder: 'close', enter: (text) => (this.pitch = text) })}
          ${this.button('Repeat', { tool: 'repeat', times, pitch })}
        </div>
        <div class="line">
          ${textField({ path: 'parts', label: 'Equal parts', value: parts, inputmode: 'numeric', enter: (text) => (this.parts = text) })}
          ${this.button('Split the span', { tool: 'split', parts })}
        </div>
      </fieldset>
    `
  }

  private whole() {
    const { what, to, keepRound } = this
    const length = this.stations.at(-1)?.at ?? 0
    const thickest = thickestSize(this.stations)
    return html`
      <fieldset>
        <legend class="hidden-label">The whole part</legend>
        <div class="line">
          ${choiceField({
            path: 'what',
            label: 'Scale',
            value: what,
            choices: scaleChoices,
            enter: (chosen) => (this.what = chosen as 'lengths' | 'diameters'),
          })}
          ${textField({
            path: 'scale',
            label: what === 'lengths' ? 'To a length of, or ×' : 'Thickest to, or ×',
            value: to,
            placeholder: lengthText(what === 'lengths' ? length : thickest, this.lengthStyle),
            enter: (text) => (this.to = text),
          })}
          ${this.button('Scale', { tool: 'scale', what, to, keepRound }, to.trim() === '')}
        </div>
        ${tickField({
          path: 'round',
          label: 'Beads, coves and fillets keep their own width',
          on: keepRound,
          enter: (on) => (this.keepRound = on),
        })}
        <div class="buttons">${this.button('Turn the part end for end', { tool: 'turn' })}</div>
      </fieldset>
    `
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'profile-tools': ProfileTools
  }
}
