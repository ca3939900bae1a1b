import type { RackBoard } from '../shared/contract/board.ts'
import type { Defect } from '../shared/cutting/board.ts'
import type { defectKinds } from '../shared/cutting/stock-board.ts'
import type { Breach } from '../shared/problem.ts'
import { feetText } from '../shared/units/feet.ts'
import {
  inches,
  type LengthStyle,
  lengthFigure,
  lengthText,
  nm,
  readLength,
  type Units,
} from '../shared/units/length.ts'
import type { NewBoard, PulledBoard } from './yard-tally.ts'

/** Where a defect lies along a board, and across it: all over, from one end or edge, or between two places. */
export type Reach = 'whole' | 'first' | 'last' | 'between'

export type DefectKind = (typeof defectKinds)[number]

/** A defect as it is entered: texts of the lengths that its reaches ask for. */
export interface DefectEntry {
  kind: string
  along: Reach
  across: Reach
  /** From, to along the board from the butt end; from, to across it from the near edge. */
  at: [string, string, string, string]
}

/** A board as it is entered: lengths as keyed, `7-3/8` or `8 ft 4 in` or `185`. */
export interface BoardEntry {
  width: string
  length: string
  thickness: string
  /** Quarters it is sold as, where those were pressed. */
  nominal?: string | undefined
  price: string
  priceOf: 'board-foot' | 'board'
  crook: string
  defects: DefectEntry[]
  /** The number of the board that is changed by it. */
  mends?: number | undefined
  /** What was being entered before that, to go on with. */
  before?: BoardEntry | undefined
}

export type EntryField = 'width' | 'length' | 'thickness' | 'price' | 'crook'

export const freshEntry = (): BoardEntry => ({
  width: '',
  length: '',
  thickness: '',
  price: '',
  priceOf: 'board-foot',
  crook: '',
  defects: [],
})

/**
 * What is entered next: what a change had interrupted, else all as the last board had it but its width, defects and
 * crook. A price of the whole board is that board's own; one of a board foot goes on.
 */
export function nextEntry({ mends, before, ...last }: BoardEntry): BoardEntry {
  if (mends !== undefined) return before ?? freshEntry()
  return { ...last, width: '', crook: '', defects: [], price: last.priceOf === 'board' ? '' : last.price }
}

/** Where each kind mostly lies. Common practice, no source. */
const usualReach: Record<DefectKind, Pick<DefectEntry, 'along' | 'across'>> = {
  knot: { along: 'between', across: 'whole' },
  split: { along: 'first', across: 'whole' },
  check: { along: 'first', across: 'whole' },
  sap: { along: 'whole', across: 'first' },
  pith: { along: 'whole', across: 'between' },
  wane: { along: 'whole', across: 'first' },
  stain: { along: 'between', across: 'whole' },
  'worm holes': { along: 'between', across: 'whole' },
}

export const freshDefect = (kind: DefectKind): DefectEntry => ({
  kind,
  ...usualReach[kind],
  at: ['', '', '', ''],
})

/** The places of `at` that the reaches of a defect ask for. */
export function placesAsked({ along, across }: Pick<DefectEntry, 'along' | 'across'>): number[] {
  const asked = (reach: Reach, first: number) =>
    reach === 'whole' ? [] : reach === 'between' ? [first, first + 1] : [first]
  return [...asked(along, 0), ...asked(across, 2)]
}

/** Text of the stick's whole-inch keys; a fraction already there belonged to the board before. */
export const withInch = (whole: number): string => String(whole)

/** The width with an eighth pressed: put behind the whole inches, exchanged, or taken off when pressed again. */
export function withEighth(text: string, fraction: string): string {
  const whole = /^\d+/.exec(text.includes('-') || !text.includes('/') ? text : '')?.[0] ?? ''
  const pressed = whole ? `${whole}-${fraction}` : fraction
  return pressed === text ? whole : pressed
}

/** The length with whole feet pressed. */
export const withFeet = (feet: number): string => `${feet} ft`

/** The length with inches pressed after its feet; pressed again, they are taken off. */
export function withInches(text: string, inch: number): string {
  const feet = /^\d+ ft/.exec(text)?.[0]
  if (!feet) return `${inch}`
  const pressed = `${feet} ${inch} in`
  return pressed === text ? feet : pressed
}

/** A length as text that reads back as itself. */
function entryText(mm: number, style: LengthStyle, isLong = false): string {
  const figure = lengthFigure(mm, style)
  const units = unitsOf(style)
  const long = isLong ? feetText(mm, style)?.replace('-', ' ') : undefined
  for (const text of [long, figure]) {
    if (text !== undefined && nm(readLength(text, units) ?? Number.NaN) === nm(mm)) return text
  }
  return `${mm} mm`
}

export const unitsOf = (style: LengthStyle): Units => (style === 'mm' ? 'mm' : 'in')

/** What is entered of a length as people say it; the text itself where it cannot be read yet. */
export function saidLength(text: string, style: LengthStyle): string {
  const mm = readLength(text, unitsOf(style))
  if (text.trim() === '' || mm === undefined) return text
  return feetText(mm, style) ?? lengthText(mm, style)
}

/** A pulled board put back into the keys, to be changed. */
export function entryOf({ number, board, nominal }: PulledBoard, style: LengthStyle): BoardEntry {
  const { price, pricePerBoardFoot } = board
  return {
    width: entryText(board.width, style),
    length: entryText(board.length, style, true),
    thickness: entryText(board.thickness, style),
    nominal,
    price: String(price ?? pricePerBoardFoot ?? ''),
    priceOf: price === undefined ? 'board-foot' : 'board',
    crook: board.crook === undefined ? '' : entryText(board.crook, style),
    defects: (board.defects ?? []).map((defect) => defectEntryOf(defect, board, style)),
    mends: number,
  }
}

