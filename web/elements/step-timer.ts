import { css, html, LitElement, nothing, type PropertyValues } from 'lit'
import { customElement, property, state } from 'lit/decorators.js'
import { MOST_MINUTES, ranOf, stopwatches, type Watch, writtenMinutes } from '../stopwatches.ts'
import { pageWear } from '../styles/all.ts'
import { stopwatchText } from '../time-text.ts'

/**
 * The stopwatch of one operation, kept on this device at every press: start, pause, stop, and the minutes to mend or
 * to write by hand. Whoever logs the step asks for `entry()` and then calls `clear()`.
 */
@customElement('step-timer')
export class StepTimer extends LitElement {
  static override styles = [
    ...pageWear,
    css`
      .timing {
        display: grid;
        grid-template-columns: minmax(max-content, 1fr) minmax(0, 1fr);
        gap: var(--space-2) var(--space-3);
        align-items: end;
      }
      .presses {
        display: grid;
        grid-template-columns: minmax(0, 1fr) auto;
        gap: var(--space-2);
      }
      button,
      input {
        min-height: 3.5rem;
        width: 100%;
      }
      .presses button {
        padding: 0 var(--space-2);
        white-space: nowrap;
      }
      .stop {
        min-width: var(--touch);
      }
      .told {
        min-height: 1.5em;
        margin: 0;
      }
    `,
  ]

  /** Under what the watch is kept, and what it times. */
  @property() watchKey = ''
  @property() name = ''
  @property() label = 'Minutes, if you timed it'
  @state() private watch?: Watch | undefined
  @state() private seconds = 0
  @state() private told = ''
  private ticking?: ReturnType<typeof setInterval>

  override connectedCallback(): void {
    super.connectedCallback()
    this.look()
    this.ticking = setInterval(() => this.look(), 1000)
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback()
    clearInterval(this.ticking)
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    if (!changed.has('watchKey')) return
    this.told = ''
    this.look()
  }

  private look(): void {
    this.watch = stopwatches().of(this.watchKey)
    this.seconds = this.watch ? ranOf(this.watch, Date.now()) / 1000 : 0
  }

  private readonly press = () => {
    const all = stopwatches()
    if (this.watch?.since === undefined) {
      const paused = all.start(this.watchKey, this.name)
      this.told = paused ? `The watch on ${paused.name} is paused and keeps its time.` : ''
    } else all.pause(this.watchKey)
    this.look()
  }

  private readonly stop = () => {
    stopwatches().stop(this.watchKey)
    this.look()
  }

  private readonly write = (event: Event) => {
    stopwatches().write(this.watchKey, this.name, (event.target as HTMLInputElement).value)
    this.look()
  }

  /** The minutes as they stand, with a running watch stopped; `wrong` where they cannot be read. */
  entry(): { minutes?: number; wrong: boolean } {
    this.stop()
    const minutes = writtenMinutes(this.watch?.minutes ?? '')
    if (minutes === undefined) return { wrong: false }
    return Number.isNaN(minutes) ? { wrong: true } : { minutes, wrong: false }
  }

  /** Once the step is logged. */
  clear(): void {
    stopwatches().clear(this.watchKey)
    this.told = ''
    this.look()
  }

  override render() {
    const running = this.watch?.since !== undefined
    const paused = !running && this.watch !== undefined && this.watch.minutes === undefined
    const written = this.watch?.minutes ?? ''
    const wrong = Number.isNaN(writtenMinutes(written))
    const time = stopwatchText(this.seconds)
    return html`
      <div class="timing">
        <div class="presses">
          <button type="button" @click=${this.press}>
            ${running ? html`<span class="hidden-label">Pause, </span>❚❚ ${time}` : paused ? html`<span class="hidden-label">Go on, </span>▶ ${time}` : '▶ Stopwatch'}
          </button>
          <button type="button" class="stop" aria-label="Stop the watch and write its minutes down" ?disabled=${!running && !paused} @click=${this.stop}>■</button>
        </div>
        <div class="field">
          <label for="minutes">${this.label}</label>
          <input id="minutes" inputmode="decimal" autocomplete="off" placeholder=${running || paused ? time : ''} .value=${written}
            aria-invalid=${wrong ? 'true' : nothing} aria-describedby="told" @input=${this.write} />
        </div>
      </div>
      <p id="told" class="told small ${wrong ? 'error' : 'soft'}" role="status">${wrong ? `Minutes are a number from 0 to ${MOST_MINUTES.toLocaleString('en')}, such as 4.5, or minutes and seconds, such as 4:30; read ${written}.` : this.told}</p>
    `
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'step-timer': StepTimer
  }
}
