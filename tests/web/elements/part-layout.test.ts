import { describe, expect, it } from 'vitest'
import { partLayout } from '../../../web/elements/part-layout.ts'

const leg = { lengthMm: 420, diameterMm: 57, labels: 12, longestLabel: 8, orientation: 'auto' as const }

describe('partLayout', () => {
  it('lays a part down on a wide page and stands it up on a narrow one', () => {
    expect(partLayout({ ...leg, room: 1200 }).vertical).toBe(false)
    expect(partLayout({ ...leg, room: 360 }).vertical).toBe(true)
  })

  it('draws to one scale both ways', () => {
    for (const room of [360, 1200]) {
      const { scale, length, radius } = partLayout({ ...leg, room })
      expect(length / 420).toBeCloseTo(scale, 9)
      expect((2 * radius) / 57).toBeCloseTo(scale, 9)
    }
  })

  it('keeps part and labels on the drawing', () => {
    for (const room of [320, 560, 900, 1400]) {
      for (const labels of [0, 4, 60]) {
        const layout = partLayout({ ...leg, labels, room })
        for (const x of [0, layout.length]) {
          for (const y of [-layout.radius, layout.radius]) {
            const [px, py] = layout.place(x, y)
            expect(px).toBeGreaterThanOrEqual(0)
            expect(px).toBeLessThanOrEqual(layout.width)
            expect(py).toBeGreaterThanOrEqual(0)
            expect(py).toBeLessThanOrEqual(layout.height)
          }
        }
        expect(layout.reach[1] - layout.reach[0]).toBeGreaterThanOrEqual((labels - 1) * layout.gap - 1e-9)
      }
    }
  })

  it('turns labels on their side when they would not fit beside each other', () => {
    expect(partLayout({ ...leg, labels: 6, room: 1200 }).turnedLabels).toBe(false)
    expect(partLayout({ ...leg, labels: 40, room: 1200 }).turnedLabels).toBe(true)
  })

  it('puts the foot below the top when the part stands', () => {
    const { place, length } = partLayout({ ...leg, room: 360 })
    expect(place(0, 0)[1]).toBeGreaterThan(place(length, 0)[1])
  })
})
