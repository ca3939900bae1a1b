import { css, html, LitElement, nothing } from 'lit'
import { customElement, property, state } from 'lit/decorators.js'
import type { Piece } from '../../shared/piece.ts'
import type { Plan } from '../../shared/plan.ts'
import type { CountedEdge } from '../../shared/turning/edge-wear.ts'
import { dryBelow } from '../../shared/wood/drying.ts'
import { changeShop, shopSettings } from '../api.ts'
import type { Floor } from '../api-floor.ts'
import type { Weighed } from '../elements/drying-card.ts'
import '../elements/drying-card.ts'
import { driesInShop, dryingRows } from '../elements/drying-rows.ts'
import { edgesOf, livesOf, toolsWithLife } from '../elements/rack-edge-states.ts'
import type { BroughtBack } from '../elements/rack-edges.ts'
import '../elements/rack-edges.ts'
import type { FloorLog } from '../floor-log.ts'
import { keepEntry, keptEntry } from '../kept-entry.ts'
import { pageWear } from '../styles/all.ts'

/** What the floor tells of a batch beside its pieces: edges, and wood that dries. Logs, and takes a counted life over. */
@customElement('rack-floor')
export class RackFloor extends LitElement {
  static override styles = [
    ...pageWear,
    css`
      :host {
        display: grid;
        gap: var(--space-6);
      }
    `,
  ]

  @property() jobId = ''
  @property({ attribute: false }) plan?: Plan
  @property({ attribute: false }) pieces: readonly Piece[] = []
  @property({ attribute: false }) log?: FloorLog
  /** What the log holds now, and why an entry could not be taken back. */
  @property({ attribute: false }) floor?: Floor
  @property() away = ''
  /** Whether the log could not be fetched; not known at first. */
  @property({ attribute: false }) missing: boolean | undefined
  @state() private failure = ''
  @state() private note = ''

  /** How often each life was counted when the person last answered: it is asked again with the next count. */
  private get answered(): Record<string, number> {
    return keptEntry(`setwright.edge-lives.${this.jobId}`, {})
  }

  private answer({ tool, pieces }: CountedEdge): void {
    keepEntry(`setwright.edge-lives.${this.jobId}`, { ...this.answered, [tool]: pieces.length })
    this.requestUpdate()
  }

  private readonly take = async ({ detail: count }: CustomEvent<CountedEdge>) => {
    this.failure = ''
    this.note = ''
    try {
      const { value: shop, revision } = await shopSettings()
      const edge = this.plan!.grinding.find(({ tool }) => tool === count.tool)!
      const tools = toolsWithLife(shop.tools, count, edge)
      if (!tools) throw new Error(`The shop has no ${count.tool} any more: enter its life at another tool.`)
      await changeShop({ ...shop, tools }, revision)
      this.note = `The life of the ${count.tool} is in the shop’s settings.`
      this.answer(count)
    } catch (failure) {
      this.failure = (failure as Error).message
    }
  }

  override render() {
    const { plan, log, floor: now } = this
    if (!plan || !log || !now || this.missing === undefined) return nothing
    if (this.missing)
      return html`<section class="card" aria-label="Edges"><p class="soft">How the edges stand was not fetched, for there is no connection. What you log is kept on this device and sent later.</p></section>`
    const counted = livesOf(plan, now).filter(
      ({ tool, pieces }) => pieces.length > (this.answered[tool] ?? 0),
    )
    return html`
      <rack-edges .edges=${edgesOf(plan, now)} .grinding=${plan.grinding} .touchUps=${now.touchUps} .counted=${counted} .failure=${this.failure || this.away} .note=${this.note}
        @brought-back=${({ detail }: CustomEvent<BroughtBack>) => log.touchUp(detail.tool, detail.kind)}
        @touch-up-taken-back=${({ detail }: CustomEvent<{ key: string }>) => void log.takeBack('touch-up', detail.key)}
        @life-taken=${this.take} @life-left=${({ detail }: CustomEvent<CountedEdge>) => this.answer(detail)}></rack-edges>
      ${
        driesInShop(plan)
          ? html`<drying-card .jobId=${this.jobId} .rows=${dryingRows(plan, this.pieces, now.weighings)} .units=${plan.job.units} .dryAt=${dryBelow(plan.job.serviceMoisture)} .now=${Date.now()} .failure=${this.away}
              @weighed=${({ detail: { number, ...read } }: CustomEvent<Weighed>) => log.weigh(number, read)}
              @weighing-taken-back=${({ detail }: CustomEvent<{ key: string }>) => void log.takeBack('weighing', detail.key)}></drying-card>`
          : nothing
      }
    `
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'rack-floor': RackFloor
  }
}
