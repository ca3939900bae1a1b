import type { Board } from './board.ts'

/** Whether a board says what it costs, or is worth. */
export const isPriced = ({ price, pricePerBoardFoot }: Pick<Board, 'price' | 'pricePerBoardFoot'>): boolean =>
  price !== undefined || pricePerBoardFoot !== undefined
