import type { CutBoard, CutPlan, PlacedBlank, Section, Strip } from './board.ts'
import { blanksOn } from './cut-blanks.ts'

/** How the blanks of one key become numbered pieces. */
export interface Numbering {
  /** Key of the blanks in the cut order. */
  key: string
  /** Blanks of that key that are glued up to one that goes on the lathe. */
  layers: number
  /** Pieces that come of one on the lathe. */
  pieces: number
}

/** A blank that knows which pieces come of it. */
export interface SheetBlank extends PlacedBlank {
  /** `3`, `5–8` for a stick of several, `3a` for a layer of a glue-up. */
  label: string
  /** Numbers of the pieces; none where the blank belongs to no batch. */
  pieces: number[]
  /** `a`, `b`, `c` where several are glued up. */
  layer?: string
}

/** A board of the sheet, numbered in the order in which the boards are listed; its blanks are numbered too. */
export interface SheetBoard extends Omit<CutBoard, 'strips' | 'sections'> {
  number: number
  strips?: (Omit<Strip, 'blanks'> & { blanks: SheetBlank[] })[]
  sections?: (Omit<Section, 'blanks'> & { blanks: SheetBlank[] })[]
}

/** A cut plan with its pieces numbered. */
export interface CuttingSheet {
  boards: SheetBoard[]
  /** Pieces for which no blank is cut. */
  uncut: number[]
}

interface Spot {
  board: number
  blank: SheetBlank
}

const numbersText = (pieces: readonly number[]): string =>
  pieces.length > 1 ? `${pieces[0]}–${pieces.at(-1)}` : String(pieces[0])

/**
 * The plan with its pieces numbered, from 1, board by board, strip by strip from the butt end on; boards with most
 * blanks first, so that a set comes from few boards and the odd one gives spares. Layers of one
 * glue-up are taken from one board as far as the boards hold whole ones; those of two boards get the last
 * numbers. Several keys are numbered each for itself after a letter, in the order in which their numberings are given.
 */
export function cuttingSheet(cut: CutPlan, numberings: readonly Numbering[]): CuttingSheet {
  const boards = [...cut.boards]
    .sort((a, b) => blanksOn(b).length - blanksOn(a).length)
    .map((board, i) => numberedBoard(board, i + 1))
  const spots = boards.flatMap((board) =>
    blanksOf(board).map((blank): Spot => ({ board: board.number, blank })),
  )
  const keys = [
    ...new Set([
      ...numberings.map(({ key }) => key),
      ...spots.map(({ blank }) => blank.key),
      ...cut.unmet.map(({ key }) => key),
    ]),
  ]
  const unmet = new Map(cut.unmet.map(({ key, count }) => [key, count]))
  const uncut = keys.flatMap((key, k) => {
    const own = spots.filter(({ blank }) => blank.key === key)
    const prefix = keys.length > 1 ? letterOf(k) : ''
    return numbered(own, numberingOf(key, numberings), prefix, unmet.get(key) ?? 0)
  })
  return { boards, uncut }
}

const numberingOf = (key: string, numberings: readonly Numbering[]): Numbering =>
  numberings.find((one) => one.key === key) ?? { key, layers: 1, pieces: 1 }

const letterOf = (place: number): string =>
  place < 26
    ? String.fromCharCode(65 + place)
    : `${String.fromCharCode(65 + (place % 26))}${Math.floor(place / 26)}`

function numberedBoard(board: CutBoard, number: number): SheetBoard {
  const open = (blank: PlacedBlank): SheetBlank => ({ ...blank, label: '', pieces: [] })
  const { strips, sections, ...rest } = board
  return {
    ...rest,
    number,
    ...(strips && { strips: strips.map((strip) => ({ ...strip, blanks: strip.blanks.map(open) })) }),
    ...(sections && {
      sections: sections.map((section) => ({ ...section, blanks: section.blanks.map(open) })),
    }),
  }
}

/** Every blank of a board in the order of its strips or sections. */
export const blanksOf = (board: Pick<SheetBoard, 'strips' | 'sections'>): SheetBlank[] => blanksOn(board)

/** Gives the blanks of one key their numbers; returns those of the pieces that lack wood. */
function numbered(spots: Spot[], { layers, pieces }: Numbering, prefix: string, missing: number): number[] {
  const run = (n: number) => Array.from({ length: pieces }, (_, i) => (n - 1) * pieces + i + 1)
  glueUps(spots, layers).forEach((group, g) => {
    const own = run(g + 1)
    group.forEach(({ blank }, i) => {
      blank.pieces = own
      if (layers > 1) blank.layer = String.fromCharCode(97 + i)
      blank.label = `${prefix}${numbersText(own)}${blank.layer ?? ''}`
    })
  })
  const [whole, all] = [Math.floor(spots.length / layers), Math.ceil((spots.length + missing) / layers)]
  return Array.from({ length: all - whole }, (_, i) => run(whole + 1 + i)).flat()
}

/** Blanks in groups that are glued up: whole groups of one board first, then what is left over of several. */
function glueUps(spots: Spot[], layers: number): Spot[][] {
  if (layers === 1) return spots.map((spot) => [spot])
  const whole: Spot[][] = []
  const over: Spot[] = []
  const byBoard = new Map<number, Spot[]>()
  for (const spot of spots) {
    const own = byBoard.get(spot.board)
    if (own) own.push(spot)
    else byBoard.set(spot.board, [spot])
  }
  for (const own of byBoard.values()) {
    const full = own.length - (own.length % layers)
    for (let i = 0; i < full; i += layers) whole.push(own.slice(i, i + layers))
    over.push(...own.slice(full))
  }
  for (let i = 0; i < over.length; i += layers) whole.push(over.slice(i, i + layers))
  return whole
}

