import { describe, expect, it } from 'vitest'
import { readTemperature, temperatureFigure, temperatureText } from '../../../shared/units/temperature.ts'

describe('temperatures', () => {
  // freezing and boiling water by definition of the scales; −40 is the same on both
  it.each([
    ['32 °F', 0],
    ['212 F', 100],
    ['-40 °F', -40],
    ['−40 C', -40],
    ['21,5 °C', 21.5],
    [' 20.5c ', 20.5],
  ] as const)('reads %s as %d °C whatever the units', (written, celsius) => {
    expect(readTemperature(written, 'in')).toBeCloseTo(celsius, 9)
    expect(readTemperature(written, 'mm')).toBeCloseTo(celsius, 9)
  })

  it('takes a figure without a scale in the one that goes with the lengths, and a number as °C', () => {
    expect(readTemperature('68', 'in')).toBeCloseTo(20, 9)
    expect(readTemperature('20', 'mm')).toBe(20)
    expect(readTemperature(20, 'in')).toBe(20)
  })

  it.each(['', 'warm', '21 K', '1.2.3', '2 1/2 °C', Number.NaN])('reads nothing from %j', (written) => {
    expect(readTemperature(written, 'mm')).toBeUndefined()
  })

  it('writes them with their scale', () => {
    expect(temperatureText(20, 'in')).toBe('68 °F')
    expect(temperatureText(20.04, 'mm')).toBe('20 °C')
    expect(readTemperature(temperatureFigure(18.5, 'in'), 'in')).toBeCloseTo(18.5, 6)
  })
})
