import type { ShipsAsked } from './api-schedule.ts'

const SHELF = 'setwright.ships'

/** The order set by hand and the undated drafts that count, as kept on this device. */
export interface ShipsWishes {
  order: string[]
  with: string[]
}

const isList = (value: unknown): value is string[] =>
  Array.isArray(value) && value.every((each) => typeof each === 'string')

/** What was wished on this device; nothing where nothing can be read. */
export function keptWishes(shelf: Pick<Storage, 'getItem'>): ShipsWishes {
  try {
    const kept = JSON.parse(shelf.getItem(SHELF) ?? '{}') as Partial<ShipsWishes>
    return { order: isList(kept.order) ? kept.order : [], with: isList(kept.with) ? kept.with : [] }
  } catch {
    return { order: [], with: [] }
  }
}

/** Keeps them; a device without room forgets them with the page. */
export function keepWishes(shelf: Pick<Storage, 'setItem'>, wishes: ShipsWishes): void {
  try {
    shelf.setItem(SHELF, JSON.stringify(wishes))
  } catch {
    // They hold as long as the page lives.
  }
}

/** The wishes as they are asked: jobs that are no longer open are left out. */
export function askedOf(wishes: ShipsWishes, open: ReadonlySet<string>, first?: string): ShipsAsked {
  const known = (ids: readonly string[]): string[] => ids.filter((id) => open.has(id))
  return { with: known(wishes.with), order: first ? [] : known(wishes.order), ...(first && { first }) }
}

/** The order with one job a place earlier (-1) or later (1). */
export function movedBy(order: readonly string[], id: string, by: number): string[] {
  const at = order.indexOf(id)
  const to = at + by
  if (at < 0 || to < 0 || to >= order.length) return [...order]
  const others = order.filter((each) => each !== id)
  return [...others.slice(0, to), id, ...others.slice(to)]
}
