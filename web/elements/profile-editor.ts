import { css, html, LitElement, nothing } from 'lit'
import { customElement, property, query, state } from 'lit/decorators.js'
import type { Joint } from '../../shared/job.ts'
import { Problem } from '../../shared/problem.ts'
import { clipOf } from '../../shared/profile/edit/group.ts'
import type { Profile, Station } from '../../shared/profile/profile.ts'
import { profileWarnings } from '../../shared/profile/warnings.ts'
import type { Units } from '../../shared/units/length.ts'
import { tellEdit } from '../edit.ts'
import { enteredStations, followedJoints, readJoints, readStations } from '../entered-stations.ts'
import type { EnteredJoint, EnteredStation } from '../job-file.ts'
import { keepClip, keptClip } from '../profile-clip.ts'
import { lengthStyle, SessionController } from '../session.ts'
import { keepSnap, snapFor } from '../snap-choice.ts'
import { pageWear } from '../styles/all.ts'
import type { DrawingAct } from './drawing-act.ts'
import type { CheckMark } from './part-dimensions.ts'
import './profile-drawing.ts'
import type { DrawingWarning, ProfileDrawing } from './profile-drawing.ts'
import './profile-tools.ts'
import type { Tool } from './profile-tools.ts'
import { spanAfter } from './station-spans.ts'
import './stations-table.ts'
import { type Done, draggedTo, type Ground, insertedThere, NotDone, nudged, toolEdit } from './tool-edits.ts'
import './turned-part.ts'

/** What is under way in the drawing: where the stations stand while something is dragged. */
interface Drag {
  stations: Station[]
  placeOf: (at: number) => number
  label: string
  note?: string
}

const none: never[] = []

/**
 * A profile to draw: the drawing, its tools, and the stations in a table in step with it. Sends `entry` with path and
 * value for what is typed, `edit` for a change made as a whole, `undo`, `redo`, and `station` with the index of the
 * station at hand.
 */
@customElement('profile-editor')
export class ProfileEditor extends LitElement {
  static override styles = [
    ...pageWear,
    css`
      .editor {
        display: grid;
        gap: var(--space-4);
        grid-template-columns: minmax(0, 1fr);
      }
      .small-drawing {
        position: sticky;
        top: 0;
        z-index: 1;
        height: 6rem;
        padding: var(--space-2);
        margin: 0 calc(-1 * var(--space-2));
        background: var(--sheet);
        border-bottom: 1px solid var(--line);
      }
      @media (min-width: 72rem) {
        .small-drawing {
          display: none;
        }
      }
      ul.plain {
        display: grid;
        gap: var(--space-2);
      }
      .caution {
        align-items: center;
      }
      .caution button {
        margin-left: auto;
        flex: none;
      }
      @media print {
        .editor {
          display: block;
        }
        .stations,
        profile-tools {
          display: none;
        }
      }
    `,
  ]

  @property({ attribute: false }) stations: readonly EnteredStation[] = none
  @property({ attribute: false }) joints: readonly EnteredJoint[] = none
  @property() units: Units = 'in'
  /** Key of the wood, for its colour. */
  @property() species = ''
  /** Name of the part, read out with the drawing. */
  @property() name = ''
  @property({ attribute: false }) checks: readonly CheckMark[] = none
  /** What to be warned of, each at its station; absent, what can be told from the profile and its joints alone. */
  @property({ attribute: false }) warnings?: readonly DrawingWarning[]
  @property({ attribute: false }) errors: ReadonlyMap<string, string> = new Map()
  @property({ type: Boolean }) disabled = false
  @property({ type: Boolean }) canUndo = false
  @property({ type: Boolean }) canRedo = false
  /** The profile as it could be read last, and the stations it was read from. */
  @state() private profile?: Profile
  @state() private stale = false
  @state() private drag?: Drag
  @state() private chosen: readonly [number, number] = [0, 0]
  @state() private told = ''
  @state() private failed = false
  @query('profile-drawing') private drawing?: ProfileDrawing
  private drawnJoints: readonly Joint[] = none
  private ownWarnings: readonly DrawingWarning[] = none

  constructor() {
    super()
    new SessionController(this)
    this.addEventListener('keydown', this.key)
  }

  protected override willUpdate(changed: Map<string, unknown>) {
    if (changed.has('stations') || changed.has('units')) {
      const stations = readStations(this.stations, this.units)
      this.stale = stations === undefined
      if (stations) this.profile = { stations, split: false }
      this.drag = undefined
      const last = Math.max(0, (stations ?? this.stations).length - 1)
      if (Math.max(...this.chosen) > last)
        this.chosen = [Math.min(last, this.chosen[0]), Math.min(last, this.chosen[1])]
    }
    if (changed.has('joints') || changed.has('stations') || changed.has('units'))
      this.drawnJoints = readJoints(this.joints, this.stations, this.units)
    if (!this.warnings && this.profile && ['stations', 'joints', 'units'].some((name) => changed.has(name)))
      this.ownWarnings = profileWarnings(this.profile, {
        joints: this.drawnJoints,
        style: lengthStyle(this.units),
      })
  }

