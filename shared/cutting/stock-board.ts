import { nm } from '../units/length.ts'
import type { Board, Defect } from './board.ts'

/** A board as it lies on a rack or at a yard: what is measured on it, and what is known of its wood. Lengths mm. */
export interface StockBoard extends Omit<Board, 'onHand'> {
  /** Its wood; any when absent. */
  species?: string
  /** How far the edge bends away from a straight line over the whole length. */
  crook?: number
  /** Moisture content, %. */
  moisture?: number
  /** Where it came from. */
  from?: string
  notes?: string
}

/** What a job lets pass on a board. */
export interface BoardWishes {
  sap: 'none' | 'allowed'
}

/** What is marked on boards, as the trade calls it; other words are read too. */
export const defectKinds = ['knot', 'split', 'check', 'sap', 'pith', 'wane', 'stain', 'worm holes'] as const

/** Whether a defect is sapwood: sound wood of another colour, a defect only to whom it is one. */
const isSap = ({ kind }: Defect): boolean => /^sap(wood)?\b/i.test(kind?.trim() ?? '')

/**
 * The stripe that a crooked board loses: of a width w bent by c, straight strips of the whole length come from w − c.
 * The stripe is laid along the edge measured from. Places given across the board lie up to c farther from the
 * straight line, whichever edge is the hollow one.
 */
function crookDefects({ crook, length, defects = [] }: StockBoard): Defect[] {
  if (!crook) return defects
  const shifted = defects.map(
    (defect): Defect =>
      defect.across ? { ...defect, across: [defect.across[0], defect.across[1] + crook] } : defect,
  )
  return [{ from: 0, to: length, across: [0, crook], kind: 'crook' }, ...shifted]
}

/**
 * A board as the saw meets it: its crook as a stripe along the edge, sapwood a defect only where none is allowed;
 * with its price, and no word of who owns it. Lengths mm.
 * @example sawableBoard({ key: 'a', width: 150, length: 2400, thickness: 52, count: 1, crook: 6 }, { sap: 'none' }).defects // [{ from: 0, to: 2400, across: [0, 6], kind: 'crook' }]
 */
export function sawableBoard(board: StockBoard, { sap }: BoardWishes): Board {
  const { key, width, length, thickness, count, price, pricePerBoardFoot, grade, heart, trimmed } = board
  const defects = crookDefects(board).filter((defect) => sap === 'none' || !isSap(defect))
  return {
    key,
    width,
    length,
    thickness,
    count,
    ...(price !== undefined && { price }),
    ...(pricePerBoardFoot !== undefined && { pricePerBoardFoot }),
    ...(grade !== undefined && { grade }),
    ...(defects.length > 0 && { defects }),
    ...(trimmed && { trimmed }),
    ...(heart && { heart }),
  }
}

/** A board on hand as a cut order takes it: it costs nothing now, and its price is what it is worth. */
export const boardToCut = (board: StockBoard, wishes: BoardWishes): Board => ({
  ...sawableBoard(board, wishes),
  onHand: true,
})

/**
 * What a plan rests on in a board, in nanometres, so that two entries of one board are the same however they were
 * written.
 */
export const measuresOf = ({
  species,
  width,
  length,
  thickness,
  crook,
  trimmed,
  defects = [],
}: StockBoard) => ({
  species,
  width: nm(width),
  length: nm(length),
  thickness: nm(thickness),
  crook: nm(crook ?? 0),
  trimmed: trimmed === true,
  defects: defects.map(({ from, to, across, kind }) => [nm(from), nm(to), across?.map(nm), kind]),
})
