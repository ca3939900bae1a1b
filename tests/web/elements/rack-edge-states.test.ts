import { describe, expect, it } from 'vitest'
import { defaultShop } from '../../../shared/shop.ts'
import { countedText, everyText, leftText, toolsWithLife } from '../../../web/elements/rack-edge-states.ts'

describe('leftText', () => {
  it('counts in whole pieces and never past the moment the edge is due', () => {
    expect(leftText(0.7)).toBe('before the next piece is done')
    expect(leftText(1.9)).toBe('after one more piece')
    expect(leftText(12.4)).toBe('after 12 more pieces')
  })
})

describe('everyText', () => {
  it('never lets an edge go longer than it lasts', () => {
    expect(everyText(0.9)).toBe('within each piece')
    expect(everyText(1.9)).toBe('every piece')
    expect(everyText(6.9)).toBe('every 6 pieces')
  })
})

describe('a counted life', () => {
  const counted = { tool: '1 in skew', pieces: [7, 6, 8.04], middle: 7, minutes: 31.46 }

  it('is offered with every count, the plan’s own, and what it comes to in minutes', () => {
    expect(countedText(counted, 5)).toBe(
      'You brought it back after 7, 6 and 8 pieces; planned was every 5 pieces. Take 7 pieces, 31 min of slicing, as its life from now on?',
    )
  })

  it('goes to its tool with speed and wood, and its pieces between touch-ups make way', () => {
    const tools = defaultShop.tools.map((tool) => ({ ...tool, piecesPerEdge: 5 }))
    const after = toolsWithLife(tools, counted, { rim: 7.126, hardnessN: 6400 })!
    const skew = after.find(({ name }) => name === counted.tool)!
    expect(skew.lives).toEqual([{ minutes: 31.5, rim: 7.13, hardnessN: 6400 }])
    expect(skew.piecesPerEdge).toBeUndefined()
    expect(after.filter(({ piecesPerEdge }) => piecesPerEdge === 5)).toHaveLength(tools.length - 1)
  })

  it('joins the lives counted before, the oldest of which make way', () => {
    const lives = Array.from({ length: 20 }, (_, i) => ({ minutes: i + 1 }))
    const after = toolsWithLife([{ ...defaultShop.tools[4]!, lives }], counted, {})!
    expect(after[0]!.lives).toHaveLength(20)
    expect(after[0]!.lives!.at(0)).toEqual({ minutes: 2 })
    expect(after[0]!.lives!.at(-1)).toEqual({ minutes: 31.5 })
  })

  it('finds no place where the shop has no such tool any more', () => {
    expect(toolsWithLife([], counted, {})).toBeUndefined()
  })
})
