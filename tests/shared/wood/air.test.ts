import { describe, expect, it } from 'vitest'
import type { Problem } from '../../../shared/problem.ts'
import { defaultShop, readShop } from '../../../shared/shop.ts'
import { moistureInAir } from '../../../shared/wood/air.ts'

const air = (read: object, units: 'in' | 'mm' = 'in') =>
  readShop({ ...defaultShop, units, lathes: defaultShop.lathes, air: read }).air

function breach(read: object) {
  try {
    air(read)
  } catch (problem) {
    return (problem as Problem).errors[0]!
  }
  throw new Error('it was read')
}

describe('the air of the shop', () => {
  it('brings wood to the moisture of the handbook’s table 4-2', () => {
    // 70 °F: 7.7 % at 40 % humidity, 12.0 at 65
    expect(moistureInAir({ temperatureC: 190 / 9, humidityPct: 40 })).toBeCloseTo(7.7, 1)
    expect(Math.abs(moistureInAir({ temperatureC: 190 / 9, humidityPct: 65 }) - 12)).toBeLessThan(0.07)
  })

  it('is read with its scale, or in that of the shop', () => {
    expect(air({ temperatureC: '68 °F', humidityPct: 45 })).toEqual({ temperatureC: 20, humidityPct: 45 })
    expect(air({ temperatureC: '68', humidityPct: 45 })).toEqual({ temperatureC: 20, humidityPct: 45 })
    expect(air({ temperatureC: '20', humidityPct: 45 }, 'mm')).toEqual({ temperatureC: 20, humidityPct: 45 })
    expect(air({ temperatureC: 20, humidityPct: 45 })).toEqual({ temperatureC: 20, humidityPct: 45 })
    expect(readShop(defaultShop).air).toBeUndefined()
  })

  it.each([
    [{ temperatureC: 'warm', humidityPct: 45 }, 'air.temperatureC', /no temperature that can be read/],
    [{ temperatureC: '200 °F', humidityPct: 45 }, 'air.temperatureC', /between -20 and 60 °C.*read "200 °F"/],
    [{ temperatureC: 20, humidityPct: 0 }, 'air.humidityPct', /at least 5/],
    [{ temperatureC: 20, humidityPct: 100 }, 'air.humidityPct', /at most 95/],
    [{ temperatureC: 20 }, 'air.humidityPct', /missing/],
    [{ humidityPct: 40 }, 'air.temperatureC', /temperature/],
  ])('is refused by name: %j', (read, path, message) => {
    expect(breach(read)).toMatchObject({ path, message: expect.stringMatching(message) })
  })
})
