import type { ReactiveController, ReactiveControllerHost } from 'lit'

/** The width an element has to draw in. Redraws it when that changes: `new Room(this)`. */
export class Room implements ReactiveController {
  /** Whole px; 0 until the element is laid out, the last one while it is hidden. */
  px = 0
  private readonly host: ReactiveControllerHost & HTMLElement
  private readonly isWanted: () => boolean
  private observer?: ResizeObserver

  /** @param isWanted whether the drawing goes by its width at all */
  constructor(host: ReactiveControllerHost & HTMLElement, isWanted = () => true) {
    this.host = host
    this.isWanted = isWanted
    host.addController(this)
  }

  hostConnected() {
    this.observer = new ResizeObserver(() => this.measure())
    this.observer.observe(this.host)
  }

  hostDisconnected() {
    this.observer?.disconnect()
  }

  private measure() {
    const px = Math.floor(this.host.clientWidth)
    if (px === 0 || px === this.px || !this.isWanted()) return
    this.px = px
    this.host.requestUpdate()
  }
}