/**
 * Which pieces are spares, in words; of `pieces` in all those beyond the quantity.
 *
 * @example sparesText(10, 8) // 'Pieces 9, 10 are spares.'
 * @example sparesText(9, 8) // 'Piece 9 is a spare.'
 * @example sparesText(8, 8) // ''
 */
export function sparesText(pieces: number, quantity: number): string {
  const count = Math.max(0, pieces - quantity)
  const numbers = piecesText(Array.from({ length: count }, (_, i) => ({ label: String(quantity + i + 1) })))
  if (count === 0) return ''
  return count === 1 ? `Piece ${numbers} is a spare.` : `Pieces ${numbers} are spares.`
}

/**
 * That a set comes from one board where only its spares come from others: `Pieces 1 to 8 come from board 1, only
 * spares from others.`; nothing else is to be said.
 */
export function setBoardText({ boards }: CuttingSheet, quantity: number): string {
  const ofSet = boards.filter((board) =>
    blanksOf(board).some(({ pieces }) => pieces.some((number) => number <= quantity)),
  )
  if (boards.length < 2 || ofSet.length !== 1 || quantity < 2) return ''
  return `Pieces 1 to ${quantity} come from board ${ofSet[0]!.number}, only spares from others.`
}

/** Where the wood of a piece lies: the board by its number in the sheet and its key, the strip or section by its number. */
export interface PiecePlace {
  board: number
  key: string
  copy: number
  strip?: number
  section?: number
  /** Which blank it is of its strip from the butt end, or of its section from the edge. */
  nth: number
  /** How far it begins from the butt end, mm. */
  from: number
  layer?: string
}

/** Where the wood of every piece lies, by its number; a glue-up lies in several places. */
export function piecePlaces({ boards }: CuttingSheet): Map<number, PiecePlace[]> {
  const places = new Map<number, PiecePlace[]>()
  for (const { number, key, copy, strips, sections } of boards) {
    const note = (runs: { blanks: SheetBlank[] }[] | undefined, what: 'strip' | 'section') =>
      runs?.forEach(({ blanks }, run) => {
        blanks.forEach(({ pieces, from, layer }, i) => {
          const place = {
            board: number,
            key,
            copy,
            [what]: run + 1,
            nth: i + 1,
            from,
            ...(layer && { layer }),
          }
          for (const piece of pieces) places.set(piece, [...(places.get(piece) ?? []), place])
        })
      })
    note(strips, 'strip')
    note(sections, 'section')
  }
  return places
}

/**
 * Pieces of a run of blanks in words, neighbours together.
 *
 * @example piecesText([{ label: '1' }, { label: '2' }, { label: '3' }, { label: '7' }]) // '1 to 3, 7'
 * @example piecesText([{ label: '3a' }, { label: '3b' }]) // '3a, 3b'
 */
export function piecesText(blanks: readonly Pick<SheetBlank, 'label'>[]): string {
  const runs: { first: string; last: string }[] = []
  for (const { label } of blanks) {
    const run = runs.at(-1)
    if (run && /^\d+$/.test(label) && Number(label) === Number(run.last) + 1) run.last = label
    else runs.push({ first: label, last: label })
  }
  const far = ({ first, last }: { first: string; last: string }) => Number(last) - Number(first) > 1
  return runs
    .map((run) => (run.first === run.last ? run.first : `${run.first}${far(run) ? ' to ' : ', '}${run.last}`))
    .join(', ')
}

/**
 * Where the wood of a piece lies, as short as a label: board, strip or section, and which blank of it; of a glue-up
 * only the boards, for each layer is marked by itself.
 *
 * @example placeMark([{ board: 2, key: 'rack 3', copy: 1, strip: 1, nth: 3, from: 900 }]) // 'board 2, strip 1, 3rd'
 */
export function placeMark(places: readonly PiecePlace[]): string {
  const [place, ...others] = places
  if (!place) return 'no wood cut'
  const boards = [...new Set(places.map(({ board }) => board))]
  if (others.length > 0)
    return `${boards.length > 1 ? 'layers of boards' : 'layers of board'} ${boards.join(' and ')}`
  const { board, strip, section, nth } = place
  return `board ${board}, ${strip === undefined ? `section ${section}` : `strip ${strip}`}, ${ordinal(nth)}`
}

/**
 * The same in full, with the board’s own name.
 *
 * @example placeText([{ board: 2, key: 'rack 3', copy: 1, strip: 1, nth: 3, from: 900 }]) // 'board 2, strip 1, 3rd from the butt end (rack 3)'
 * @example placeText([{ board: 2, key: 'a', copy: 1, section: 4, nth: 1, from: 0 }]) // 'board 2, section 4, 1st from the edge (a)'
 */
export function placeText(places: readonly PiecePlace[]): string {
  const [place] = places
  const from = places.length !== 1 ? '' : ` from the ${place!.strip === undefined ? 'edge' : 'butt end'}`
  const names = [...new Set(places.map(({ key }) => key))]
  return `${placeMark(places)}${from}${names.length > 0 ? ` (${names.join(', ')})` : ''}`
}

const ordinal = (n: number): string => {
  const ending = n % 100 > 10 && n % 100 < 14 ? 'th' : (['th', 'st', 'nd', 'rd'][n % 10] ?? 'th')
  return `${n}${ending}`
}
