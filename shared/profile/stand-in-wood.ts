import { gravityAt, greenGravity, wetDensity } from '../wood/density.ts'
import type { BarWood } from './whip.ts'

/** Specific gravity at 12 % of the heaviest of the woods below, on its volume at that moisture content. */
const HEAVIEST_GRAVITY = 0.75 // pignut hickory, Wood Handbook FPL-GTR-282 table 5-3b (from memory)

/** Where the stand-in’s figures come from. */
export const standInWoodSource =
  'limberest and heaviest of the 18 hardwoods of the Forest Products Laboratory’s turning study (1935): black willow and pignut hickory at 12 %, Wood Handbook FPL-GTR-282 table 5-3b, the latter from memory; which woods to go by is common practice, no source'

/**
 * Stands in where a wood’s own stiffness or weight is not on record: as limber as the limberest and as heavy as
 * the heaviest of the usual turning hardwoods (`standInWoodSource`), so that it whips sooner than they do. For
 * safe speeds and the steady rest only, never for the figures of a part.
 */
export const standInWood: BarWood = { moeGPa: 7, density: wetDensity(HEAVIEST_GRAVITY, 12) }

/** Density of the stand-in, kg/m³: never lighter than at 12 %. */
function standInDensity(moisture: number): number {
  const green = greenGravity(HEAVIEST_GRAVITY, 12)
  return Math.max(standInWood.density, wetDensity(gravityAt(green, moisture), moisture))
}

/**
 * The wood to work out safe speeds with: its own figures, and the stand-in’s for what is not on record. GPa,
 * kg/m³, moisture in %.
 *
 * @example woodOrStandIn({ moeGPa: 12, density: 700 }, 8) // { moeGPa: 12, density: 700 }
 * @example woodOrStandIn({}, 8).density // 840
 */
export function woodOrStandIn(own: Partial<BarWood>, moisture: number): BarWood {
  return { moeGPa: own.moeGPa ?? standInWood.moeGPa, density: own.density ?? standInDensity(moisture) }
}

/** What to say of speeds that rest on the stand-in; absent where the wood’s own figures are all known. */
export function standInCaution(own: Partial<BarWood>, name: string, moisture: number): string | undefined {
  const { moeGPa, density } = woodOrStandIn(own, moisture)
  const taken = [
    own.moeGPa === undefined ? `a modulus of elasticity of ${moeGPa} GPa` : undefined,
    own.density === undefined ? `a density of ${Math.round(density)} kg/m³` : undefined,
  ].filter((text) => text !== undefined)
  if (taken.length === 0) return undefined
  return `What is not on record for ${name} has a cautious stand-in: speeds and steady rest go by ${taken.join(' and ')}, as of the limberest and heaviest of the usual turning hardwoods; start slower still and raise the speed only while nothing shakes.`
}
