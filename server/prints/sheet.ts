import { MM_PER_INCH, nm } from '../../shared/units/length.ts'
import { isRoll, type Paper, sheetSize } from './paper.ts'
import { FOOT_PT, HEADING_PT, MARGIN_MM, type Sheet } from './print.ts'

const mm = (points: number): number => (points * MM_PER_INCH) / 72

/** What margins, heading and foot take off a sheet, mm. */
const BESIDE = 2 * MARGIN_MM
const ABOVE_AND_BELOW = 2 * MARGIN_MM + mm(HEADING_PT + FOOT_PT)

/** Shortest sheet cut off a roll: the check bars and their words need so much, mm. */
const SHORTEST = 200

/** The room for a drawing on a sheet, mm; `highest` is the highest drawing the paper takes in one sheet. */
export function windowOf(paper: Paper, sheet: Sheet | 'highest'): Sheet {
  const whole = sheet === 'highest' ? highest(paper) : sheet
  return { width: whole.width - BESIDE, height: whole.height - ABOVE_AND_BELOW }
}

const highest = (paper: Paper): Sheet =>
  isRoll(paper) ? { width: paper.longest, height: paper.width } : sheetSize(paper, 'landscape')

/**
 * The sheet for a drawing, mm. On a roll the drawing lies across it where its length fits the roll's width, else
 * along it, on one sheet as long as it takes or several of the greatest length allowed.
 */
export function sheetFor(paper: Paper, drawing: { width: number; height: number }): Sheet {
  if (!isRoll(paper)) return sheetSize(paper, 'landscape')
  const [width, height] = [drawing.width + BESIDE, drawing.height + ABOVE_AND_BELOW]
  const across = nm(width) <= nm(paper.width) && nm(height) <= nm(paper.longest)
  if (across) return { width: paper.width, height: Math.max(height, SHORTEST) }
  return { width: Math.min(Math.max(width, SHORTEST), paper.longest), height: paper.width }
}
