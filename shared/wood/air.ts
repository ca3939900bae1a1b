import { emcPct } from './emc.ts'

/** Air that wood stands in: temperature °C, relative humidity %. */
export interface Air {
  temperatureC: number
  humidityPct: number
}

/**
 * Moisture content that wood comes to in that air, % MC. Wood Handbook FPL-GTR-282 eq. 4-5.
 *
 * @example Math.round(moistureInAir({ temperatureC: 21.1, humidityPct: 40 }) * 10) // 77
 */
export const moistureInAir = ({ temperatureC, humidityPct }: Air): number =>
  emcPct(temperatureC, humidityPct / 100)
