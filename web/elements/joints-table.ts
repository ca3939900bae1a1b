import { html, LitElement, nothing } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import { entries, lengthEntryText, tellEntry } from '../entry.ts'
import type { EnteredJoint } from '../job-file.ts'
import { pageWear } from '../styles/all.ts'
import { type Choice, choiceField, textField } from './field.ts'

const kinds: readonly Choice[] = [
  ['mortise', 'mortise'],
  ['hole', 'hole'],
  ['tenon', 'tenon'],
]
const faces: readonly Choice[] = [
  ['A', 'face A'],
  ['B', 'face B'],
  ['C', 'face C'],
  ['D', 'face D'],
  ['angle', 'at an angle'],
] // prettier-ignore
const stages: readonly Choice[] = [
  ['square', 'in the square'],
  ['turned', 'after turning'],
]

/** Words for the one or two sizes of each kind of joint. */
const sizeWords: Record<EnteredJoint['kind'], readonly string[]> = {
  mortise: ['Width', 'Length along the part'],
  hole: ['Diameter'],
  tenon: ['Thickness or diameter', 'Width, if not round'],
}

/** Mortises, holes and tenons of the part. Sends `entry` with path and value. */
@customElement('joints-table')
export class JointsTable extends LitElement {
  static override styles = pageWear

  @property({ attribute: false }) joints: readonly EnteredJoint[] = []
  @property({ attribute: false }) errors: ReadonlyMap<string, string> = new Map()
  @property({ type: Boolean }) disabled = false

  private change(joints: EnteredJoint[]) {
    tellEntry(this, 'joints', joints.length > 0 ? joints : undefined)
  }

  private async add() {
    this.change([
      ...this.joints,
      { kind: 'mortise', at: '', face: 'A', size: ['', ''], depth: '', stage: 'square' },
    ])
    await new Promise(requestAnimationFrame)
    this.renderRoot
      .querySelector<HTMLElement>(`[data-path="joints[${this.joints.length - 1}].kind"]`)
      ?.focus()
  }

  private async drop(index: number) {
    this.change(this.joints.filter((_, i) => i !== index))
    await new Promise(requestAnimationFrame)
    this.renderRoot.querySelector<HTMLElement>('.add')?.focus()
  }

  override render() {
    return html`
      <div class="page">
        ${this.joints.length === 0 ? html`<p class="soft">None. Mortises, holes and tenons add layout, joinery and cautions.</p>` : nothing}
        <ol class="plain page">
          ${this.joints.map((joint, i) => this.joint(joint, i))}
        </ol>
        ${this.disabled ? nothing : html`<div class="buttons"><button type="button" class="add" @click=${this.add}>Add a joint</button></div>`}
      </div>
    `
  }

  private length(i: number, field: 'at' | 'depth', label: string) {
    const path = `joints[${i}].${field}`
    return textField({
      path,
      label,
      value: lengthEntryText(this.joints[i]![field]),
      error: this.errors.get(path),
      disabled: this.disabled,
      enter: (text) => tellEntry(this, path, text),
    })
  }

  private size(joint: EnteredJoint, i: number, which: number, label: string) {
    const sizes = entries(joint.size)
    const path = `joints[${i}].size[${which}]`
    return textField({
      path,
      label,
      value: lengthEntryText(sizes[which]),
      error: this.errors.get(path) ?? (which === 0 ? this.errors.get(`joints[${i}].size`) : undefined),
      disabled: this.disabled,
      enter: (text) => {
        const next = sizeWords[joint.kind].map((_, n) => (n === which ? text : (sizes[n] ?? '')))
        while (next.length > 1 && next.at(-1) === '') next.pop()
        tellEntry(this, `joints[${i}].size`, next)
      },
    })
  }

  private joint(joint: EnteredJoint, i: number) {
    const choice = (field: 'kind' | 'stage', label: string, choices: readonly Choice[], value: string) =>
      choiceField({
        path: `joints[${i}].${field}`,
        label,
        value,
        choices,
        error: this.errors.get(`joints[${i}].${field}`),
        disabled: this.disabled,
        enter: (chosen) => tellEntry(this, `joints[${i}].${field}`, chosen),
      })
    const angled = joint.angle !== undefined
    return html`
      <li><div class="card" role="group" aria-label="Joint ${i + 1}: ${joint.kind}">
        <div class="fields">
          ${choice('kind', 'Kind', kinds, joint.kind)} ${this.length(i, 'at', 'At, from the foot')}
          ${choiceField({
            path: `joints[${i}].face`,
            label: 'Where round it',
            value: angled ? 'angle' : (joint.face ?? 'A'),
            choices: faces,
            error: this.errors.get(`joints[${i}].face`),
            disabled: this.disabled,
            enter: (face) => this.place(i, face),
          })}
          ${
            angled
              ? textField({
                  path: `joints[${i}].angle`,
                  label: 'Angle from face A',
                  hint: 'towards B; below 0 towards D',
                  value: String(joint.angle),
                  unit: '°',
                  error: this.errors.get(`joints[${i}].angle`),
                  disabled: this.disabled,
                  enter: (text) => tellEntry(this, `joints[${i}].angle`, text),
                })
              : nothing
          }
          ${sizeWords[joint.kind].map((label, which) => this.size(joint, i, which, label))}
          ${this.length(i, 'depth', joint.kind === 'tenon' ? 'Length' : 'Depth')}
          ${choice('stage', 'Cut', stages, joint.stage ?? 'square')}
        </div>
        ${
          this.disabled
            ? nothing
            : html`<div class="buttons">
              <button type="button" class="danger" @click=${() => this.drop(i)}>Delete joint ${i + 1}</button>
            </div>`
        }
      </div></li>
    `
  }

  private place(i: number, face: string) {
    const { angle: _angle, face: _face, ...joint } = this.joints[i]!
    tellEntry(this, `joints[${i}]`, { ...joint, ...(face === 'angle' ? { angle: 0 } : { face }) })
  }
}
