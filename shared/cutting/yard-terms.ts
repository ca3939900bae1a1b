import { roughThickness, surfacedThickness } from '../blank/nominal.ts'
import { boardFeet, boardFeetTallied } from '../units/board-foot.ts'
import { inches, nm } from '../units/length.ts'
import { minorOf } from '../units/money.ts'
import type { YardGrade } from './board-grade.ts'

/** A price of a yard. The closest row holds: its own wood before `*`, its own grade before `*`. */
export interface YardPrice {
  /** Species key, or `*` for every wood without a row of its own. */
  species: string
  /** Quarters of an inch as sold, e.g. `8/4`. */
  nominal: string
  grade: YardGrade | '*'
  /** Planed on two sides. */
  surfaced?: boolean
  /** Currency units. */
  pricePerBoardFoot: number
}

/** By what a service is charged. */
export const servicePer = ['board-foot', 'board', 'foot', 'order'] as const

/** Something a yard does for a charge: surfacing, a straight-lined edge, crosscutting, delivery. */
export interface YardService {
  name: string
  per: (typeof servicePer)[number]
  /** Currency units. */
  price: number
}

/**
 * How the feet of one board are counted: its surface measure in whole square feet (NHLA), each board up to whole
 * board feet, or as it measures to the hundredth.
 */
export const tallyRules = ['tally', 'up', 'exact'] as const

/** What a yard sells by. */
export interface YardTerms {
  name: string
  prices: YardPrice[]
  counts: (typeof tallyRules)[number]
  /** `gross`: the feet the board had green, before the kiln shrank it. */
  measure: 'net' | 'gross'
  /** What a gross tally counts over the net one, a fraction of it. */
  grossOver: number
  services: YardService[]
  /** Board feet below which the yard does not sell; 0 where it sells any. */
  minimumFeet: number
  /** Currency units an order costs at least; 0 where there is no such charge. */
  minimumCharge: number
}

/** What a yard starts from when only its name is known. */
export const usualTerms: Omit<YardTerms, 'name'> = {
  prices: [],
  counts: 'tally',
  measure: 'net',
  // From memory: kiln drying takes 7 to 8 % of the surface measure of hardwood.
  grossOver: 0.08,
  services: [],
  minimumFeet: 0,
  minimumCharge: 0,
}

/** A board at a yard. Lengths mm. */
export interface YardBoard {
  species: string
  width: number
  length: number
  /** As it measures. */
  thickness: number
  /** As it is sold; by its thickness when absent. */
  nominal?: string
  grade?: YardGrade
  surfaced?: boolean
}

/** Quarters a yard sells by. */
const QUARTERS = [16, 12, 10, 8, 6, 5, 4]
/** Rough stock may be scant by so much and still be sold as its nominal, mm. Common practice, no source. */
export const SCANT = inches(1 / 16)

/**
 * The nominal a board of this thickness (mm) is sold as: the thickest it still makes, rough or surfaced on two
 * sides; thinner stock counts as 4/4.
 *
 * @example soldAs(49.2125) // '8/4'
 * @example soldAs(44.45) // '6/4'
 * @example soldAs(44.45, true) // '8/4'
 */
export function soldAs(thickness: number, surfaced = false): string {
  const quarters = QUARTERS.find((q) => {
    const rough = inches(q / 4)
    return nm(thickness) >= nm(surfaced ? surfacedThickness(rough) : rough - SCANT)
  })
  return `${quarters ?? 4}/4`
}

const nominalOf = ({ nominal, thickness, surfaced }: YardBoard): string =>
  nominal ?? soldAs(thickness, surfaced)

/** A hundredth of a board foot, for yards that count so finely. */
const hundredths = (feet: number): number => Math.round(feet * 100 * (1 + 1e-12)) / 100

/** Board feet of one board as this yard counts them, its thickness as it is sold. */
export function billedFeet(
  board: YardBoard,
  { counts, measure, grossOver }: Pick<YardTerms, 'counts' | 'measure' | 'grossOver'>,
): number {
  const size = { ...board, thickness: roughThickness(nominalOf(board)) }
  const net =
    counts === 'tally'
      ? boardFeetTallied(size)
      : counts === 'up'
        ? Math.ceil(boardFeet(size) - 1e-9)
        : hundredths(boardFeet(size))
  return measure === 'gross' ? net * (1 + grossOver) : net
}

