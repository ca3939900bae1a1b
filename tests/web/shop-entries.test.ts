import { describe, expect, it } from 'vitest'
import { defaultShop, readShop } from '../../shared/shop.ts'
import { entryAt, withEntry } from '../../web/entry.ts'
import { sentShop, shopFileOf, shopInUnits } from '../../web/shop-entries.ts'

const file = shopFileOf(defaultShop)

describe('sentShop', () => {
  it('sends settings that nobody touched as they are', () => {
    expect(readShop(sentShop(file))).toEqual(readShop(defaultShop))
  })

  it('makes fractions of percentages, and numbers and lists of what was typed', () => {
    let edited = withEntry(file, 'extraWood', '17,5 %')
    edited = withEntry(edited, 'labourPerHour', '52')
    edited = withEntry(edited, 'grits', '100, 150 220')
    edited = withEntry(edited, 'lathes[0].speeds.steps', '500 900,1500')
    edited = withEntry(edited, 'minuteFactors.bead', '1.2')
    const shop = readShop(sentShop(edited))
    expect(shop).toMatchObject({
      extraWood: 0.175,
      labourPerHour: 52,
      grits: [100, 150, 220],
      minuteFactors: { bead: 1.2 },
    })
    expect(shop.lathes[0]!.speeds).toEqual({ steps: [500, 900, 1500] })
  })

  it('reads lives of an edge as numbers, and names the one that is none', () => {
    const [at, life] = ['tools[0].lives', { minutes: '22,5', rim: '7.2', hardnessN: '' }]
    expect(readShop(sentShop(withEntry(file, at, [life]))).tools[0]!.lives).toEqual([
      { minutes: 22.5, rim: 7.2 },
    ])
    const wrong = withEntry(file, at, [{ ...life, rim: 'fast' }])
    expect(() => readShop(sentShop(wrong))).toThrow(/tools\[0\]\.lives\[0\]\.rim.*fast/)
  })

  it('leaves lengths as typed, to be read in the units of the shop', () => {
    expect(readShop(sentShop(withEntry(file, 'kerf', '3/32'))).kerf).toBeCloseTo(2.38125, 9)
    expect(readShop(sentShop(withEntry(file, 'allowances.bow', '1/16'))).allowances.bowPerMm).toBeCloseTo(
      1.5875 / 304.8,
      12,
    )
  })

  it('reads lists of lengths with semicolons between, a comma being the decimal one', () => {
    let edited = withEntry(file, 'lathes[0].rests', '6; 61,0 cm')
    edited = withEntry(edited, 'lathes[0].speeds', {
      motorRpm: '1725',
      motorPulleys: '2; 3 ;4',
      spindlePulleys: '6; 5; 4',
    })
    const lathe = readShop(sentShop(edited)).lathes[0]!
    expect(lathe.rests).toEqual([152.4, 610])
    // 1725 × 2/6, × 3/5, × 4/4.
    expect(lathe.speeds).toMatchObject({ steps: [575, 1035, 1725], motorPulleys: [50.8, 76.2, 101.6] })
    const metric = readShop(sentShop(shopInUnits(edited, 'mm'))).lathes[0]!
    expect(metric).toEqual(lathe)
  })

  it('names the pulley list that is short, and the pulley that cannot be read', () => {
    const drive = { motorRpm: '1725', motorPulleys: '2; 3', spindlePulleys: '6' }
    const sent = (speeds: object) => readShop(sentShop(withEntry(file, 'lathes[0].speeds', speeds)))
    expect(() => sent(drive)).toThrow(/speeds.*spindlePulleys.*as many.*read 1 for 2/)
    expect(() => sent({ ...drive, spindlePulleys: '6; wide' })).toThrow(/spindlePulleys\[1\]/)
    expect(() => sent({ ...drive, motorRpm: '' })).toThrow(/motorRpm/)
    // Pulleys half entered are refused, not dropped for the steps of before.
    expect(() => sent({ steps: '575, 1035', motorRpm: '1725', spindlePulleys: '6; 5' })).toThrow(
      /motorPulleys/,
    )
  })

  it('leaves what is no number for the reader to refuse by its field', () => {
    expect(() => readShop(sentShop(withEntry(file, 'learningRate', 'slow')))).toThrow(/learningRate.*slow/)
    expect(() => readShop(sentShop(withEntry(file, 'grits', '120, fine')))).toThrow(/grits\[1\].*fine/)
  })
})

describe('shopInUnits', () => {
  it('keeps what a length typed without a unit means when the units change', () => {
    const edited = shopInUnits(withEntry(file, 'kerf', '3/32'), 'mm')
    const shop = readShop(sentShop(edited))
    expect(shop.units).toBe('mm')
    expect(shop.kerf).toBeCloseTo(2.38125, 9)
  })

  it('keeps what a temperature typed without a scale means', () => {
    const typed = withEntry(withEntry(file, 'air.temperatureC', '68'), 'air.humidityPct', '45')
    const [inches, mm] = [readShop(sentShop(typed)), readShop(sentShop(shopInUnits(typed, 'mm')))]
    expect(inches.air).toEqual({ temperatureC: 20, humidityPct: 45 })
    expect(mm.air).toEqual(inches.air)
    expect(entryAt(shopInUnits(typed, 'mm'), 'air.humidityPct')).toBe('45')
  })

  it('does not take names for lengths', () => {
    expect(
      (shopInUnits(withEntry(file, 'tools[0].name', '1'), 'mm') as unknown as typeof defaultShop).tools[0]!
        .name,
    ).toBe('1')
  })
})
