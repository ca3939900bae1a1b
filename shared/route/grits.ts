/** A step this much coarser to finer leaves scratches: turners’ guild answers warn of 80 to 150; the limit itself common practice, no source. */
const WIDEST_STEP = 150 / 80

/**
 * Steps of a grit sequence that skip too much.
 *
 * @example gritJumps([60, 80, 120, 180, 220]) // []
 * @example gritJumps([80, 150, 220]) // [[80, 150]]
 */
export function gritJumps(grits: number[]): [number, number][] {
  return grits.slice(1).flatMap((grit, i): [number, number][] => {
    const before = grits[i]!
    return grit / before >= WIDEST_STEP ? [[before, grit]] : []
  })
}

/** A caution where the sequence skips too much, else nothing. */
export function gritCaution(grits: number[]): string | undefined {
  const [jump] = gritJumps(grits)
  return jump && `From ${jump[0]} to ${jump[1]} is too wide a step: scratches of the ${jump[0]} will show.`
}
