import { describe, expect, it } from 'vitest'
import { type PaperAsked, paperOf, printPdf } from '../../../server/prints/index.ts'
import type { Problem } from '../../../shared/problem.ts'
import { infoOf, phrasesOf } from './paper.ts'
import { balusterPlan, knobPlan, shop } from './plans.ts'

const inch = (n: number): number => n * 25.4
const breachesOf = (asked: PaperAsked) => {
  try {
    return paperOf(asked, 'in')
  } catch (error) {
    return (error as Problem).errors
  }
}

describe('the paper asked for', () => {
  it('is what the units of the shop suggest where none is said', () => {
    expect([paperOf({}, 'in'), paperOf({}, 'mm'), paperOf({ paper: 'a4' }, 'in')]).toEqual([
      'letter',
      'a4',
      'a4',
    ])
  })

  it('is a roll of a width written in any form', () => {
    expect(paperOf({ paper: 'roll', width: '914 mm' }, 'in')).toMatchObject({ width: 914 })
    expect(paperOf({ paper: 'roll', width: '36' }, 'in')).toMatchObject({ width: 914.4 })
    expect(paperOf({ paper: 'roll', width: '61 cm', length: '8\' 4 1/2"' }, 'mm')).toEqual({
      width: 610,
      longest: 2552.7,
    })
  })

  it.each([
    [{ paper: 'roll' }, 'width', /is missing/],
    [{ paper: 'roll', width: 'wide' }, 'width', /must be a length: .*; read "wide"/],
    [{ paper: 'roll', width: '2 in' }, 'width', /must lie between 7-7\/8 in and 78-47\/64 in; read "2 in"/],
    [{ paper: 'roll', width: '36 in', length: '300 in' }, 'length', /must lie between .* and 200 in/],
    [{ paper: 'letter', width: '36 in' }, 'width', /goes with the paper roll only; the paper is letter/],
    [{ length: '36 in' }, 'length', /goes with the paper roll only; the paper is not said/],
  ] as const)('%j is refused', (asked, path, says) => {
    expect(breachesOf(asked)).toEqual([{ path, message: expect.stringMatching(says) }])
  })
})

describe('a print on a roll', () => {
  const sizeOf = (pdf: Buffer) => {
    const [width, height] = infoOf(pdf)
      ['Page size']!.match(/[\d.]+/g)!
      .map(Number)
    return [width!, height!].map((points) => (points * 25.4) / 72)
  }
  const printed = (what: 'pattern' | 'story-stick', width: number, longest = 5000) =>
    printPdf(what, balusterPlan(), { style: 'fraction', paper: { width, longest }, shop })

  it('lies across where the part is shorter than the roll is wide: no more paper than it takes', async () => {
    const [width, height] = sizeOf(await printed('pattern', 914))
    expect(width).toBeCloseTo(914, 1)
    expect(height).toBeLessThan(250)
  })

  it('lies along where it is longer, as long as it takes in one sheet', async () => {
    const pdf = await printed('pattern', 610)
    const [width, height] = sizeOf(pdf)
    expect(height).toBeCloseTo(610, 1)
    // 30 in of part, 6 mm beyond both ends, margins of 10 mm.
    expect(width).toBeCloseTo(inch(30) + 12 + 20, 1)
    expect(infoOf(pdf).Pages).toBe('1')
    expect(phrasesOf(pdf, 1)).toContain('Sheet A1, the only one')
    expect(phrasesOf(pdf, 1)).toContain('Stations, running lengths from the foot')
  })

  it('is several sheets where the length allowed is less', async () => {
    const pdf = await printed('story-stick', 300, 400)
    expect(sizeOf(pdf)[0]).toBeCloseTo(400, 1)
    expect(phrasesOf(pdf, 1)).toContain('join A1 to A2')
  })

  it.each(['cut-list', 'caliper-card', 'work-order', 'labels', 'quote'] as const)(
    'is not made of %s: that goes on sheets',
    async (what) => {
      const print = printPdf(what, knobPlan(), { style: 'mm', paper: { width: 610, longest: 5000 }, shop })
      await expect(print).rejects.toMatchObject({
        code: 'bad-input',
        errors: [
          { path: 'paper', message: expect.stringContaining('a roll takes pattern, story-stick, gauges') },
        ],
      })
    },
  )
})
