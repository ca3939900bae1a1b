import type { DressedWhen } from '../blank/dressed-sizes.ts'
import { surfacedThickness } from '../blank/nominal.ts'
import { boardFeet, boardFeetNet, surfaceMeasure } from '../units/board-foot.ts'
import { inches, nm } from '../units/length.ts'
import { massOf } from '../wood/density.ts'
import { type BestLength, bestLengths, fitIn, worthAsking } from './best-lengths.ts'
import {
  type GradeFit,
  gradeFit,
  gradePromise,
  gradeRules,
  gradeYield,
  type YardGrade,
} from './board-grade.ts'
import { yardGrades } from './grade-names.ts'
import {
  type DressedOffer,
  dressedOffer,
  type SquareOffer,
  squareOffers,
  type YardBlank,
} from './yard-offers.ts'
import { SCANT } from './yard-terms.ts'

/** What the wood must be, as asked of the yard. */
export interface YardWishes {
  dryness: 'kiln' | 'air' | 'green'
  sap: 'none' | 'allowed'
  grain: 'any' | 'rift' | 'straight'
  /** All from one board, whatever it costs. */
  oneBoard: boolean
}

/** What the yard list is made from. Lengths mm. */
export interface YardInput extends YardWishes {
  species: string
  nominal?: string
  /** The boards come planed on two sides. */
  surfaced?: boolean
  /** Rough thickness of the nominal. */
  thickness: number
  /** What is sawn from them: pieces of blanks, those of one job or of several. */
  blanks: YardBlank[]
  kerf: number
  endTrim: number
  edgeTrim: number
  grade: YardGrade
  /** Fraction added to the need. */
  extra: number
  yardBoards: { width: number; length: number }[]
  /** Sold by its dressed sizes and not by hardwood grades. */
  softwood?: boolean
  /** kg/m³ as it comes from the yard; absent where it is not known. */
  density?: number
  /** Price a board foot by grade, currency units. */
  priceOf?: (grade: YardGrade) => number | undefined
}

/** One grade the yard could be asked for, and what it would take. */
export interface GradeChoice {
  grade: YardGrade
  name: string
  /** Whether the cuttings it promises hold the longest and widest blank. */
  fit: GradeFit
  /** Of a board as the yard commonly brings it: its surface measure, cutting units, and in how many cuttings at most. */
  promise?: { surfaceMeasure: number; units: number; cuts?: number }
  ask: number
  /** Currency units. */
  cost?: number
}

/** What to ask the yard for. Lengths mm, yields and waste as fractions. */
export interface YardList extends YardWishes {
  species: string
  nominal?: string
  surfaced: boolean
  softwood: boolean
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
  grade: YardGrade
  gradeName: string
  extra: number
  leastWidth: number
  /** Widths from which one strip more comes off a board, for the side that takes most wood. */
  stripWidths: { strips: number; width: number }[]
  /** Lengths to ask for, whole feet, the one that wastes least first; those that waste much more are left out. */
  bestLengths: BestLength[]
  blanks: YardBlank[]
  /** The same need in every grade. */
  grades: GradeChoice[]
  /** Instead of boards: squares ready-made, and softwood in its dressed sizes. */
  squares: SquareOffer[]
  dressed: DressedOffer[]
  /** What is asked for weighs so much as it comes, g; absent where the wood’s density then is not known. */
  mass?: number
  notes: string[]
}

/** Cubic mm of a board foot: 144 cubic inches. */
const BOARD_FOOT = 144 * 25.4 ** 3

/** No board that a person would carry is ripped into more strips of one side. Common practice, no source. */
const STRIPS_MOST = 6
/** Nor is commonly wider, mm. Common practice, no source. */
const WIDEST = inches(14)

const netOf = (blanks: readonly YardBlank[]): number =>
  blanks.reduce(
    (sum, { layerThickness, sawn, length, count }) =>
      sum + count * boardFeetNet({ thickness: layerThickness, width: sawn, length }),
    0,
  )

/** The mean yield of a blank on the boards a yard commonly brings that take one; 0 when none does. */
function geometricYieldOf(input: YardInput, blank: YardBlank): number {
  const yields = input.yardBoards.map(({ width, length }) => {
    const pieces =
      fitIn(width - 2 * input.edgeTrim, blank.sawn, input.kerf) *
      fitIn(length - 2 * input.endTrim, blank.length, input.kerf)
    const { layerThickness, sawn } = blank
    const wood = pieces * boardFeetNet({ thickness: layerThickness, width: sawn, length: blank.length })
    return wood / boardFeet({ thickness: input.thickness, width, length })
  })
  const usable = yields.filter((y) => y > 0)
  return usable.length === 0 ? 0 : usable.reduce((sum, y) => sum + y, 0) / usable.length
}

/** Part of a board foot as it is sold that is wood: of surfaced stock less, for it counts by its rough thickness. */
const woodOf = ({ thickness, surfaced }: YardInput): number =>
  (surfaced ? surfacedThickness(thickness) : thickness) / Math.max(thickness, inches(1))

const upToWhole = (feet: number): number => Math.max(0, Math.ceil(feet - 1e-9))

const mostOf = (blanks: readonly YardBlank[], of: (blank: YardBlank) => number): number =>
  blanks.reduce((most, blank) => Math.max(most, of(blank)), 0)

