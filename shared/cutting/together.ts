import { nm } from '../units/length.ts'
import type { Board, CutOrder } from './board.ts'
import { isPriced } from './priced.ts'

/** One job's part of a common order. */
export interface OrderPart {
  key: string
  name: string
  order: CutOrder
}

/** What stands between the key of a part and the key of its blank. */
const MARK = ' › '

/** The blank's key in the common order. */
export const keyInPart = (part: string, blank: string): string => `${part}${MARK}${blank}`

/**
 * The part and the blank a key of a common order names.
 *
 * @example partOfKey('bench › layer') // { part: 'bench', blank: 'layer' }
 */
export function partOfKey(key: string): { part: string; blank: string } {
  const at = key.lastIndexOf(MARK)
  return { part: key.slice(0, Math.max(0, at)), blank: at < 0 ? key : key.slice(at + MARK.length) }
}

const hasPrice = (board: Board): boolean => board.onHand === true || isPriced(board)

/** Two rows of a yard's board list that are the same board. */
const sameBoard = (a: Board, b: Board): boolean =>
  nm(a.width) === nm(b.width) &&
  nm(a.length) === nm(b.length) &&
  nm(a.thickness) === nm(b.thickness) &&
  a.count === b.count &&
  a.price === b.price &&
  a.pricePerBoardFoot === b.pricePerBoardFoot &&
  a.grade === b.grade &&
  JSON.stringify(a.defects ?? []) === JSON.stringify(b.defects ?? [])

/** A board on hand as two jobs see it: where one may not use its sapwood, neither may. */
function strictest(a: Board, b: Board): Board {
  const defects = [...(a.defects ?? []), ...(b.defects ?? [])]
  const distinct = new Map(defects.map((defect) => [JSON.stringify(defect), defect]))
  return distinct.size === 0 ? a : { ...a, defects: [...distinct.values()] }
}

/** Boards on hand by their key, each once whoever names it; the yard's by what they are. */
function boardsOf(parts: readonly OrderPart[]): Board[] {
  const onHand = new Map<string, Board>()
  const bought = new Map<string, Board[]>()
  for (const board of parts.flatMap(({ order }) => order.boards)) {
    const known = onHand.get(board.key)
    if (board.onHand) onHand.set(board.key, known ? strictest(known, board) : board)
    else {
      const named = bought.get(board.key) ?? []
      if (!named.some((other) => sameBoard(other, board))) bought.set(board.key, [...named, board])
    }
  }
  const taken = new Set(onHand.keys())
  const named = [...bought].flatMap(([name, boards]) =>
    boards.map((board) => {
      let key = name
      for (let n = 2; taken.has(key); n++) key = `${name} (${n})`
      taken.add(key)
      return { ...board, key }
    }),
  )
  const all = [...onHand.values(), ...named]
  // Either every board has a price or none.
  return all.every(hasPrice)
    ? all
    : all.map(({ price: _price, pricePerBoardFoot: _perFoot, ...board }) => board)
}

/**
 * Several orders of one wood as one, so that a board may serve blanks of several jobs: blanks under the key of
 * their part, boards each once (a board on hand is there once, whoever names it, with the faults any of them minds), the
 * widest kerf and trim and the longest search of all. Where some boards have a price and others none, none has: board feet are compared.
 * @throws RangeError without any part, or where the parts are in different currencies
 */
export function ordersTogether(parts: readonly OrderPart[]): CutOrder {
  const [first, ...others] = parts
  if (!first) throw new RangeError('no orders to put together')
  if (others.some(({ order }) => order.currency !== first.order.currency))
    throw new RangeError('orders in different currencies cannot be put together')
  const most = (of: (order: CutOrder) => number) => Math.max(...parts.map(({ order }) => of(order)))
  return {
    ...first.order,
    kerf: most(({ kerf }) => kerf),
    endTrim: most(({ endTrim }) => endTrim),
    edgeTrim: most(({ edgeTrim }) => edgeTrim),
    seconds: most(({ seconds }) => seconds),
    minOffcut: Math.min(...parts.map(({ order }) => order.minOffcut)),
    process: others.every(({ order }) => order.process === first.order.process)
      ? first.order.process
      : 'either',
    blanks: parts.flatMap(({ key, order }) =>
      order.blanks.map((blank) => ({ ...blank, key: keyInPart(key, blank.key) })),
    ),
    boards: boardsOf(parts),
  }
}
