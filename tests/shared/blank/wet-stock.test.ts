import { describe, expect, it } from 'vitest'
import { moistureCautions, type StockMoisture } from '../../../shared/blank/wet-stock.ts'
import { wood, woodWith } from '../wood/woods.ts'

const cautions = (over: Partial<StockMoisture> = {}, units: 'in' | 'mm' = 'mm') =>
  moistureCautions({ species: wood('cherry-black'), sawn: 8, turned: 8, inUse: 8, ...over }, 50, units).join(
    '\n',
  )

describe('what is said of the moisture of a blank', () => {
  it('is nothing where the wood is at its moisture in use', () => {
    expect(cautions({ dryness: 'kiln' })).toBe('')
    expect(cautions({ sawn: 10 })).not.toMatch(/Wet stock/)
  })

  it('tells wet stock from green, each with what to do first', () => {
    expect(cautions({ sawn: 16 })).toMatch(/^Wet stock: sawn at 16 %, used at 8 %/)
    expect(cautions({ sawn: 30 })).toMatch(/^Green stock: at 30 % .* above fibre saturation/)
  })

  it('says how much larger it is sawn', () => {
    // eq. 4-9: 7.1 % along the rings; 50 mm at 8 % measures 50/(1 − 0.071·22/30) = 52.75 mm green
    expect(cautions({ sawn: 40 })).toMatch(/sawn 2\.7 mm larger each way for what it shrinks/)
    expect(cautions({ sawn: 40 }, 'in')).toMatch(/sawn 7\/64 in larger/)
  })

  it('doubts a moisture that does not go with what the yard is asked for', () => {
    expect(cautions({ dryness: 'green' })).toMatch(
      /Green lumber .* sawn at 8 %: .* about 58 % in the heartwood/,
    )
    expect(cautions({ dryness: 'green', species: wood('walnut-black') })).toMatch(/holds 30 % and more/)
    expect(cautions({ dryness: 'kiln', sawn: 20 })).toMatch(/Kiln-dried lumber .* sawn at 20 %/)
    expect(cautions({ dryness: 'air', sawn: 16 })).not.toMatch(/asked for/)
  })

  it('says what green lumber is reckoned with where nobody measured it', () => {
    const green = { dryness: 'green', sawn: 58, sawnBy: 'table 4-1' } as const
    expect(cautions(green)).toMatch(/not said: it is reckoned with the 58 % .* table 4-1\)\. Measure it/)
    expect(cautions({ ...green, sawn: 30, sawnBy: 'fibre saturation' })).toMatch(
      /reckoned with fibre saturation, 30 %/,
    )
    expect(cautions({ ...green, sawnBy: 'job' })).not.toMatch(/reckoned/)
  })

  it('says where the shop’s air takes the wood away from its use', () => {
    // Wood Handbook table 4-2: 70 °F and 65 % give 12.0 %; 40 % gives 7.7 %
    expect(cautions({ air: { temperatureC: 190 / 9, humidityPct: 65 } }, 'in')).toMatch(
      /In the shop’s air, 70 °F and 65 %, wood comes to 12 %; it is used at 8 %/,
    )
    expect(cautions({ air: { temperatureC: 190 / 9, humidityPct: 40 } })).toBe('')
  })

  it('says what the allowance stands on where no shrinkage is on record', () => {
    expect(cautions({ species: woodWith({ sg12: 0.6 }), sawn: 20 })).toMatch(
      /estimate from its specific gravity/,
    )
    expect(cautions({ species: woodWith({}), sawn: 20 })).toMatch(/nothing is added for drying/)
    expect(cautions({ species: woodWith({}) })).toBe('')
  })
})
