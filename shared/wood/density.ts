import type { Species } from './species.ts'

/** Fibre saturation, % moisture content, unless a wood's own is known. Wood Handbook FPL-GTR-282 ch. 4. */
export const FIBRE_SATURATION = 30

/** Volumetric shrinkage per unit of green specific gravity in eq. 4-12 and 4-13. Wood Handbook FPL-GTR-282. */
const SHRINKAGE_PER_GRAVITY = 0.265

const dryness = (moisture: number): number => Math.max(0, 1 - moisture / FIBRE_SATURATION)

/**
 * Specific gravity on the volume at a moisture content (%), from that on green volume. Wood Handbook
 * FPL-GTR-282 eq. 4-13; at fibre saturation and above it is the green one.
 */
export function gravityAt(green: number, moisture: number): number {
  return green / (1 - SHRINKAGE_PER_GRAVITY * green * dryness(moisture))
}

/** Green specific gravity from that at a moisture content (%): eq. 4-13 turned round. */
export function greenGravity(gravity: number, moisture: number): number {
  return gravity / (1 + SHRINKAGE_PER_GRAVITY * gravity * dryness(moisture))
}

/**
 * Density in kg/m³ of wood with its water, from specific gravity at that moisture content (%). Eq. 4-14.
 *
 * @example wetDensity(0.6, 12) // 672
 */
export const wetDensity = (gravity: number, moisture: number): number => 1000 * gravity * (1 + moisture / 100)

/**
 * Mass in g of so many mm³ at a density in kg/m³.
 *
 * @example massOf(1_000_000, 672) // 672
 */
export const massOf = (volume: number, density: number): number => volume * density * 1e-6

/**
 * The most water wood of that green specific gravity can hold, % moisture content. Eq. 4-3.
 *
 * @example moistureMax(0.77) // 5000 / 77
 */
export const moistureMax = (green: number): number => (100 * (1.54 - green)) / (1.54 * green)

/**
 * Volumetric shrinkage from green to ovendry, %, of wood whose own is not on record, from its green specific gravity.
 * Eq. 4-12.
 *
 * @example volumetricShrinkage(0.5) // 13.25
 */
export const volumetricShrinkage = (green: number): number => 100 * SHRINKAGE_PER_GRAVITY * green

/** Green specific gravity, worked back from that at 12 % where it is not on record; absent where neither is. */
export const greenOf = ({ sgGreen, sg12 }: Species): number | undefined =>
  sgGreen ?? (sg12 === undefined ? undefined : greenGravity(sg12, 12))

/**
 * Density in kg/m³ at a moisture content (%); absent where the wood has no specific gravity on record. What there
 * is to say about the figure stands in `densityCautions`.
 */
export function densityOf(species: Species, moisture: number): number | undefined {
  const green = greenOf(species)
  return green === undefined ? undefined : wetDensity(gravityAt(green, moisture), moisture)
}

/** What to know about a density: that it cannot be had, was worked back, or is asked for at too high a moisture content. */
export function densityCautions(species: Species, moisture: number): string[] {
  const green = greenOf(species)
  if (green === undefined)
    return [`No specific gravity is on record for ${species.name}: mass and whip cannot be had.`]
  const cautions: string[] = []
  if (species.sgGreen === undefined) {
    cautions.push(
      `The green specific gravity of ${species.name} is worked back from its value at 12 % (eq. 4-13).`,
    )
  }
  const most = moistureMax(green)
  if (moisture > most) {
    cautions.push(
      `${species.name} can hold at most ${Math.floor(most)} % of water; ${moisture} % was read: mass is too high.`,
    )
  }
  return cautions
}
