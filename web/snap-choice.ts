import { type Snap, snaps } from '../shared/profile/edit/snap.ts'
import type { Units } from '../shared/units/length.ts'

/** The grids to choose from, as they are told. */
export const snapChoices: readonly (readonly [snap: Exclude<Snap, 'none'>, text: string])[] = snaps.map(
  (snap) => [snap, snap.includes('/') ? `${snap} in` : `${snap} mm`],
)

const PLACE = 'setwright.snap'
const usual: Record<Units, Snap> = { in: '1/64', mm: '0.5' }

const isSnap = (text: unknown): text is Snap => text === 'none' || snaps.some((snap) => snap === text)

function kept(): Partial<Record<Units, unknown>> {
  try {
    return (JSON.parse(localStorage.getItem(PLACE) ?? '{}') ?? {}) as Partial<Record<Units, unknown>>
  } catch {
    return {}
  }
}

/** The grid a person drags on, in profiles written in these units. */
export function snapFor(units: Units): Snap {
  const chosen = kept()[units]
  return isSnap(chosen) ? chosen : usual[units]
}

/** Keeps the choice on this device. */
export function keepSnap(units: Units, snap: Snap): void {
  try {
    localStorage.setItem(PLACE, JSON.stringify({ ...kept(), [units]: snap }))
  } catch {
    // Without storage the usual grid stays.
  }
}
