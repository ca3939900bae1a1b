import { describe, expect, it } from 'vitest'
import { printPdf } from '../../../server/prints/index.ts'
import { infoOf, phrasesOf, wordsOf } from './paper.ts'
import { balusterPlan, knobPlan, shop } from './plans.ts'

const options = { style: 'fraction', paper: 'letter', shop } as const

describe('labels', () => {
  it('makes one for each piece of the batch, its number large', async () => {
    const pieces = [3, 4, 17].map((number) => ({ number, spare: number === 17 }))
    const pdf = await printPdf('labels', balusterPlan(), { ...options, pieces })
    const large = wordsOf(pdf).filter(({ y0, y1 }) => y1 - y0 > 35)
    expect(large.map(({ text }) => text)).toEqual(['3', '4', '17'])
    const text = phrasesOf(pdf)
    expect(text.match(/▲ top/g)).toHaveLength(3)
    expect(text.match(/▼ foot/g)).toHaveLength(3)
    expect(text.match(/spare/g)).toHaveLength(1)
  })

  it('numbers the planned pieces before a batch is started, spares last', async () => {
    const balusters = phrasesOf(await printPdf('labels', balusterPlan(), options))
    expect(balusters.match(/▲ top/g)).toHaveLength(14)
    expect(balusters.match(/spare/g)).toHaveLength(2)
    // Twelve sticks of four give 48 knobs, eight of them beyond the 40 ordered.
    const pdf = await printPdf('labels', knobPlan(), { ...options, style: 'mm' })
    const large = wordsOf(pdf).filter(({ y0, y1 }) => y1 - y0 > 35)
    expect(large.map(({ text }) => Number(text)).sort((a, b) => a - b)).toEqual(
      Array.from({ length: 48 }, (_, i) => i + 1),
    )
    expect(phrasesOf(pdf).match(/spare/g)).toHaveLength(8)
    expect(Number(infoOf(pdf).Pages)).toBeGreaterThan(1)
  })

  it('tells the hands of mirrored pairs: odd numbers left, even ones right', async () => {
    const pieces = [3, 4, 17].map((number) => ({ number, spare: number === 17 }))
    const hands = async (mirrored: boolean) => {
      const plan = balusterPlan(mirrored ? { mirrored } : {})
      const words = wordsOf(await printPdf('labels', plan, { ...options, pieces }))
      return words.filter(({ text }) => /^(L|R|left|right)$/.test(text)).map(({ text }) => text)
    }
    expect((await hands(true)).sort()).toEqual(['L', 'L', 'R', 'left', 'left', 'right'])
    expect(await hands(false)).toEqual([])
  })
})

describe('where the wood of a piece lies', () => {
  it('stands on its label: board, strip and which blank from the butt end', async () => {
    const pieces = [3, 4, 14].map((number) => ({ number, spare: false }))
    const text = phrasesOf(await printPdf('labels', balusterPlan(), { ...options, pieces }))
    // Three strips of three blanks on each board.
    expect(text).toContain('board 1, strip 1, 3rd')
    expect(text).toContain('board 1, strip 2, 1st')
    expect(text).toContain('board 2, strip 2, 2nd')
  })

  it('is the board of its layers for a glue-up', async () => {
    const plan = balusterPlan()
    const glued = { ...plan, blank: { ...plan.blank, layers: 3 } }
    const text = phrasesOf(
      await printPdf('labels', glued, { ...options, pieces: [{ number: 4, spare: false }] }),
    )
    expect(text).toContain('layers of board 2')
  })
})
