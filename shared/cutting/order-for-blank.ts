import { nm, type Units } from '../units/length.ts'
import type { Board, CutOrder } from './board.ts'
import { quickCut } from './quick.ts'

/** What is cut for the blanks of a job, and from what. Lengths mm, prices in currency units. */
export interface BlankCutting {
  units: Units
  blank: {
    sawn: number
    length: number
    layers: number
    layerThickness: number
    /** Rough thickness of the nominal. */
    thickness: number
    count: number
  }
  /** Boards on hand, cut before any is bought. */
  onHand?: Board[]
  /** Sizes a yard commonly brings, as many as needed. */
  yardBoards: { width: number; length: number }[]
  pricePerBoardFoot?: number
  kerf: number
  endTrim: number
  edgeTrim: number
  minOffcut: number
  priceBy: 'exact' | 'tally'
  currency: string
  process?: CutOrder['process']
  seconds?: number
}

/**
 * The cut order for the blanks of a job: side = what is sawn for the square, count × layers; blanks of cheap
 * wood to practise on are cut elsewhere. From boards on hand alone where they are enough, so that the least of
 * them is used up; else from them and the yard's.
 */
export function cutOrderFor(input: BlankCutting): CutOrder {
  const own = { ...orderWithout(input), boards: usableOf(input) }
  if (own.boards.length > 0 && quickCut(own).unmet.length === 0) return own
  const taken = new Set(own.boards.map(({ key }) => key))
  const yard = yardBoardsOf(input).map((board) =>
    taken.has(board.key) ? { ...board, key: `${board.key}, to buy` } : board,
  )
  return { ...own, boards: [...own.boards, ...yard] }
}

/** Boards on hand that take at least one blank, were they without defects. */
const usableOf = ({ onHand = [], blank }: BlankCutting): Board[] =>
  onHand.filter(
    ({ width, length, thickness }) =>
      nm(thickness) >= nm(blank.layerThickness) &&
      nm(width) >= nm(blank.sawn) &&
      nm(length) >= nm(blank.length),
  )

function orderWithout(input: BlankCutting): Omit<CutOrder, 'boards'> {
  const { blank } = input
  return {
    units: input.units,
    kerf: input.kerf,
    endTrim: input.endTrim,
    edgeTrim: input.edgeTrim,
    process: input.process ?? 'either',
    priceBy: input.priceBy,
    minOffcut: input.minOffcut,
    seconds: input.seconds ?? 10,
    currency: input.currency,
    blanks: [
      {
        key: blank.layers > 1 ? 'layer' : 'blank',
        side: blank.sawn,
        length: blank.length,
        count: blank.count * blank.layers,
        thickness: blank.layerThickness,
      },
    ],
  }
}

/** The yard's usual boards at the thickness wanted, named by width and length in the job's units. */
function yardBoardsOf({ yardBoards, blank, pricePerBoardFoot, units }: BlankCutting): Board[] {
  const figure = (mm: number) => (units === 'in' ? nm(mm) / nm(25.4) : mm).toFixed(2).replace(/\.?0+$/, '')
  const seen = new Map<string, Board>()
  for (const { width, length } of yardBoards) {
    const key = `${figure(width)} × ${figure(length)} ${units}`
    seen.set(key, {
      key,
      width,
      length,
      thickness: blank.thickness,
      count: null,
      ...(pricePerBoardFoot === undefined ? {} : { pricePerBoardFoot }),
    })
  }
  return [...seen.values()]
}