type Sort = Pick<YardBoard, 'species' | 'grade' | 'surfaced'> & { nominal: string }

/** How closely a row of prices names what is asked for; -1 where it is another. */
function closeness(row: YardPrice, { species, nominal, grade, surfaced }: Sort): number {
  if (row.nominal !== nominal || !!row.surfaced !== !!surfaced) return -1
  if (row.species !== species && row.species !== '*') return -1
  if (row.grade !== grade && row.grade !== '*') return -1
  return (row.species === species ? 2 : 0) + (row.grade === '*' ? 0 : 1)
}

/** The yard’s price for such boards, currency units a board foot; nothing where its list has none. */
export function pricePerBoardFoot({ prices }: Pick<YardTerms, 'prices'>, sort: Sort): number | undefined {
  let [best, close] = [undefined as YardPrice | undefined, -1]
  for (const row of prices) {
    const found = closeness(row, sort)
    if (found > close) [best, close] = [row, found]
  }
  return best?.pricePerBoardFoot
}

/**
 * What a board foot as the boards measure comes to, currency units: by the gross tally more of them are billed than
 * there are. Nothing where the yard’s list has no price for such boards.
 */
export function pricePerNetFoot(
  terms: Pick<YardTerms, 'prices' | 'measure' | 'grossOver'>,
  sort: Sort,
): number | undefined {
  const price = pricePerBoardFoot(terms, sort)
  return price === undefined || terms.measure === 'net' ? price : price * (1 + terms.grossOver)
}

/** What the yard asks for one board, whole minor units; nothing where its list has no price for it. */
export function boardPriceMinor(board: YardBoard, terms: YardTerms, currency: string): number | undefined {
  const price = pricePerBoardFoot(terms, { ...board, nominal: nominalOf(board) })
  return price === undefined ? undefined : minorOf(price * billedFeet(board, terms), currency)
}

/** What an order comes to at a yard, money in whole minor units. */
export interface YardCharge {
  feet: number
  wood: number
  services: { name: string; amount: number }[]
  /** Added to reach the yard’s least charge. */
  toMinimum: number
  total: number
  /** Boards the list has no price for. */
  unpriced: number
  /** Board feet short of what the yard sells at least. */
  feetShort: number
}

/** What a service costs for so many boards, feet of length and board feet, whole minor units. */
export function serviceMinor(
  { per, price }: YardService,
  amounts: { boards: number; feetLong: number; boardFeet: number },
  currency: string,
): number {
  const times = {
    'board-foot': amounts.boardFeet,
    board: amounts.boards,
    foot: amounts.feetLong,
    order: amounts.boards > 0 ? 1 : 0,
  }
  return minorOf(price * times[per], currency)
}

const FOOT = inches(12)

/**
 * What these boards come to with the services named: wood by the yard’s count and prices (a board’s own
 * `priceMinor` before them), services, and what the least charge adds.
 */
export function yardCharge(
  boards: readonly (YardBoard & { priceMinor?: number })[],
  terms: YardTerms,
  currency: string,
  services: readonly string[] = [],
): YardCharge {
  const feet = boards.reduce((sum, board) => sum + billedFeet(board, terms), 0)
  const feetLong = boards.reduce((sum, { length }) => sum + nm(length) / nm(FOOT), 0)
  const prices = boards.map((board) => board.priceMinor ?? boardPriceMinor(board, terms, currency))
  const wood = prices.reduce<number>((sum, price) => sum + (price ?? 0), 0)
  const charged = terms.services
    .filter(({ name }) => services.includes(name))
    .map((service) => ({
      name: service.name,
      amount: serviceMinor(service, { boards: boards.length, feetLong, boardFeet: feet }, currency),
    }))
  const sum = charged.reduce((total, { amount }) => total + amount, wood)
  const least = boards.length > 0 ? minorOf(terms.minimumCharge, currency) : 0
  return {
    feet,
    wood,
    services: charged,
    toMinimum: Math.max(0, least - sum),
    total: Math.max(sum, least),
    unpriced: prices.filter((price) => price === undefined).length,
    feetShort: boards.length > 0 ? Math.max(0, terms.minimumFeet - feet) : 0,
  }
}
