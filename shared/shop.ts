import { z } from 'zod'
import type { Allowances } from './blank/allowances.ts'
import type { Units } from './units/length.ts'

/** A lathe of the shop. Lengths mm, speeds rpm. */
export interface Lathe {
  name: string
  betweenCentres: number
  /** Twice the centre height over the bed, and over the base of the tool rest. */
  swing: number
  swingOverRest: number
  /** Its belt or gear steps, or the ends of a variable range. */
  speeds: { steps: number[] } | { least: number; most: number }
  /** Lower limit set by a chuck, a faceplate or the maker’s plate. */
  limitRpm?: number
  /** Length of the tool rest. */
  restLength: number
}

export type ToolKind = 'roughing-gouge' | 'spindle-gouge' | 'skew' | 'parting' | 'scraper'

export interface TurningTool {
  name: string
  kind: ToolKind
  /** Width of blade or flute, mm. */
  width: number
  steel: 'carbon' | 'hss' | 'powder'
  /** The shop's own count of pieces between touch-ups; then it rules. */
  piecesPerEdge?: number
}

export interface ShopStock {
  /** Species key, or `*` for every wood without rows of its own. */
  species: string
  nominal: string
  surfaced?: boolean
  /** Currency units. */
  pricePerBoardFoot?: number
}

export interface Shop {
  name: string
  heading?: string
  /** ISO 4217. */
  currency: string
  units: Units
  lathes: Lathe[]
  tools: TurningTool[]
  /** Calipers that can stay set side by side. */
  calipers: number
  stock: ShopStock[]
  /** Sizes a yard commonly brings, when no boards are named. Lengths mm. */
  yardBoards: { width: number; length: number }[]
  grade: 'FAS' | 'Selects' | '1C' | '2A'
  /** Extra bought over the computed need, a fraction. */
  extraWood: number
  kerf: number
  endTrim: number
  edgeTrim: number
  minOffcut: number
  priceBy: 'exact' | 'tally'
  allowances: Partial<Allowances>
  spareConfidence: number
  record: { spoiled: number; made: number }
  learningRate: number
  hoursPerDay: number
  /** Fraction added to working time for rest and interruption. */
  restAllowance: number
  /** Standard deviation of a batch's time as a fraction of it. */
  timeSpread: number
  /** Shop's own factor on the minutes of a kind of operation; 1 when absent. */
  minuteFactors: Record<string, number>
  grits: number[]
  touchUpsPerRegrind: number
  touchUpMinutes: number
  regrindMinutes: number
  /** Currency units. */
  labourPerHour: number
  marginOnCost: number
  finishPerSquareMetre: number
  abrasivePerPiece: number
  minimumCharge: number
  /** Woods the shop adds to the handbook's. */
  species: import('./wood/species.ts').Species[]
}
