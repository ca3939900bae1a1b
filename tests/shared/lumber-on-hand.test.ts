import { describe, expect, it } from 'vitest'
import type { StockBoard } from '../../shared/cutting/stock-board.ts'
import { readJob } from '../../shared/job.ts'
import { countedTwice, onHandShare, shareWords, twiceWords } from '../../shared/lumber-on-hand.ts'
import { planJob } from '../../shared/plan.ts'
import { defaultShop } from '../../shared/shop.ts'
import { benchLeg } from '../jobs.ts'
import { woods } from './wood/woods.ts'

const plain = planJob(readJob(benchLeg()), defaultShop, woods)
const { sawn, length, layerThickness, count, layers } = plain.blank
const need = count * layers

/** A board one square wide that yields so many of them. */
const board = (key: string, yields: number, many: number | null = 1): StockBoard => ({
  key,
  species: 'walnut-black',
  width: sawn + 2 * defaultShop.edgeTrim,
  length: yields * (length + defaultShop.kerf) + 2 * defaultShop.endTrim,
  thickness: layerThickness,
  count: many,
})
const planned = (id: string, name: string, onHand: StockBoard[]) => ({
  id,
  plan: planJob(readJob({ ...benchLeg(), name }), defaultShop, woods, { onHand }),
})

describe('what boards on hand yield for a job', () => {
  it('is told board by board, with what is left to buy', () => {
    const share = onHandShare(planned('a', 'Legs', [board('rack 1', need - layers)]), undefined)
    expect(share).toMatchObject({
      boards: [{ key: 'rack 1', blanks: need - layers }],
      wanted: need,
      toBuy: layers,
    })
    const noun = layers > 1 ? 'layers' : 'blanks'
    expect(shareWords(share)).toBe(
      `${need - layers} of ${need} ${noun} from board rack 1; ${layers} left to buy.`,
    )
  })

  it('is nothing without boards', () => {
    const share = onHandShare({ id: 'a', plan: plain }, undefined)
    expect(share).toMatchObject({ boards: [], wanted: need, toBuy: need })
    expect(shareWords(share)).toMatch(new RegExp(`^No board on hand; ${need} \\w+ to buy\\.$`))
  })
})

describe('boards on hand that jobs cannot all have', () => {
  it('are those that each by itself counts on, more often than they are there', () => {
    const rack = [board('rack 1', need)]
    const jobs = [planned('a', 'Legs', rack), planned('b', 'Posts', rack)]
    expect(jobs.map(({ plan }) => plan.boardFeet.bought)).toEqual([0, 0])
    const twice = countedTwice(jobs, rack)
    expect(twice).toEqual([
      {
        board: 'rack 1',
        free: 1,
        jobs: [
          { id: 'a', name: 'Legs', boards: 1 },
          { id: 'b', name: 'Posts', boards: 1 },
        ],
      },
    ])
    expect(twiceWords('a', twice)).toBe('Counts on board rack 1, as Posts does: only 1 is free.')
    expect(twiceWords('b', twice)).toBe('Counts on board rack 1, as Legs does: only 1 is free.')
    expect(twiceWords('c', twice)).toBe('')
  })

  it('are not those that are there for all, nor those of one job alone', () => {
    for (const many of [2, null]) {
      const rack = [board('rack 1', need, many)]
      expect(countedTwice([planned('a', 'Legs', rack), planned('b', 'Posts', rack)], rack)).toEqual([])
    }
    const rack = [board('rack 1', need)]
    expect(countedTwice([planned('a', 'Legs', rack)], rack)).toEqual([])
    expect(countedTwice([planned('a', 'Legs', rack), planned('b', 'Posts', [])], rack)).toEqual([])
  })
})
