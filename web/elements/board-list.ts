import { html, LitElement, nothing } from 'lit'
import { customElement, property, state } from 'lit/decorators.js'
import type { RackBoard } from '../../shared/contract/board.ts'
import type { Breach } from '../../shared/problem.ts'
import type { Units } from '../../shared/units/length.ts'
import type { Species } from '../../shared/wood/species.ts'
import { enteredNumber, withEntry } from '../entry.ts'
import { jobField } from '../field-words.ts'
import { figure, length, lengthUnit, SessionController } from '../session.ts'
import { pageWear } from '../styles/all.ts'
import { choiceField, textField } from './field.ts'

/** A board being entered; lengths as written. */
export type NewBoard = Record<string, unknown> & { key: string; units: Units }

const freshBoard = (units: Units, species: string): NewBoard => ({ key: '', units, species })

/**
 * The boards on hand, and a form for one more. Sends `add` with the board as entered and `drop` with a board's key.
 */
@customElement('board-list')
export class BoardList extends LitElement {
  static override styles = pageWear

  @property({ attribute: false }) boards: readonly RackBoard[] = []
  @property({ attribute: false }) woods: readonly Species[] = []
  @property({ attribute: false }) errors: readonly Breach[] = []
  @property() species = ''
  @property() currency = ''
  @property() units: Units = 'in'
  @state() private entered?: NewBoard

  constructor() {
    super()
    new SessionController(this)
  }

  /** Empties the form after the board was stored. */
  clear() {
    this.entered = freshBoard(this.units, this.species)
  }

  private get board(): NewBoard {
    this.entered ??= freshBoard(this.units, this.species)
    return this.entered
  }

  private readonly add = (event: Event) => {
    event.preventDefault()
    this.dispatchEvent(new CustomEvent('add', { detail: this.board }))
  }

  override render() {
    return html`
      <div class="page">
        ${this.boards.length === 0 ? html`<p class="soft">None entered. Measure what stands in the rack, defects too.</p>` : this.table()}
        ${this.form()}
      </div>
    `
  }

  private table() {
    const unit = lengthUnit(this.units)
    const mm = (value: number) => figure(value, this.units)
    return html`
      <table class="stack">
        <thead>
          <tr>
            <th scope="col">Board</th><th scope="col">Wood</th><th scope="col" class="number">Width, ${unit}</th>
            <th scope="col" class="number">Length, ${unit}</th><th scope="col" class="number">Thickness, ${unit}</th>
            <th scope="col" class="number">Count</th><th scope="col">Defects</th><th scope="col"><span class="hidden-label">Delete</span></th>
          </tr>
        </thead>
        <tbody>
          ${this.boards.map(
            (board) => html`<tr>
              <th scope="row">${board.key}</th>
              <td data-label="Wood">${this.woods.find(({ key }) => key === board.species)?.name ?? board.species ?? 'any'}</td>
              <td class="number" data-label="Width, ${unit}">${mm(board.width)}</td>
              <td class="number" data-label="Length, ${unit}">${mm(board.length)}</td>
              <td class="number" data-label="Thickness, ${unit}">${mm(board.thickness)}</td>
              <td class="number" data-label="Count">${board.count ?? 'no end'}</td>
              <td data-label="Defects">
                ${(board.defects ?? []).map((d) => `${d.kind ?? 'defect'} ${length(d.from, this.units)} to ${length(d.to, this.units)}`).join('; ') || 'none'}
              </td>
              <td class="no-print">
                <button type="button" class="danger" aria-label="Delete board ${board.key}" @click=${() => this.dispatchEvent(new CustomEvent('drop', { detail: board.key }))}>
                  Delete
                </button>
              </td>
            </tr>`,
          )}
        </tbody>
      </table>
    `
  }

  private field(
    path: string,
    label: string,
    more: { hint?: string; unit?: string; placeholder?: string } = {},
  ) {
    const value = path
      .split('.')
      .reduce<unknown>((at, step) => (at as Record<string, unknown> | undefined)?.[step], this.board)
    return textField({
      path,
      label,
      value: String(value ?? ''),
      error: this.errors.find((error) => error.path === path)?.message,
      enter: (text) => {
        this.entered = withEntry(this.board, path, text)
      },
      ...more,
    })
  }

  private form() {
    const known = new Set([
      'key',
      'width',
      'length',
      'thickness',
      'count',
      'pricePerBoardFoot',
      'grade',
      'species',
      'defects',
    ])
    const others = this.errors.filter(({ path }) => !known.has(path))
    return html`
      <form class="page no-print" @submit=${this.add} novalidate>
        <h3>Add a board</h3>
        <div class="fields">
          ${this.field('key', 'Name on the board', { placeholder: 'W-07' })}
          ${choiceField({
            path: 'species',
            label: 'Wood',
            value: String(this.board.species ?? ''),
            choices: [['', 'any'], ...this.woods.map((wood) => [wood.key, wood.name] as const)],
            error: this.errors.find(({ path }) => path === 'species')?.message,
            enter: (key) => {
              this.entered = withEntry(this.board, 'species', key)
            },
          })}
          ${this.field('width', 'Width', { hint: this.units === 'in' ? 'inches unless written' : 'mm unless written' })} ${this.field('length', 'Length', { hint: `e.g. 8' 4"` })}
          ${this.field('thickness', 'Thickness')}
          ${this.field('count', 'How many alike', { placeholder: '1' })}
          ${this.field('pricePerBoardFoot', 'Price per board foot', { unit: this.currency })}
          ${this.field('grade', 'Grade')}
          ${this.defects()}
        </div>
        ${others.length > 0 ? html`<ul class="plain problem">${others.map(({ path, message }) => html`<li>${jobField(path)}: ${message}</li>`)}</ul>` : nothing}
        <div class="buttons"><button type="submit">Add the board</button></div>
      </form>
    `
  }

  /** Defects as one line: `knot 10 to 14; split 0 to 6`. */
  private defects() {
    const defects = (this.board.defectsText as string | undefined) ?? ''
    return textField({
      path: 'defects',
      wide: true,
      label: 'Defects, from the butt end',
      hint: 'knot 10 to 14; split 90 to 96',
      value: defects,
      error: this.errors.find(({ path }) => path.startsWith('defects'))?.message,
      enter: (text) => {
        this.entered = { ...this.board, defectsText: text }
      },
    })
  }
}

/** The board as it is sent: counts and prices as numbers, the line of defects taken apart; what cannot be taken apart goes whole, to be refused by name. */
export function boardEntry({ defectsText, ...entered }: NewBoard): NewBoard {
  const board: NewBoard = { ...entered }
  for (const name of ['count', 'pricePerBoardFoot']) {
    if (typeof board[name] === 'string') board[name] = enteredNumber(board[name])
  }
  const text = String(defectsText ?? '').trim()
  if (text === '') return board
  const defects = text.split(';').map((part) => {
    const read = /^\s*([^\d]*?)\s*(\d.*?)\s+to\s+(.+?)\s*$/.exec(part)
    return read
      ? { ...(read[1] && { kind: read[1] }), from: read[2], to: read[3] }
      : { from: part.trim(), to: '' }
  })
  return { ...board, defects }
}
