import { describe, expect, it } from 'vitest'
import {
  pointOnPart,
  viewWithin,
  type WindowInput,
  wholeView,
  windowLayout,
  zoomedView,
} from '../../../web/elements/drawing-window.ts'

const leg: WindowInput = { lengthMm: 700, diameterMm: 50, room: 740, view: wholeView, longestLabel: 8 }

describe('windowLayout', () => {
  it('shows the whole part between room for a finger at both ends', () => {
    const layout = windowLayout(leg)
    const [left] = layout.place(0, 0)
    const [right] = layout.place(layout.length, 0)
    expect(left).toBeGreaterThanOrEqual(22)
    expect(right).toBeLessThanOrEqual(740 - 22)
    expect(layout.width).toBe(740)
  })

  it('is no wider than its room however closely it looks, and keeps the upper edge in sight', () => {
    for (const zoom of [2, 4, 16]) {
      const layout = windowLayout({ ...leg, view: { zoom, from: 100 } })
      expect(layout.width).toBe(740)
      expect(layout.scale).toBeCloseTo(windowLayout(leg).scale * zoom, 9)
      const [, edge] = layout.place(0, -layout.radius)
      expect(edge).toBeGreaterThan(0)
      expect(edge).toBeLessThan(layout.height)
    }
  })

  it('places what is to be seen from where the view begins', () => {
    const layout = windowLayout({ ...leg, view: { zoom: 4, from: 200 } })
    expect(layout.place(200 * layout.scale, 0)[0]).toBeCloseTo(22, 6)
  })
})

describe('viewWithin', () => {
  it('does not look past the ends of the part', () => {
    expect(viewWithin({ ...leg, view: { zoom: 2, from: -50 } }).from).toBe(0)
    const { from } = viewWithin({ ...leg, view: { zoom: 2, from: 10_000 } })
    // Half of the part is seen at twice the size.
    expect(from).toBeCloseTo(350, 6)
  })
})

describe('zoomedView', () => {
  it('leaves the place looked at where it is on the screen', () => {
    const view = zoomedView({ ...leg, view: { zoom: 2, from: 100 } }, 2, 300)
    const before = windowLayout({ ...leg, view: { zoom: 2, from: 100 } })
    const after = windowLayout({ ...leg, view })
    expect(view.zoom).toBe(4)
    expect(after.place(300 * after.scale, 0)[0]).toBeCloseTo(before.place(300 * before.scale, 0)[0], 6)
  })
})

describe('pointOnPart', () => {
  it('turns a point of the window into a place and a radius', () => {
    const layout = windowLayout({ ...leg, view: { zoom: 4, from: 200 } })
    const [x, y] = layout.place(260 * layout.scale, -20 * layout.scale)
    const { at, r } = pointOnPart(layout, x, y)
    expect(at).toBeCloseTo(260, 9)
    expect(r).toBeCloseTo(20, 9)
  })
})
