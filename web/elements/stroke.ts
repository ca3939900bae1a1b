/** Sideways travel, px, from which a stroke on the screen turns the page. */
const SWIPE = 60

/** Strokes of a finger sideways: `pressed` and `lifted` are listeners; `turn` is called with 1 for a stroke to the left. */
export class Stroke {
  private readonly turn: (by: -1 | 1) => void
  private from?: { x: number; y: number } | undefined

  constructor(turn: (by: -1 | 1) => void) {
    this.turn = turn
  }

  readonly pressed = (event: PointerEvent): void => {
    this.from = { x: event.clientX, y: event.clientY }
  }

  readonly lifted = (event: PointerEvent): void => {
    const { from } = this
    this.from = undefined
    if (!from || event.pointerType === 'mouse') return
    const [x, y] = [event.clientX - from.x, event.clientY - from.y]
    if (Math.abs(x) > SWIPE && Math.abs(x) > 2 * Math.abs(y)) this.turn(x < 0 ? 1 : -1)
  }
}
