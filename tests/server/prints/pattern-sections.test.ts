import { describe, expect, it } from 'vitest'
import { printPdf } from '../../../server/prints/index.ts'
import type { Joint } from '../../../shared/job.ts'
import { middleOfInk, type Page, pagesOf, phrasesOf, wordsOf } from './paper.ts'
import { balusterPlan, balusterStations, shop } from './plans.ts'

const inch = (n: number): number => n * 25.4
const options = { style: 'fraction', paper: 'letter', shop } as const
const mortise = (at: number, face: 'A' | 'B', change: Partial<Joint> = {}): Joint => ({
  kind: 'mortise',
  at: inch(at),
  face,
  size: [inch(3 / 8), inch(2)],
  depth: inch(1),
  stage: 'square',
  ...change,
})

describe('joints seen from the top', () => {
  it('are shown together where some place has both', async () => {
    const joints = [mortise(28.5, 'A'), mortise(26, 'A'), mortise(27, 'B')]
    const text = phrasesOf(await printPdf('pattern', balusterPlan({ joints }), options))
    // 25 … 27 and 26 … 28 have 26 … 27 in common; 27.5 … 29.5 stands by itself.
    for (const place of ['26-1/2 in from the foot', '28-1/2 in from the foot']) expect(text).toContain(place)
    expect(text).not.toContain('27 in from the foot')
  })

  it('lie on the square at true size: A below, B to the right', async () => {
    const pdf = await printPdf(
      'pattern',
      balusterPlan({ joints: [mortise(26, 'A'), mortise(26, 'B')] }),
      options,
    )
    const letters = wordsOf(pdf).filter(({ text, y1, y0 }) => /^[ABCD]$/.test(text) && y1 - y0 > 14)
    const page = letters.at(-1)!.page
    const place = (letter: string) => {
      const { x0, x1, y0, y1 } = letters.findLast(({ text, page: on }) => text === letter && on === page)!
      return { x: (x0 + x1) / 2, y: (y0 + y1) / 2 }
    }
    expect(place('A').y).toBeGreaterThan(place('C').y)
    expect(place('B').x).toBeGreaterThan(place('D').x)
    const dpi = 400
    const sheet = pagesOf(pdf, dpi)[page - 1]! as Page
    const px = (points: number) => (points / 72) * dpi
    // A row 6 mm above the middle is clear of both mortises: it meets the two sides of the square only.
    const row = Math.round(px((place('A').y + place('C').y) / 2) - (6 / 25.4) * dpi)
    const middle = px(place('A').x)
    const half = ((inch(1.75) / 2) * dpi) / 25.4
    const edge = (near: number) => middleOfInk((x) => sheet.ink(x, row), near - 12, near + 12)
    const across = ((edge(middle + half) - edge(middle - half)) / dpi) * 25.4
    expect(Math.abs(across - inch(1.75))).toBeLessThanOrEqual(0.1)
  })

  it('are shown for both hands of a pair, with the faces of each in the table', async () => {
    const joints = [mortise(26, 'A'), mortise(23.5, 'B')]
    const text = phrasesOf(await printPdf('pattern', balusterPlan({ joints, mirrored: true }), options))
    expect(text.match(/left hand, odd numbers/g)!.length).toBeGreaterThanOrEqual(3)
    expect(text).toContain('full profile, right hand, even numbers')
    expect(text).toMatch(/mortise 22-1\/2 – 24-1\/2 in 23-1\/2 in B D 3\/8 × 2 in/)
    expect(text).toMatch(/mortise 25 – 27 in 26 in A A 3\/8 × 2 in/)
  })

  it.each(['letter', 'a4'] as const)('stand on one sheet of %s with their heading', async (paper) => {
    for (let count = 1; count <= 5; count++) {
      const joints = Array.from({ length: count }, () => mortise(26, 'A'))
      const pdf = await printPdf('pattern', balusterPlan({ joints }), { ...options, paper })
      const heads = wordsOf(pdf).filter(({ text }) => text === 'Seen')
      const faces = wordsOf(pdf).filter(({ text, y1, y0 }) => text === 'C' && y1 - y0 > 14)
      expect(heads.map(({ page }) => page)).toEqual([faces.at(-1)!.page])
    }
  })

  it('have one drawing where a turn about the axis makes both hands alike', async () => {
    const text = phrasesOf(await printPdf('pattern', balusterPlan({ mirrored: true }), options))
    expect(text).not.toContain('right hand')
  })
})

describe('a glued pair', () => {
  it('shows its glue line on the profile and from the top', async () => {
    const plan = balusterPlan({ joints: [], profile: { stations: balusterStations, split: true } })
    const text = phrasesOf(await printPdf('pattern', plan, options))
    expect(text.match(/glue line/g)!.length).toBeGreaterThanOrEqual(4)
    expect(text).toContain('Seen from the top, cut across')
  })
})
