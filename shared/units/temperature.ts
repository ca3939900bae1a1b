import type { Units } from './length.ts'

/** What can be read as a temperature, for messages. */
export const READABLE_TEMPERATURES = 'a number of °C, or text such as "21 °C" or "70 °F"'

/** The scale where none is written: Fahrenheit where lengths are in inches. */
export const temperatureUnit = (units: Units): '°F' | '°C' => (units === 'in' ? '°F' : '°C')

/**
 * A temperature in °C; a number is °C, text without a scale is in that of `units`. Nothing where it cannot be read.
 *
 * @example readTemperature('70 °F', 'mm') // 190 / 9
 * @example readTemperature('70', 'in') // 190 / 9
 * @example readTemperature('21,5', 'mm') // 21.5
 * @example readTemperature(21, 'in') // 21
 */
export function readTemperature(written: number | string, units: Units): number | undefined {
  if (typeof written === 'number') return Number.isFinite(written) ? written : undefined
  const read = /^\s*([-−]?\d+(?:[.,]\d+)?)\s*(?:°\s*)?([CF])?\s*$/i.exec(written)
  if (!read) return undefined
  const figure = Number(read[1]!.replace('−', '-').replace(',', '.'))
  const scale = read[2]?.toUpperCase() ?? temperatureUnit(units).slice(1)
  return scale === 'F' ? ((figure - 32) * 5) / 9 : figure
}

/** The figure of a temperature in the scale that goes with `units`, to a tenth. */
export function temperatureFigure(celsius: number, units: Units): string {
  const shown = units === 'in' ? (celsius * 9) / 5 + 32 : celsius
  return String(Math.round(shown * 10) / 10)
}

/**
 * A temperature with its scale, Fahrenheit where lengths are in inches.
 *
 * @example temperatureText(21, 'in') // '69.8 °F'
 * @example temperatureText(21, 'mm') // '21 °C'
 */
export const temperatureText = (celsius: number, units: Units): string =>
  `${temperatureFigure(celsius, units)} ${temperatureUnit(units)}`
