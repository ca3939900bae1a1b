import {
  type DressedWhen,
  dressedThickness,
  dressedWidth,
  softwoodThicknesses,
  softwoodWidths,
  squareFor,
  squareGrades,
} from '../blank/dressed-sizes.ts'
import { boardFeetNet } from '../units/board-foot.ts'
import { inches, nm, roundedUpMm } from '../units/length.ts'
import { type EndCuts, fitIn, type Sawing } from './best-lengths.ts'

/** What is sawn for blanks, and of how many pieces glued up a blank is. */
export interface YardBlank extends Sawing {
  layers: number
}

/** Ready-made squares, instead of boards to be ripped. Lengths mm. */
export interface SquareOffer {
  side: number
  length: number
  count: number
  /** By the size they are sold as. */
  boardFeet: number
  grades: readonly string[]
}

/** Softwood in its dressed sizes. Nominal sizes in inches, real ones in mm. */
export interface DressedOffer {
  nominal: [thickness: number, width: number]
  thickness: number
  width: number
  lengthFt: number
  sticks: number
  /** By nominal sizes, as it is sold. */
  boardFeet: number
}

/** Squares are cut to length in whole inches. Common practice, no source. */
const SQUARE_STEP = inches(1)

/**
 * Squares of dimension stock that would spare ripping and gluing, cut to length; nothing for a blank thicker than any
 * square on sale.
 */
export function squareOffers(blanks: readonly YardBlank[]): SquareOffer[] {
  return blanks.flatMap(({ sawn, length, count, layers }) => {
    const side = squareFor(sawn)
    const squares = Math.ceil(count / layers)
    if (side === undefined || squares === 0) return []
    const cut = roundedUpMm(length, SQUARE_STEP)
    return {
      side,
      length: cut,
      count: squares,
      boardFeet: squares * boardFeetNet({ thickness: side, width: side, length: cut }),
      grades: squareGrades,
    }
  })
}

/** Nominal thicknesses most yards have, inches; what lies between is milled to order. Common practice, no source. */
const STOCKED = [1, 2, 4, 6]
/** The widest most yards have, inches. Common practice, no source. */
const WIDEST = 12

/** Lengths softwood is sold in, whole feet: steps of 2 ft, common practice, no source. */
const SOFTWOOD_LENGTHS = [6, 8, 10, 12, 14, 16]

/** What a blank is sawn out of: pieces of a thickness, and the nominal that has it. */
interface Piece {
  nominal: number
  thickness: number
  count: number
}

/** The square in one piece where stock is thick enough, else its layers; nothing where not even a layer is to be had. */
function pieceOf({ sawn, layerThickness, layers, count }: YardBlank, when: DressedWhen): Piece | undefined {
  const least = (sizes: number[], need: number) =>
    sizes.find((nominal) => nm(dressedThickness(nominal, when)!) >= nm(need))
  const solid = least(STOCKED, sawn)
  const nominal = solid ?? least(STOCKED, layerThickness) ?? least(softwoodThicknesses, layerThickness)
  if (nominal === undefined) return undefined
  const squares = solid === undefined ? count : Math.ceil(count / layers)
  return { nominal, thickness: dressedThickness(nominal, when)!, count: squares }
}

/** What a blank is ripped from in dressed softwood: of all widths and lengths those that take least of it. */
export function dressedOffer(
  blank: YardBlank,
  { kerf, endTrim, edgeTrim }: EndCuts & { edgeTrim: number },
  when: DressedWhen,
): DressedOffer | undefined {
  const piece = pieceOf(blank, when)
  if (piece === undefined || piece.count === 0) return undefined
  const thin = piece.nominal
  return softwoodWidths
    .filter((nominal) => nominal >= thin && nominal <= WIDEST)
    .flatMap((nominal) =>
      SOFTWOOD_LENGTHS.flatMap((lengthFt): DressedOffer[] => {
        const width = dressedWidth(nominal, when)!
        // Its edges are dressed: taken whole, it loses nothing to them.
        const whole = nm(width) >= nm(blank.sawn) ? 1 : 0
        const strips = Math.max(whole, fitIn(width - 2 * edgeTrim, blank.sawn, kerf))
        const each = strips * fitIn(inches(12 * lengthFt) - 2 * endTrim, blank.length, kerf)
        if (each === 0) return []
        const sticks = Math.ceil(piece.count / each)
        const boardFeet = (sticks * thin * nominal * lengthFt) / 12
        const { thickness } = piece
        return [{ nominal: [thin, nominal], thickness, width, lengthFt, sticks, boardFeet }]
      }),
    )
    .sort((a, b) => a.boardFeet - b.boardFeet || a.sticks - b.sticks || a.lengthFt - b.lengthFt)[0]
}
