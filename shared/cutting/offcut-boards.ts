import { mmOfNm, nm } from '../units/length.ts'
import type { CutBoard, CutOrder, CutPlan, Defect, Offcut } from './board.ts'
import { overlap, type Run } from './clear.ts'
import { type StockBoard, sawableBoard } from './stock-board.ts'

/** Where offcuts come from. */
export interface Sawn {
  order: CutOrder
  cut: CutPlan
  /** The boards on hand among those that were sawn, as they lay on the rack. */
  rack: readonly StockBoard[]
  /** Name, wood and moisture (%) of the job, for boards that do not say their own. */
  job: { name: string; species: string; moisture: number }
}

/** An offcut to lie on the rack; it has no name yet. */
export type OffcutBoard = Omit<StockBoard, 'key'>

/** Characters of the longest word on where a board came from. */
const FROM_MOST = 200

/**
 * The offcuts of a sawn plan as boards: sizes, wood, moisture and heart of the board they were cut from, sapwood that
 * its job let pass, its price by the foot, and where they came from; those alike counted together. Lengths mm.
 */
export function offcutBoards({ order, cut, rack, job }: Sawn): OffcutBoard[] {
  const stock = new Map(rack.map((board) => [board.key, board]))
  const ordered = new Map(order.boards.map((board) => [board.key, board]))
  const counted = new Map<string, OffcutBoard>()
  for (const board of cut.boards) {
    const source = board.onHand ? stock.get(board.key) : ordered.get(board.key)
    for (const offcut of board.offcuts) {
      const entry = offcutOf(offcut, board, { ...source, ...(!board.onHand && { key: undefined }) }, job)
      const name = JSON.stringify({ ...entry, width: nm(entry.width), length: nm(entry.length) })
      const alike = counted.get(name) ?? { ...entry, count: 0 }
      counted.set(name, { ...alike, count: alike.count! + 1 })
    }
  }
  return [...counted.values()]
}

function offcutOf(
  { from, to, across }: Offcut,
  board: CutBoard,
  source: Partial<StockBoard>,
  job: Sawn['job'],
): OffcutBoard {
  const price = source.pricePerBoardFoot ?? perFoot(source.price, board.boardFeet)
  const { heart } = source
  const defects = marksOn({ from, to, across }, board, source)
  return {
    species: source.species ?? job.species,
    width: mmOfNm(nm(across[1]) - nm(across[0])),
    length: mmOfNm(nm(to) - nm(from)),
    thickness: board.thickness,
    count: 1,
    ...(price !== undefined && { pricePerBoardFoot: price }),
    ...(defects.length > 0 && { defects }),
    trimmed: true,
    moisture: source.moisture ?? job.moisture,
    ...(heart && { heart: { across: heart.across - across[0], below: heart.below } }),
    from: `offcut of ${source.key ?? 'a bought board'}, ${job.name}`.slice(0, FROM_MOST),
  }
}

const runOf = ([from, to]: readonly [number, number]): Run => [nm(from), nm(to)]

/** What is marked on the board and still lies on the offcut, measured from the offcut’s own corner: sapwood that the job let pass. */
function marksOn({ from, to, across }: Offcut, board: CutBoard, source: Partial<StockBoard>): Defect[] {
  const { defects = [], crook } = source
  const marked = sawableBoard({ ...board, count: 1, defects, ...(crook && { crook }) }, { sap: 'none' })
  const [along, side] = [runOf([from, to]), runOf(across)]
  const within = ([low, high]: Run, [least, most]: Run): [number, number] => [
    mmOfNm(Math.max(low, least) - least),
    mmOfNm(Math.min(high, most) - least),
  ]
  return (marked.defects ?? []).flatMap((defect): Defect[] => {
    const [length, width] = [runOf([defect.from, defect.to]), runOf(defect.across ?? [0, board.width])]
    if (!overlap(length, along) || !overlap(width, side)) return []
    const [start, end] = within(length, along)
    return [
      {
        from: start,
        to: end,
        ...(defect.across && { across: within(width, side) }),
        ...(defect.kind !== undefined && { kind: defect.kind }),
      },
    ]
  })
}

/** A price for the whole board by the foot, to hundredths. */
const perFoot = (price: number | undefined, boardFeet: number): number | undefined =>
  price === undefined || boardFeet <= 0 ? undefined : Math.round((price / boardFeet) * 100) / 100
