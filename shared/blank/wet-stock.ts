import { lengthText, styleOf, type Units } from '../units/length.ts'
import { temperatureText } from '../units/temperature.ts'
import { type Air, moistureInAir } from '../wood/air.ts'
import { greenMoistureOf, type SawnMoisture } from '../wood/green-moisture.ts'
import { isUnshrunk, MOISTURE_OVER_SERVICE, tooWet } from '../wood/moisture.ts'
import { type BlankMoisture, type Shrinkage, shrinkageOf } from './shrinkage.ts'

/** Moisture of a blank with what the yard was asked for and the air of the shop, where they are known. */
export interface StockMoisture extends BlankMoisture {
  dryness?: 'kiln' | 'air' | 'green'
  /** Where the moisture it is sawn at is known from; `job` when absent. */
  sawnBy?: SawnMoisture['by']
  air?: Air
}

/** Kiln-dried hardwood for indoor work is sold at 6 to 8 % MC; above this it was not kept dry. Common practice, no source. */
const KILN_DRIED_MOST = 12

const percent = (moisture: number): string => `${Math.round(moisture * 10) / 10} %`

/** What wet stock asks for before it is turned or glued; nothing where it is near its moisture in use. */
function wetness(
  { species, sawn, inUse }: StockMoisture,
  shrinkage: Shrinkage | undefined,
  units: Units,
): string | undefined {
  if (!tooWet(sawn, inUse)) return undefined
  const larger = shrinkage
    ? ` It is sawn ${lengthText(shrinkage.across, styleOf(units))} larger each way for what it shrinks.`
    : ''
  if (isUnshrunk(sawn))
    return `Green stock: at ${percent(sawn)} ${species.name} is above fibre saturation, so all of its shrinkage is still to come. Seal the ends the day it is cut, dry it in stickers, and neither glue nor finish-turn it before it is within ${MOISTURE_OVER_SERVICE} % of the ${percent(inUse)} in use.${larger}`
  return `Wet stock: sawn at ${percent(sawn)}, used at ${percent(inUse)}. Neither glue nor finish-turn it before it is within ${MOISTURE_OVER_SERVICE} % of that (common practice, no source): dry it in stickers first.${larger}`
}

/** What green lumber is reckoned with where nobody said what it holds. */
function reckoned({ species, sawn, sawnBy = 'job' }: StockMoisture): string | undefined {
  if (sawnBy === 'job') return undefined
  const source =
    sawnBy === 'table 4-1'
      ? `the ${percent(sawn)} that green ${species.name} holds on the average (Wood Handbook table 4-1)`
      : `fibre saturation, ${percent(sawn)}, from where on wood shrinks, for what green ${species.name} holds is not on record`
  return `Green lumber is asked for and its moisture when sawn is not said: it is reckoned with ${source}. Measure it and enter what it has.`
}

/** Whether the moisture entered can be that of the dryness asked for. */
function unlikely({ species, sawn, dryness }: StockMoisture): string | undefined {
  if (dryness === 'green' && !isUnshrunk(sawn)) {
    const green = greenMoistureOf(species.key)
    const holds = green
      ? `green ${species.name} holds about ${green.heartwood} % in the heartwood${green.sapwood === undefined ? '' : ` and ${green.sapwood} % in the sapwood`} (Wood Handbook table 4-1)`
      : 'green wood holds 30 % and more'
    return `Green lumber is asked for, but it is to be sawn at ${percent(sawn)}: ${holds}. Measure it and enter what it has.`
  }
  return dryness === 'kiln' && sawn > KILN_DRIED_MOST
    ? `Kiln-dried lumber is asked for, but it is to be sawn at ${percent(sawn)}: kept dry it holds 6 to 8 % (common practice, no source). Measure it.`
    : undefined
}

/** Where the shop's air takes the wood somewhere else than it is used. */
function inShop({ air, inUse }: StockMoisture, units: Units): string | undefined {
  if (!air) return undefined
  const comesTo = moistureInAir(air)
  if (Math.abs(comesTo - inUse) <= MOISTURE_OVER_SERVICE) return undefined
  return `In the shop’s air, ${temperatureText(air.temperatureC, units)} and ${air.humidityPct} %, wood comes to ${percent(comesTo)}; it is used at ${percent(inUse)}. Keep blanks and finished pieces wrapped, or bring the air nearer to that of use.`
}

/** What the shrinkage of a wood is not told from, or why none is added. */
function unsure({ species }: StockMoisture, shrinkage: Shrinkage | undefined): string | undefined {
  if (!shrinkage)
    return `Neither shrinkage nor specific gravity is on record for ${species.name}: nothing is added for drying. Add it to the rounding, from pieces of this wood measured wet and dry.`
  return shrinkage.equation === '4-12'
    ? `No shrinkage is on record for ${species.name}: what is added for drying is an estimate from its specific gravity (eq. 4-12, two thirds of it along the rings).`
    : undefined
}

/**
 * What is to be minded about the moisture of a blank's wood: wet stock, a moisture that does not go with what the yard
 * is asked for, air of the shop that is not that of use, shrinkage that is not on record. `size` is the square wanted
 * dry, mm.
 */
export function moistureCautions(moisture: StockMoisture, size: number, units: Units): string[] {
  const shrinkage = shrinkageOf(size, moisture)
  return [
    wetness(moisture, shrinkage, units),
    unsure(moisture, shrinkage),
    reckoned(moisture),
    unlikely(moisture),
    inShop(moisture, units),
  ].filter((text) => text !== undefined)
}
