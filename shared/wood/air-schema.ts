import { z } from 'zod'
import { readText } from '../input.ts'
import type { Units } from '../units/length.ts'
import { READABLE_TEMPERATURES, readTemperature } from '../units/temperature.ts'

/** A workshop, heated or not; outside it a slip of the scale is likelier than the truth. Common practice, no source. */
const [COLDEST, WARMEST] = [-20, 60]

function temperatureOf(units: Units) {
  return z
    .union([z.number(), z.string()], { error: `must be a temperature: ${READABLE_TEMPERATURES}` })
    .transform((written, context) => {
      const celsius = readTemperature(written, units)
      const message =
        celsius === undefined
          ? `is no temperature that can be read; allowed: ${READABLE_TEMPERATURES}`
          : celsius < COLDEST || celsius > WARMEST
            ? `must be between ${COLDEST} and ${WARMEST} °C (−4 and 140 °F); read ${readText(written)}`
            : undefined
      if (message === undefined) return celsius!
      context.addIssue({ code: 'custom', message })
      return z.NEVER
    })
}

/** Air as the outside may send it; humidity as far as the handbook's table 4-2 of moisture in wood goes, 5 to 95 %. */
export const airSchema = (units: Units) =>
  z.object({ temperatureC: temperatureOf(units), humidityPct: z.number().min(5).max(95) })
