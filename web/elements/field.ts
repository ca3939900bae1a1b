import { html, nothing, type TemplateResult } from 'lit'
import { live } from 'lit/directives/live.js'

/** One labelled field of a form. `path` is the field's path in the file, by which errors find it. */
export interface Field {
  path: string
  label: string
  value: string
  error?: string | undefined
  hint?: string | TemplateResult | undefined
  /** Written after the field, e.g. `%`. */
  unit?: string | undefined
  /** The label is spoken but not shown; a column heading shows it. */
  quiet?: boolean
  /** Takes the room of two fields. */
  wide?: boolean
  disabled?: boolean
  placeholder?: string
  enter: (text: string) => void
}

const idOf = (path: string) => path.replace(/[^\w-]+/g, '-')

const framed = (field: Field, control: TemplateResult) => {
  const id = idOf(field.path)
  return html`
    <div class="field ${field.wide ? 'wide' : ''}">
      <label for=${id} class=${field.quiet ? 'quiet' : nothing}>${field.label}</label>
      ${field.unit ? html`<div class="with-unit">${control}<span>${field.unit}</span></div>` : control}
      ${field.hint ? html`<p class="hint" id="${id}-hint">${field.hint}</p>` : nothing}
      ${field.error ? html`<p class="error" id="${id}-error">${field.error}</p>` : nothing}
    </div>
  `
}

const describedBy = (field: Field) =>
  [field.hint && `${idOf(field.path)}-hint`, field.error && `${idOf(field.path)}-error`]
    .filter(Boolean)
    .join(' ') || nothing

/** A line of text, a length in any written form, a figure. */
export const textField = (
  field: Field & { kind?: 'text' | 'date'; inputmode?: 'numeric' | 'decimal'; list?: string },
) =>
  framed(
    field,
    html`<input
      id=${idOf(field.path)}
      data-path=${field.path}
      type=${field.kind ?? 'text'}
      inputmode=${field.inputmode ?? nothing}
      autocomplete="off"
      spellcheck="false"
      list=${field.list ?? nothing}
      placeholder=${field.placeholder ?? nothing}
      .value=${live(field.value)}
      ?disabled=${field.disabled ?? false}
      aria-invalid=${field.error ? 'true' : nothing}
      aria-describedby=${describedBy(field)}
      @input=${(event: Event) => field.enter((event.target as HTMLInputElement).value)}
    />`,
  )

/** Several lines of text. */
export const noteField = (field: Field) =>
  framed(
    field,
    html`<textarea
      id=${idOf(field.path)}
      data-path=${field.path}
      .value=${live(field.value)}
      ?disabled=${field.disabled ?? false}
      aria-invalid=${field.error ? 'true' : nothing}
      aria-describedby=${describedBy(field)}
      @input=${(event: Event) => field.enter((event.target as HTMLTextAreaElement).value)}
    ></textarea>`,
  )

export type Choice = readonly [value: string, text: string]

/** One of a few. */
export const choiceField = (field: Field & { choices: readonly Choice[] }) =>
  framed(
    field,
    html`<select
      id=${idOf(field.path)}
      data-path=${field.path}
      ?disabled=${field.disabled ?? false}
      aria-invalid=${field.error ? 'true' : nothing}
      aria-describedby=${describedBy(field)}
      @change=${(event: Event) => field.enter((event.target as HTMLSelectElement).value)}
    >
      ${field.choices.map(([value, text]) => html`<option value=${value} .selected=${live(value === field.value)}>${text}</option>`)}
    </select>`,
  )

/** Yes or no. */
export const tickField = (tick: {
  path: string
  label: string
  on: boolean
  hint?: string
  disabled?: boolean
  quiet?: boolean
  wide?: boolean
  error?: string | undefined
  enter: (on: boolean) => void
}) => html`
  <div class="field ${tick.wide ? 'wide' : ''}">
    <label class="tick">
      <input
        type="checkbox"
        data-path=${tick.path}
        .checked=${live(tick.on)}
        ?disabled=${tick.disabled ?? false}
        @change=${(event: Event) => tick.enter((event.target as HTMLInputElement).checked)}
      />
      <span class=${tick.quiet ? 'quiet' : nothing}>${tick.label}</span>
    </label>
    ${tick.hint ? html`<p class="hint">${tick.hint}</p>` : nothing}
    ${tick.error ? html`<p class="error">${tick.error}</p>` : nothing}
  </div>
`
