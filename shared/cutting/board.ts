/** Input and output of the cutting plan. Lengths mm, board feet as numbers, prices in currency units. */
export interface Defect {
  from: number
  to: number
  across?: [number, number]
  kind?: string
}

export interface Board {
  key: string
  width: number
  length: number
  thickness: number
  /** `null`: as many as needed. */
  count: number | null
  pricePerBoardFoot?: number
  price?: number
  grade?: string
  defects?: Defect[]
  /** Its ends and edges are sawn already, as an offcut’s are: no trim is lost on it. */
  trimmed?: boolean
  /** It is the shop’s own already: it costs nothing now, and is exempt from “every board has a price or none”; a price is what it is worth. */
  onHand?: boolean
  /** Where the tree’s heart lies at the butt end, as far as it is known. */
  heart?: Heart
}

/** The heart of the tree: from the edge that defects are measured from, and below the board’s face; mm. */
export interface Heart {
  across: number
  below: number
}

export interface CutBlank {
  key: string
  side: number
  length: number
  count: number
  /** Least board thickness; the side when absent. */
  thickness?: number
}

export type Process = 'rip-first' | 'crosscut-first'

export interface CutOrder {
  units: 'in' | 'mm'
  kerf: number
  endTrim: number
  edgeTrim: number
  process: Process | 'either'
  priceBy: 'exact' | 'tally'
  minOffcut: number
  seconds: number
  /** ISO 4217 code: prices are compared in its minor units. */
  currency: string
  blanks: CutBlank[]
  boards: Board[]
}

/** A blank laid on a board: along the length from the butt end, across the width from one edge; mm. */
export interface PlacedBlank {
  key: string
  from: number
  to: number
  across: [number, number]
}

/** A rip-first strip: as wide as the side of its blanks, over the whole board. */
export interface Strip {
  side: number
  across: [number, number]
  blanks: PlacedBlank[]
}

/** A crosscut-first section: as long as its longest blank, then ripped, one blank a strip. */
export interface Section {
  from: number
  to: number
  blanks: PlacedBlank[]
}

export interface Offcut {
  from: number
  to: number
  across: [number, number]
}

export interface CutBoard {
  /** Key of the board in the order; `copy` counts boards of one key from 1. */
  key: string
  copy: number
  process: Process
  width: number
  length: number
  thickness: number
  boardFeet: number
  boardFeetTallied: number
  /** Currency units; absent without prices. */
  cost?: number
  /** It was the shop’s own before; nothing is bought. */
  onHand?: true
  strips?: Strip[]
  sections?: Section[]
  offcuts: Offcut[]
}

export interface CutPlan {
  boards: CutBoard[]
  /** Of the boards that are bought, as they measure; those on hand count in `boardFeetOnHand`. */
  boardFeetBought: number
  boardFeetTallied: number
  boardFeetInBlanks: number
  /** Of the boards on hand that are cut, as they measure; absent when the order has none on hand. */
  boardFeetOnHand?: number
  /** What these were worth, currency units; absent unless every one of them has a price. */
  worthOnHand?: number
  /** Blanks of all boards cut, bought and on hand. */
  yield: number
  /**
   * Currency units when boards to buy carry prices; else board feet to buy, as `priceBy` counts them. Where every
   * board of the order is on hand nothing is bought, and board feet used up count.
   */
  cost: number
  lowerBound: number
  proven: boolean
  unmet: { key: string; count: number }[]
  seconds: number
}