  private ground(): Ground {
    const [a, b] = this.chosen
    return {
      stations: this.profile!.stations,
      from: Math.min(a, b),
      to: Math.max(a, b),
      snap: snapFor(this.units),
      units: this.units,
      clip: keptClip(),
    }
  }

  /** Tries a change; what it says stands below the tools, and a refusal instead of it. */
  private attempt<T extends { note?: string }>(change: () => T): T | undefined {
    try {
      const done = change()
      this.say(done.note ?? '')
      return done
    } catch (failure) {
      if (failure instanceof NotDone) this.say(failure.message, true)
      else if (failure instanceof Problem) this.say(sentenceOf(failure), true)
      else throw failure
      return undefined
    }
  }

  private say(told: string, failed = false) {
    this.told = told
    this.failed = failed
  }

  private commit(done: Done | undefined, merge = false) {
    if (!done) return
    const { label, edited } = done
    this.send(label, edited.stations, edited.placeOf, merge)
    const { touched } = edited
    const last = edited.stations.length - 1
    if (edited.stations.length !== this.profile!.stations.length && touched.length > 0)
      this.choose(Math.min(last, Math.min(...touched)), Math.min(last, Math.max(...touched)))
  }

  private send(label: string, stations: Station[], placeOf: (at: number) => number, merge = false) {
    const joints = followedJoints(this.joints, placeOf, this.units)
    tellEdit(this, {
      stations: enteredStations(stations, this.stations, this.units),
      ...(joints.length > 0 && { joints }),
      label,
      merge,
    })
  }

  private choose(anchor: number, hand: number) {
    this.chosen = [anchor, hand]
    this.dispatchEvent(new CustomEvent('station', { detail: hand, bubbles: true, composed: true }))
  }

  private readonly draw = ({ detail }: CustomEvent<DrawingAct>) => {
    if (detail.act === 'pick') {
      this.choose(detail.extend ? this.chosen[0] : detail.index, detail.index)
    } else if (detail.act === 'drag') this.dragged(detail)
    else if (detail.act === 'drop') this.dropped()
    else if (detail.act === 'cancel') this.drag = undefined
    else if (this.stale)
      this.say('Put the stations right first: the drawing shows them as they could be read last.', true)
    else if (detail.act === 'insert') this.commit(this.tried(() => insertedThere(this.ground(), detail.at)))
    else {
      const { field, steps, merge } = detail
      this.commit(
        this.tried(() => nudged(this.ground(), this.chosen[1], field, steps)),
        merge,
      )
    }
  }

  private tried(change: () => Done | undefined): Done | undefined {
    let done: Done | undefined
    this.attempt(() => {
      done = change()
      return { ...(done?.edited.note !== undefined && { note: done.edited.note }) }
    })
    return done
  }

  /** Where the pointer has dragged it stands at once in the drawing; the page is told at the end. */
  private dragged({ handle, at, r }: DrawingAct & { act: 'drag' }) {
    if (this.stale) return
    const label = `${handle.field === 'station' ? 'Move' : 'Size'} station ${handle.index}`
    const edited = this.attempt(() =>
      draggedTo(this.ground(), handle, { ...(at !== undefined && { at }), ...(r !== undefined && { r }) }),
    )
    if (edited) this.drag = { ...edited, label }
  }

  private dropped() {
    const { drag } = this
    if (drag) this.send(drag.label, drag.stations, drag.placeOf)
    this.drag = undefined
  }

  private readonly tool = ({ detail }: CustomEvent<Tool>) => {
    if (detail.tool === 'undo' || detail.tool === 'redo') this.turnBack(detail.tool)
    else if (detail.tool === 'snap') {
      keepSnap(this.units, detail.snap)
      this.requestUpdate()
    } else if (detail.tool === 'choose') this.choose(detail.from, detail.to)
    else if (detail.tool === 'copy') this.copy()
    else if (this.stale) this.say('Put the stations right first: they cannot all be read.', true)
    else this.commit(this.tried(() => toolEdit(this.ground(), detail)))
  }

  private turnBack(what: 'undo' | 'redo') {
    this.say('')
    this.dispatchEvent(new CustomEvent(what, { bubbles: true, composed: true }))
  }

  private copy() {
    const { stations, from, to } = this.ground()
    const upTo = to > from ? to : Math.min(from + 1, stations.length - 1)
    this.attempt(() => {
      if (!keepClip(clipOf(stations, from, upTo))) throw new NotDone('This device has no room for a copy.')
      return {
        note: `Stations ${from} to ${upTo} are copied: they can be pasted here or in another profile.`,
      }
    })
  }

