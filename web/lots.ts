import type { Lot, Weighing } from '../shared/wood/lot.ts'

/**
 * Lots with another weighing in the one of that name; a lot not known yet is opened for the wood. A weighing of the
 * same moment sent again, because an answer got lost, stands once.
 */
export function withWeighing(
  lots: readonly Lot[],
  { name, species, weighing }: { name: string; species: string; weighing: Weighing },
): Lot[] {
  if (!lots.some((lot) => lot.name === name)) return [...lots, { name, species, weighings: [weighing] }]
  const same = ({ mass, at }: Weighing) => at !== undefined && at === weighing.at && mass === weighing.mass
  return lots.map((lot) =>
    lot.name !== name || lot.weighings.some(same) ? lot : { ...lot, weighings: [...lot.weighings, weighing] },
  )
}

/** Lots without one of the weighings; the lot itself stays, should it be left with none. */
export const withoutWeighing = (lots: readonly Lot[], name: string, index: number): Lot[] =>
  lots.map((lot) =>
    lot.name === name ? { ...lot, weighings: lot.weighings.filter((_, i) => i !== index) } : lot,
  )

/** Lots without the one of that name. */
export const withoutLot = (lots: readonly Lot[], name: string): Lot[] =>
  lots.filter((lot) => lot.name !== name)
