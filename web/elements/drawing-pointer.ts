import type { ReactiveController, ReactiveControllerHost } from 'lit'
import type { Station } from '../../shared/profile/profile.ts'
import type { DrawingAct } from './drawing-act.ts'
import { type Handle, handleNear } from './drawing-handles.ts'
import type { PartLayout } from './part-layout.ts'
import { stationBelow } from './station-spans.ts'

/** The drawing under a pointer. Lengths mm. */
export interface PointedDrawing {
  disabled(): boolean
  /** The layout as it is on the screen. */
  layout(): PartLayout
  /** The point of the part under the pointer. */
  point(event: MouseEvent, layout: PartLayout): { at: number; r: number }
  stations(): readonly Station[]
  handles(): readonly Handle[]
  /** Brings the focus here and the pointer with it. */
  take(event: PointerEvent): void
  /** Where the window begins; undefined where the whole part is in it. */
  windowFrom(): number | undefined
  slide(from: number): void
  tell(act: DrawingAct): void
}

/** px within which a handle is taken hold of. */
const REACH = { mouse: 14, pen: 18, touch: 26 } as const
/** px a pointer moves before it drags. */
const STILL = 5
/** A drag flatter than this goes along or across only. */
const FLAT = 0.5

interface Hold {
  handle: Handle
  x: number
  y: number
  layout: PartLayout
  /** Undefined until the pointer has moved. */
  ways?: { along: boolean; across: boolean }
}

/** What a mouse, pen or finger does in the drawing: picks, drags, inserts, and slides the window along the part. */
export class DrawingPointer implements ReactiveController {
  /** What is held; its layout stays for as long, so that the part does not grow under the pointer. */
  hold?: Hold | undefined
  private pan?: { x: number; from: number | undefined; at: number } | undefined
  private frame = 0
  private latest?: PointerEvent | undefined
  private readonly host: ReactiveControllerHost
  private readonly drawing: PointedDrawing

  constructor(host: ReactiveControllerHost, drawing: PointedDrawing) {
    this.host = host
    this.drawing = drawing
    host.addController(this)
  }

  hostConnected() {}

  hostDisconnected() {
    cancelAnimationFrame(this.frame)
    this.frame = 0
  }

  private held(hold: Hold | undefined) {
    this.hold = hold
    this.host.requestUpdate()
  }

  readonly down = (event: PointerEvent) => {
    if (event.button !== 0 || this.hold) return
    const { drawing } = this
    const layout = drawing.layout()
    const point = drawing.point(event, layout)
    const reach = REACH[event.pointerType as keyof typeof REACH] ?? REACH.mouse
    const handle = drawing.disabled() ? undefined : handleNear(drawing.handles(), point, reach / layout.scale)
    if (!handle) {
      this.pan = { x: event.clientX, from: drawing.windowFrom(), at: point.at }
      return
    }
    event.preventDefault()
    drawing.take(event)
    this.held({ handle, x: event.clientX, y: event.clientY, layout })
    drawing.tell({ act: 'pick', index: handle.index, extend: event.shiftKey })
  }

  readonly moved = (event: PointerEvent) => {
    const { pan, drawing } = this
    if (pan?.from !== undefined && event.buttons > 0)
      drawing.slide(pan.from - (event.clientX - pan.x) / drawing.layout().scale)
    if (!this.hold) return
    this.latest = event
    if (this.frame === 0) this.frame = requestAnimationFrame(() => this.drag())
  }

  /** Tells where the pointer has dragged what is held; once a frame. */
  private drag() {
    this.frame = 0
    const { hold, latest } = this
    if (!hold || !latest) return
    const [dx, dy] = [latest.clientX - hold.x, latest.clientY - hold.y]
    if (!hold.ways) {
      if (Math.hypot(dx, dy) < STILL) return
      const station = hold.handle.field === 'station'
      hold.ways = {
        along: station && Math.abs(dx) > FLAT * Math.abs(dy),
        across: !station || Math.abs(dy) > FLAT * Math.abs(dx),
      }
    }
    const { handle, layout, ways } = hold
    this.drawing.tell({
      act: 'drag',
      handle,
      ...(ways.along && { at: handle.at + dx / layout.scale }),
      ...(ways.across && { r: handle.r - dy / layout.scale }),
    })
  }

  readonly up = (event: PointerEvent) => {
    const { hold, pan, drawing } = this
    this.pan = undefined
    if (!hold) {
      if (pan && Math.abs(event.clientX - pan.x) < STILL)
        drawing.tell({
          act: 'pick',
          index: stationBelow(drawing.stations(), pan.at),
          extend: event.shiftKey,
        })
      return
    }
    this.latest = event
    cancelAnimationFrame(this.frame)
    this.drag()
    this.held(undefined)
    this.latest = undefined
    drawing.tell({ act: 'drop' })
  }

  readonly cancelled = () => {
    this.pan = undefined
    if (!this.hold) return
    cancelAnimationFrame(this.frame)
    this.frame = 0
    this.held(undefined)
    this.drawing.tell({ act: 'cancel' })
  }

  readonly doubled = (event: MouseEvent) => {
    const { drawing } = this
    if (drawing.disabled()) return
    const layout = drawing.layout()
    const point = drawing.point(event, layout)
    if (!handleNear(drawing.handles(), point, REACH.mouse / layout.scale))
      drawing.tell({ act: 'insert', at: point.at })
  }
}
