import type { Stage } from '../route/operation.ts'

/** Minutes for the batch. */
export interface BatchTime {
  minutes: number
  perPiece: number
  first: number
  last: number
  p10: number
  p50: number
  p90: number
  byStage: Partial<Record<Stage, number>>
  /** Elapsed days from start to packed, counting the shop's hours and what must dry. */
  elapsed: { workDays: number; waitDays: number; days: number; why: string }
}

/** One line of the price; amounts in minor units of the currency. */
export interface PriceLine {
  key: string
  name: string
  minor: number
  why: string
}

/** The price of the set before any wood is cut; amounts in currency units. */
export interface Quote {
  currency: string
  lines: { key: string; name: string; amount: number; why: string }[]
  total: number
  perPiece: number
}
