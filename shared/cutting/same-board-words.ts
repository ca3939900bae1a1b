import type { CutOrder, CutPlan } from './board.ts'
import { quickCut } from './quick.ts'
import { glueUpsParted, type SameBoard, sameBoardPrice, type Together } from './same-board.ts'

/**
 * What is to be said of pieces that should match in grain and colour: whether they come from one board, what it
 * costs to insist on that, and the same of the layers of glue-ups. `amount` writes a cost as the order counts it.
 */
export function sameBoardWords(
  order: CutOrder,
  cut: CutPlan,
  { layers, insist }: Together,
  amount: (cost: number) => string,
): string[] {
  if (cut.unmet.length > 0 || cut.boards.length === 0) return []
  return [...ofAll(order, cut, insist, amount), ...ofGlueUps(order, cut, layers, amount)]
}

function ofAll(order: CutOrder, cut: CutPlan, insist: boolean, amount: (cost: number) => string): string[] {
  if (cut.boards.length === 1) {
    const more = insist ? cut.cost - quickCut(order).cost : 0
    return [
      more > 0
        ? `All blanks come from one board, as the job insists: ${amount(more)} more than from several.`
        : 'All blanks come from one board, so that grain and colour match.',
    ]
  }
  const one = sameBoardPrice(order, cut)
  return [
    one
      ? `The blanks come from ${cut.boards.length} boards. All from one board ${priceWords(one, amount)}.`
      : `The blanks come from ${cut.boards.length} boards; no board of the list yields them all. Choose boards of one log.`,
  ]
}

function ofGlueUps(
  order: CutOrder,
  cut: CutPlan,
  layers: number,
  amount: (cost: number) => string,
): string[] {
  if (layers === 1) return []
  const parted = glueUpsParted(cut, layers)
  if (parted === 0) return ['The layers of each glue-up come from one board.']
  const glued = sameBoardPrice(order, cut, layers)
  const now = `The layers of ${parted === 1 ? 'one glue-up come' : `${parted} glue-ups come`} from more than one board.`
  return [glued ? `${now} Each from one board ${priceWords(glued, amount)}.` : now]
}

function priceWords({ cut, more, boardsMore }: SameBoard, amount: (cost: number) => string): string {
  const names = [...new Set(cut.boards.map(({ key }) => key))].slice(0, 3).join(', ')
  const boards =
    boardsMore > 0 ? ` and takes ${boardsMore} more ${boardsMore === 1 ? 'board' : 'boards'}` : ''
  return `(${names}) costs ${more > 0 ? `${amount(more)} more` : 'no more'}${boards}`
}
