import type { RackBoard } from '../shared/contract/board.ts'
import { amountOf } from '../shared/units/money.ts'
import { costOf } from './yard-order.ts'
import { type PulledBoard, speciesOf, type YardTally } from './yard-tally.ts'

/** Boards as they go to the rack: with what was paid for each, and where they came from. */
export function boughtBoards(tally: YardTally, boards: readonly PulledBoard[]): RackBoard[] {
  const from = [tally.terms?.name, tally.name].filter(Boolean).join(', ')
  return boards.map((pulled) => {
    const { price: _price, pricePerBoardFoot: _perFoot, ...board } = pulled.board
    const minor = costOf(pulled, tally)
    const species = speciesOf(tally) ?? board.species
    return {
      ...board,
      ...(species !== undefined && { species }),
      ...(minor !== undefined && { price: amountOf(minor, tally.currency) }),
      ...(from && { from }),
    }
  })
}

/** The tally once these boards were bought: the others went back, and nothing of it changes any more. */
export function closedTally(tally: YardTally, bought: readonly PulledBoard[], at: string): YardTally {
  const keys = new Set(bought.map(({ board }) => board.key))
  return {
    ...tally,
    boards: tally.boards.map((pulled) => (keys.has(pulled.board.key) ? pulled : { ...pulled, back: true })),
    steps: [],
    bought: at,
  }
}
