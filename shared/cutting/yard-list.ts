import { boardFeet, boardFeetNet } from '../units/board-foot.ts'
import { inches, nm } from '../units/length.ts'
import { gradeRules, gradeYield, type YardGrade } from './board-grade.ts'

/** What to ask the yard for. Lengths mm, yields and waste as fractions. */
export interface YardList {
  species: string
  nominal?: string
  /** Thickness the boards must really measure. */
  leastThickness: number
  boardFeet: {
    /** Wood in the blanks themselves. */
    net: number
    /** Boards that hold them if every board were clear. */
    geometric: number
    /** The same at the yield of the grade. */
    grade: number
    /** Bought over it, for colour, checks and second choices. */
    extra: number
    /** What to ask for: all of it, up to whole board feet. */
    ask: number
  }
  geometricYield: number
  gradeYield: number
  gradeName: string
  extra: number
  leastWidth: number
  /** Lengths yards sell, whole feet, the one that wastes least first. */
  bestLengths: { lengthFt: number; waste: number }[]
  notes: string[]
}

/** What the yard list is made from. Lengths mm. */
export interface YardInput {
  species: string
  nominal?: string
  /** Rough thickness of the nominal, and what a layer needs at least. */
  thickness: number
  layerThickness: number
  /** What is ripped for a blank, its length, and how many pieces (blanks × layers). */
  sawn: number
  length: number
  count: number
  kerf: number
  endTrim: number
  edgeTrim: number
  grade: YardGrade
  /** Fraction added to the need. */
  extra: number
  yardBoards: { width: number; length: number }[]
}

/** How many sizes with kerfs between them lie in a clear run. */
const fitIn = (run: number, size: number, kerf: number): number =>
  Math.max(0, Math.floor((nm(run) + nm(kerf)) / (nm(size) + nm(kerf))))

/**
 * Part of a board of this length that ends in no blank: trim, kerfs and the short end.
 *
 * @example lengthWaste(2438.4, 590.55, 3.175, 12.7) // 0.03125
 */
export function lengthWaste(board: number, blank: number, kerf: number, endTrim: number): number {
  return 1 - (fitIn(board - 2 * endTrim, blank, kerf) * blank) / board
}

/** Lengths hardwood is commonly sold in, whole feet (NHLA: standard lengths are 4 to 16 ft). */
const YARD_LENGTHS = [6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16]

function bestLengthsFor(input: YardInput): YardList['bestLengths'] {
  return YARD_LENGTHS.map((lengthFt) => ({
    lengthFt,
    waste: lengthWaste(inches(12 * lengthFt), input.length, input.kerf, input.endTrim),
  }))
    .filter((row) => row.waste < 1)
    .sort((a, b) => nm(a.waste) - nm(b.waste) || a.lengthFt - b.lengthFt)
}

/** The mean yield of the blanks on the boards a yard commonly brings that take one; 0 when none does. */
function geometricYieldOf(input: YardInput): number {
  const yields = input.yardBoards.map(({ width, length }) => {
    const blanks =
      fitIn(width - 2 * input.edgeTrim, input.sawn, input.kerf) *
      fitIn(length - 2 * input.endTrim, input.length, input.kerf)
    const wood =
      blanks * boardFeetNet({ thickness: input.layerThickness, width: input.sawn, length: input.length })
    return wood / boardFeet({ thickness: input.thickness, width, length })
  })
  const usable = yields.filter((y) => y > 0)
  return usable.length === 0 ? 0 : usable.reduce((sum, y) => sum + y, 0) / usable.length
}

/**
 * What to ask the yard for when no boards are at hand: board feet of the blanks over the geometric yield (how
 * well they lie on common boards, all of them clear) and the yield of the grade, plus the shop's extra.
 */
export function yardList(input: YardInput): YardList {
  const net =
    input.count * boardFeetNet({ thickness: input.layerThickness, width: input.sawn, length: input.length })
  const geometricYield = geometricYieldOf(input)
  const share = gradeYield(input.grade)
  const geometric = geometricYield > 0 ? net / geometricYield : 0
  const grade = geometric / share
  const extra = grade * input.extra
  const [widthIn] = gradeRules[input.grade].leastBoard
  return {
    species: input.species,
    ...(input.nominal === undefined ? {} : { nominal: input.nominal }),
    leastThickness: input.layerThickness,
    boardFeet: { net, geometric, grade, extra, ask: Math.max(0, Math.ceil(grade + extra - 1e-9)) },
    geometricYield,
    gradeYield: share,
    gradeName: gradeRules[input.grade].name,
    extra: input.extra,
    leastWidth: Math.max(input.sawn + 2 * input.edgeTrim, 0),
    bestLengths: bestLengthsFor(input),
    notes: notesFor(input, geometricYield, widthIn),
  }
}

function notesFor(input: YardInput, geometricYield: number, gradeWidth: number): string[] {
  const notes = [
    `The grade counts clear faces, not clear squares: ${gradeRules[input.grade].name} promises ${gradeRules[input.grade].twelfths}/12 of the surface measure in clear-face cuttings on boards from ${gradeWidth} in wide. Look at all four faces of every square.`,
    'Best from one board or one log: even colour and grain across a set.',
  ]
  if (geometricYield === 0) {
    notes.push(
      'No board of the sizes the yard commonly brings takes this blank: the board feet cannot be reckoned. Ask for longer or wider boards.',
    )
  }
  if (input.nominal === '8/4' && nm(input.layerThickness) > nm(inches(1.75))) {
    // Trade practice: 8/4 rough yields 1-3/4 in surely, 1-7/8 in only from boards that measure full.
    notes.push(
      '8/4 rough yields 1-3/4 in surely, 1-7/8 in only from boards that measure full 2 in: bring a rule.',
    )
  }
  return notes
}