function defectEntryOf(
  { from, to, across, kind }: Defect,
  board: Pick<RackBoard, 'width' | 'length'>,
  style: LengthStyle,
): DefectEntry {
  const text = (mm: number) => entryText(mm, style)
  const reach = (low: number, high: number, size: number): [Reach, string, string] => {
    const [starts, ends] = [nm(low) <= 0, nm(high) >= nm(size)]
    if (starts && ends) return ['whole', '', '']
    if (starts) return ['first', text(high), '']
    return ends ? ['last', text(size - low), ''] : ['between', text(low), text(high)]
  }
  const [along, ...alongAt] = reach(from, to, board.length)
  const [wide, ...acrossAt] = across ? reach(...across, board.width) : (['whole', '', ''] as const)
  return {
    kind: kind ?? 'knot',
    along,
    across: wide,
    at: [...alongAt, ...acrossAt] as DefectEntry['at'],
  }
}

/** How long a board can be at all, mm: what the rack takes. */
const LONGEST = 20_000
/** The widest crook the rack takes, mm. */
const CROOK_MOST = 2000

const names: Record<EntryField, string> = {
  width: 'Width',
  length: 'Length',
  thickness: 'Thickness',
  price: 'Price',
  crook: 'Crook',
}

/** Reads lengths of an entry and gathers what is wrong. */
class Reader {
  readonly errors: Breach[] = []
  private readonly style: LengthStyle

  constructor(style: LengthStyle) {
    this.style = style
  }

  length(text: string, field: string, name: string, most: number): number {
    const mm = readLength(text, unitsOf(this.style))
    const forms = this.style === 'mm' ? '185 or 62,5' : '7-3/8, 7.375 or 8 ft 4 in'
    if (text.trim() === '') this.fault(field, `${name} is not entered yet: key it in, such as ${forms}.`)
    else if (mm === undefined || nm(mm) <= 0 || nm(mm) > nm(most)) {
      const limit = lengthText(most, this.style)
      this.fault(
        field,
        `${name}: read “${text}”; it must be a length above 0 and up to ${limit}, such as ${forms}.`,
      )
    } else return mm
    return 0
  }

  price(text: string): number | undefined {
    if (text.trim() === '') return undefined
    const price = Number(text.replace(',', '.'))
    if (Number.isFinite(price) && price >= 0 && price <= 1e6) return price
    this.fault('price', `Price: read “${text}”; it must be an amount from 0 to 1000000, such as 9.50.`)
    return undefined
  }

  fault(path: string, message: string): void {
    this.errors.push({ path, message })
  }
}

/** A defect as the rack knows it, on a board of this length and width, mm. */
function readDefect(
  entry: DefectEntry,
  index: number,
  size: { length: number; width: number },
  reader: Reader,
): Defect {
  const field = `defects[${index}]` as const
  const name = `Defect ${index + 1} (${entry.kind})`
  const place = (i: number, most: number) =>
    entry.at[i] === '0' ? 0 : reader.length(entry.at[i]!, field, name, most)
  const run = (reach: Reach, first: number, all: number): [number, number] => {
    if (reach === 'whole') return [0, all]
    const a = place(first, all)
    if (reach === 'first') return [0, a]
    if (reach === 'last') return [all - a, all]
    const b = place(first + 1, all)
    return a <= b ? [a, b] : [b, a]
  }
  if (entry.along === 'whole' && entry.across === 'whole')
    reader.fault(field, `${name}: say where along the board or across it; so it would be all of the board.`)
  const [from, to] = run(entry.along, 0, size.length)
  const across = run(entry.across, 2, size.width)
  return { from, to, ...(entry.across !== 'whole' && { across }), kind: entry.kind }
}

/** What else a board at the yard is. */
export interface EntryGround {
  style: LengthStyle
  units: Units
  grade?: string | undefined
}

/** The board that is entered, or everything that is wrong with it. */
export function readEntry(
  entry: BoardEntry,
  { style, units, grade }: EntryGround,
): { board: NewBoard } | { errors: Breach[] } {
  const reader = new Reader(style)
  const size = (field: 'width' | 'length' | 'thickness') =>
    reader.length(entry[field], field, names[field], LONGEST)
  const board = { width: size('width'), length: size('length'), thickness: size('thickness') }
  const price = reader.price(entry.price)
  const crook =
    entry.crook.trim() === '' ? undefined : reader.length(entry.crook, 'crook', 'Crook', CROOK_MOST)
  // Places are held to the board's size, so only once that can be read.
  const defects =
    reader.errors.length > 0 ? [] : entry.defects.map((defect, i) => readDefect(defect, i, board, reader))
  if (reader.errors.length > 0) return { errors: reader.errors }
  return {
    board: {
      ...(entry.nominal !== undefined && { nominal: entry.nominal }),
      board: {
        units,
        ...board,
        count: 1,
        ...(price !== undefined && { [entry.priceOf === 'board' ? 'price' : 'pricePerBoardFoot']: price }),
        ...(grade !== undefined && { grade }),
        ...(defects.length > 0 && { defects }),
        ...(crook !== undefined && { crook }),
      },
    },
  }
}

/** Text for rough stock sold by quarters of an inch, `8/4` in the style of the keys. */
export const quarterText = (nominal: string, style: LengthStyle): string =>
  entryText(inches(Number.parseInt(nominal, 10) / 4), style)

/** A thickness as text for its field. */
export const thicknessText = (mm: number, style: LengthStyle): string => entryText(mm, style)