function gradeChoices({ blanks, extra, priceOf, yardBoards }: YardInput, geometric: number): GradeChoice[] {
  const [board] = yardBoards
  const measure = board && surfaceMeasure(board.width, board.length)
  const largest = {
    sawn: mostOf(blanks, ({ sawn }) => sawn),
    length: mostOf(blanks, ({ length }) => length),
  }
  return yardGrades.map((grade) => {
    const ask = upToWhole((geometric / gradeYield(grade)) * (1 + extra))
    const price = priceOf?.(grade)
    return {
      grade,
      name: gradeRules[grade].name,
      fit: gradeFit(grade, largest),
      ...(measure && { promise: { surfaceMeasure: measure, ...gradePromise(grade, measure) } }),
      ask,
      ...(price !== undefined && { cost: price * ask }),
    }
  })
}

function stripWidths({ blanks, kerf, edgeTrim }: YardInput): YardList['stripWidths'] {
  const wood = (side: number) => netOf(blanks.filter(({ sawn }) => nm(sawn) === nm(side)))
  const [main] = [...new Set(blanks.map(({ sawn }) => sawn))].sort((a, b) => wood(b) - wood(a))
  if (main === undefined) return []
  return Array.from({ length: STRIPS_MOST }, (_, i) => ({
    strips: i + 1,
    width: (i + 1) * main + i * kerf + 2 * edgeTrim,
  })).filter(({ strips, width }) => strips === 1 || nm(width) <= nm(WIDEST))
}

/**
 * What to ask the yard for when no boards are at hand: board feet of the blanks over the geometric yield (how
 * well they lie on common boards, all of them clear) and the yield of the grade, plus the shop's extra; and all the
 * boards must be.
 */
export function yardList(input: YardInput): YardList {
  const { blanks, grade, dryness, softwood = false } = input
  const net = netOf(blanks)
  const lying = blanks.map((blank) => ({ net: netOf([blank]), share: geometricYieldOf(input, blank) }))
  const geometric = lying.reduce((sum, each) => sum + (each.share > 0 ? each.net / each.share : 0), 0)
  const share = gradeYield(grade)
  const graded = geometric / share
  const extra = graded * input.extra
  const ask = upToWhole(graded + extra)
  const when: DressedWhen = dryness === 'green' ? 'green' : 'dry'
  return {
    species: input.species,
    ...(input.nominal === undefined ? {} : { nominal: input.nominal }),
    surfaced: input.surfaced === true,
    softwood,
    dryness,
    sap: input.sap,
    grain: input.grain,
    oneBoard: input.oneBoard,
    leastThickness: mostOf(blanks, ({ layerThickness }) => layerThickness),
    boardFeet: { net, geometric, grade: graded, extra, ask },
    geometricYield: geometric > 0 ? net / geometric : meanShare(lying),
    gradeYield: share,
    grade,
    gradeName: gradeRules[grade].name,
    extra: input.extra,
    leastWidth: mostOf(blanks, ({ sawn }) => sawn) + 2 * input.edgeTrim,
    stripWidths: stripWidths(input),
    bestLengths: worthAsking(bestLengths(blanks, input)),
    blanks,
    grades: gradeChoices(input, geometric),
    squares: squareOffers(blanks),
    dressed: softwood ? blanks.flatMap((blank) => dressedOffer(blank, input, when) ?? []) : [],
    ...(input.density !== undefined && { mass: massOf(ask * BOARD_FOOT * woodOf(input), input.density) }),
    notes: notesFor(input, lying),
  }
}

/** How well the blanks lie on boards where none is wanted any more. */
const meanShare = (lying: { share: number }[]): number =>
  lying.length === 0 ? 0 : lying.reduce((sum, { share }) => sum + share, 0) / lying.length

function notesFor(input: YardInput, lying: { share: number }[]): string[] {
  const { name, twelfths, leastBoard } = gradeRules[input.grade]
  const notes = [
    input.softwood
      ? 'Softwood is not sold by hardwood grades: ask for clear stock, free of heart centre. The board feet are reckoned as for the hardwood grade named.'
      : `The grade counts clear faces, not clear squares: ${name} promises ${twelfths}/12 of the surface measure in clear-face cuttings on boards from ${leastBoard[0]} in wide. Look at all four faces of every square.`,
    'Best from one board or one log: even colour and grain across a set.',
  ]
  if (lying.some(({ share }) => share === 0)) {
    notes.push(
      'No board of the sizes the yard commonly brings takes this blank: the board feet cannot be reckoned. Ask for longer or wider boards.',
    )
  }
  if (input.nominal === '8/4' && input.blanks.some((b) => nm(b.layerThickness) > nm(inches(1.75)))) {
    // Trade practice: 8/4 rough yields 1-3/4 in surely, 1-7/8 in only from boards that measure full.
    notes.push(
      '8/4 rough yields 1-3/4 in surely, 1-7/8 in only from boards that measure full 2 in: bring a rule.',
    )
  }
  if (!input.surfaced && input.blanks.some((b) => nm(b.layerThickness) > nm(input.thickness - SCANT))) {
    notes.push(
      `${input.nominal ?? 'The stock'} is needed full: boards that measure scant are too thin for these blanks. Take the next thickness then.`,
    )
  }
  if (input.sap === 'none' && !input.softwood) {
    // From memory: most grade rules take sound sapwood for clear, in walnut and cherry too.
    notes.push('Grades commonly count sound sapwood as clear: say that it must be heartwood.')
  }
  return notes
}
