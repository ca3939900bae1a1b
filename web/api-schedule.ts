import type { Ships } from '../shared/ships.ts'
import { ask } from './api.ts'

/** How open jobs are asked to be put in order. */
export interface ShipsAsked {
  /** Undated drafts to count too, by id. */
  with?: readonly string[]
  first?: string
  order?: readonly string[]
}

/** When every open job ships, from this device’s day on; drafts without a date that are not counted stand aside. */
export interface ShipsAnswer extends Ships {
  aside: { id: string; name: string }[]
}

/** The day it is where this device is, ISO 8601. */
export function todayHere(now = new Date()): string {
  const two = (n: number): string => String(n).padStart(2, '0')
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`
}

export const ships = ({ with: also = [], first, order = [] }: ShipsAsked = {}) =>
  ask<ShipsAnswer>(
    `/schedule?${new URLSearchParams({
      from: todayHere(),
      ...(also.length > 0 && { with: also.join(',') }),
      ...(first && { first }),
      ...(order.length > 0 && { order: order.join(',') }),
    })}`,
  )
