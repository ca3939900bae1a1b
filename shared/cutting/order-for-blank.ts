import { nm, type Units } from '../units/length.ts'
import type { Board, CutOrder } from './board.ts'

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
  /** Boards at hand; when there are none, the sizes a yard commonly brings, as many as needed. */
  boards?: Board[]
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
 * wood to practise on are cut elsewhere.
 */
export function cutOrderFor(input: BlankCutting): CutOrder {
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
    boards: input.boards?.length ? input.boards : yardBoardsOf(input),
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