  /** Keys of the whole editor; a field keeps those that edit its text. */
  private readonly key = (event: KeyboardEvent) => {
    if (this.disabled || !this.profile) return
    const inField = event.composedPath()[0] instanceof HTMLInputElement
    const tool = toolOfKey(event, inField, event.composedPath().includes(this.drawing as EventTarget))
    if (!tool) return
    event.preventDefault()
    if (tool === 'undo' ? !this.canUndo : tool === 'redo' && !this.canRedo) return
    this.tool(new CustomEvent('tool', { detail: { tool } }))
  }

  private readonly atStation = (event: CustomEvent<number>) => {
    if (event.detail !== this.chosen[1]) this.chosen = [event.detail, event.detail]
  }

  override render() {
    const { profile, disabled } = this
    return html`
      <div class="editor">
        ${profile ? this.picture(profile) : html`<p class="soft">The drawing comes when the stations can be read.</p>`}
        ${profile && !disabled ? this.tools(profile) : nothing}
        <p role="status" class=${this.told ? (this.failed ? 'error' : 'soft') : 'hidden-label'}>${this.told}</p>
        ${this.warned()}
        <div class="stations" @station=${this.atStation}>
          ${profile ? this.smallDrawing(profile) : nothing}
          <stations-table .stations=${this.stations} .errors=${this.errors} .disabled=${disabled}></stations-table>
        </div>
      </div>
    `
  }

  private picture(profile: Profile) {
    const { drag } = this
    return html`
      ${this.stale ? html`<p class="soft">The drawing shows the stations as they could be read last.</p>` : nothing}
      <profile-drawing
        .profile=${drag ? this.draggedProfile(drag) : profile}
        .species=${this.species}
        .name=${this.name}
        .lengthStyle=${lengthStyle(this.units)}
        .joints=${this.drawnJoints}
        .checks=${this.checks}
        .warnings=${drag ? none : (this.warnings ?? this.ownWarnings)}
        .chosen=${this.chosen}
        .disabled=${this.disabled}
        @draw=${this.draw}
      ></profile-drawing>
    `
  }

  private draggedProfile({ stations }: Drag): Profile {
    return { stations, split: false }
  }

  private tools(profile: Profile) {
    const [a, b] = this.chosen
    return html`<profile-tools
      .stations=${profile.stations}
      .chosen=${a <= b ? this.chosen : [b, a]}
      .snap=${snapFor(this.units)}
      .lengthStyle=${lengthStyle(this.units)}
      .canUndo=${this.canUndo}
      .canRedo=${this.canRedo}
      .canPaste=${keptClip() !== undefined}
      @tool=${this.tool}
    ></profile-tools>`
  }

  private warned() {
    const warnings = this.warnings ?? this.ownWarnings
    if (warnings.length === 0) return nothing
    return html`<ul class="plain" aria-label="Warnings">
      ${warnings.map(
        ({ index, text }) => html`<li class="caution">
          <span>${text}</span>
          <button type="button" @click=${() => this.choose(index, index)}>Station ${index}</button>
        </li>`,
      )}
    </ul>`
  }

  /** Where there is no room beside the stations: the part above them, while they are written. */
  private smallDrawing(profile: Profile) {
    return html`<div class="small-drawing no-print" aria-hidden="true">
      <turned-part
        .profile=${profile}
        .species=${this.species}
        .highlight=${spanAfter(profile.stations, this.chosen[1])}
        orientation="horizontal"
        compact
      ></turned-part>
    </div>`
  }
}

/** A refusal told without the paths of a file. */
function sentenceOf({ errors, message }: Problem): string {
  const [first] = errors
  if (!first) return message
  const station = /stations\[(\d+)\]/.exec(first.path)?.[1]
  return `${station === undefined ? 'The stations' : `Station ${station}`}: ${first.message}.`
}

type KeyTool = 'undo' | 'redo' | 'copy' | 'paste' | 'insert' | 'delete'

function toolOfKey(event: KeyboardEvent, inField: boolean, inDrawing: boolean): KeyTool | undefined {
  const key = event.key.toLowerCase()
  if (event.ctrlKey || event.metaKey) {
    if (key === 'z') return event.shiftKey ? 'redo' : 'undo'
    if (key === 'y') return 'redo'
    if (inField || !inDrawing) return undefined
    return key === 'c' ? 'copy' : key === 'v' ? 'paste' : undefined
  }
  if (inField || !inDrawing) return undefined
  if (key === 'insert') return 'insert'
  return key === 'delete' || key === 'backspace' ? 'delete' : undefined
}

declare global {
  interface HTMLElementTagNameMap {
    'profile-editor': ProfileEditor
  }
}
