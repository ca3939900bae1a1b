import { describe, expect, it } from 'vitest'
import { jointMark } from '../../../server/prints/pattern-joints.ts'
import { patternSource } from '../../../server/prints/pattern-source.ts'
import type { Joint } from '../../../shared/job.ts'
import { balusterPlan } from './plans.ts'

/** Of the square of 44.45 mm at the top of the baluster, 22 … 30 in. */
const source = patternSource(balusterPlan(), 'mm')
const mortise = (look: Pick<Joint, 'face' | 'angle'>): Joint => ({
  kind: 'mortise',
  at: 660,
  size: [10, 50],
  depth: 25,
  stage: 'square',
  ...look,
})

describe('a joint on the pattern', () => {
  it('shows its mouth where it faces the eye, and dashed where it looks away', () => {
    const mouth = { kind: 'box', from: 635, to: 685, mouth: true }
    const [front, back] = [
      jointMark(mortise({ face: 'A' }), source, 0),
      jointMark(mortise({ face: 'C' }), source, 0),
    ]
    expect(front).toMatchObject({ ...mouth, hidden: false })
    expect(back).toMatchObject({ ...mouth, hidden: true })
    for (const { top, bottom } of [front, back]) {
      expect(top).toBeCloseTo(-5, 9)
      expect(bottom).toBeCloseTo(5, 9)
    }
  })

  it('is seen in depth from the edge of its face, B below and D above', () => {
    const b = jointMark(mortise({ face: 'B' }), source, 0)
    expect(b.top).toBeCloseTo(-2.775, 9)
    expect(b.bottom).toBeCloseTo(22.225, 9)
    const d = jointMark(mortise({ face: 'D' }), source, 0)
    expect(d.top).toBeCloseTo(-22.225, 9)
    expect(d.bottom).toBeCloseTo(2.775, 9)
  })

  it('turns with the face that looks at the reader', () => {
    expect(jointMark(mortise({ face: 'B' }), source, 90).mouth).toBe(true)
    const a = jointMark(mortise({ face: 'A' }), source, 90)
    expect(a.top).toBeCloseTo(-22.225, 9)
    expect(a.bottom).toBeCloseTo(2.775, 9)
  })

  it('lies off the axis and is narrower where it looks aside', () => {
    // Sine and cosine of 30° are 1/2 and √3/2.
    const { top, bottom, mouth } = jointMark(mortise({ angle: 30 }), source, 0)
    expect(mouth).toBe(true)
    expect((top + bottom) / 2).toBeCloseTo(22.225 / 2, 9)
    expect(bottom - top).toBeCloseTo((10 * Math.sqrt(3)) / 2, 9)
  })
})
