import type { RackBoard } from '../shared/contract/board.ts'
import type { CutOrder } from '../shared/cutting/board.ts'

/** The order of a plan on boards on hand of its wood; prices count only where every board has one. */
export function orderFromHand(order: CutOrder, species: string, onHand: readonly RackBoard[]): CutOrder {
  const usable = onHand.filter((board) => !board.species || board.species === species)
  const priced = usable.every((board) => board.price !== undefined || board.pricePerBoardFoot !== undefined)
  return {
    ...order,
    boards: usable.map(
      ({ key, width, length, thickness, count, price, pricePerBoardFoot, grade, defects }) => ({
        key,
        width,
        length,
        thickness,
        count,
        grade,
        defects,
        ...(priced && { price, pricePerBoardFoot }),
      }),
    ), // prettier-ignore
  }
}
