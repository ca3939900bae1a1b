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
const STOCKED = [1, 2, 4]

/** Lengths softwood is sold in, whole feet: steps of 2 ft, common practice, no source. */
const SOFTWOOD_LENGTHS = [6, 8, 10, 12, 14, 16]

/** What a blank is ripped from in dressed softwood: of all widths and lengths those that take least of it. */
export function dressedOffer(
  blank: YardBlank,
  { kerf, endTrim, edgeTrim }: EndCuts & { edgeTrim: number },
  when: DressedWhen,
): DressedOffer | undefined {
  const thick = (nominal: number) => nm(dressedThickness(nominal, when)!) >= nm(blank.layerThickness)
  const thin = STOCKED.find(thick) ?? softwoodThicknesses.find(thick)
  if (thin === undefined || blank.count === 0) return undefined
  const thickness = dressedThickness(thin, when)!
  return softwoodWidths
    .filter((nominal) => nominal >= thin)
    .flatMap((nominal) =>
      SOFTWOOD_LENGTHS.flatMap((lengthFt): DressedOffer[] => {
        const width = dressedWidth(nominal, when)!
        const each =
          fitIn(width - 2 * edgeTrim, blank.sawn, kerf) *
          fitIn(inches(12 * lengthFt) - 2 * endTrim, blank.length, kerf)
        if (each === 0) return []
        const sticks = Math.ceil(blank.count / each)
        const boardFeet = (sticks * thin * nominal * lengthFt) / 12
        return [{ nominal: [thin, nominal], thickness, width, lengthFt, sticks, boardFeet }]
      }),
    )
    .sort((a, b) => a.boardFeet - b.boardFeet || a.sticks - b.sticks || a.lengthFt - b.lengthFt)[0]
}
