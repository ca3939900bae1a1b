import { describe, expect, it } from 'vitest'
import { READABLE_LENGTHS } from '../../shared/units/length.ts'
import { inPercent, inUnitsFirst, jobField, shopField } from '../../web/field-words.ts'

describe('jobField', () => {
  it('names a field as its label does, stations from the foot', () => {
    expect(jobField('profile.stations[3].rise')).toBe('Station 3, rise')
    expect(jobField('profile.stations[0].at')).toBe('Station 0, place')
    expect(jobField('instrument.jawWidth')).toBe('Width of the caliper jaws')
    expect(jobField('allowances.endWaste')).toBe('Waste at a turned end')
  })

  it('names what is said of hands, lots and stairs', () => {
    expect(jobField('mirrored')).toBe('In mirrored pairs')
    expect(jobField('lot')).toBe('Lot of wood')
    expect(jobField('stair.run')).toBe('Length of the run')
    expect(jobField('stair.between[1]')).toBe('Upper rail')
    expect(jobField('stair.between')).toBe('Between the rails')
  })

  it('names the size of a joint by its kind', () => {
    expect(jobField('joints[0].size[0]', ['mortise'])).toBe('Joint 1, width')
    expect(jobField('joints[0].size[1]', ['mortise'])).toBe('Joint 1, length along the part')
    expect(jobField('joints[1].size', ['mortise', 'hole'])).toBe('Joint 2, diameter')
  })
})

describe('shopField', () => {
  it('names settings, rows of lists and entries typed in one field', () => {
    expect(shopField('kerf')).toBe('Kerf of the saw')
    expect(shopField('lathes[1].speeds')).toBe('Lathe 2, speeds')
    expect(shopField('lathes[0].speeds.most')).toBe('Lathe 1, fastest speed')
    expect(shopField('grits[2]')).toBe('Grits, in order')
    expect(shopField('lots[1].species')).toBe('Lot 2, wood')
    expect(shopField('tools[0].lives[1].rim')).toBe('Tool 1, counted life 2, speed at the rim')
  })
})

describe('inUnitsFirst', () => {
  // 25.4 mm to the inch, exactly (international inch, 1959).
  it('puts inches before millimetres for who writes in inches', () => {
    expect(inUnitsFirst('is 63.5 mm (2.5 in) wide', 'in')).toBe('is 2.5 in (63.5 mm) wide')
    expect(inUnitsFirst('must be between 25.4 and 254 mm; read 12', 'in')).toBe(
      'must be between 1 in (25.4 mm) and 10 in (254 mm); read 12',
    )
  })

  it('keeps the sign of what lies below nothing', () => {
    expect(inUnitsFirst('read "-3" (-76.2 mm)', 'in')).toBe('read "-3" (-3 in (-76.2 mm))')
    expect(inUnitsFirst('is -12.7 mm (-0.5 in) off', 'in')).toBe('is -0.5 in (-12.7 mm) off')
  })

  it('leaves what was typed, and messages for who writes in millimetres', () => {
    expect(inUnitsFirst('read "38 mm"', 'in')).toBe('read "38 mm"')
    const readable = `allowed: ${READABLE_LENGTHS}; read "x"`
    expect(inUnitsFirst(readable, 'mm')).toBe(readable)
    expect(inUnitsFirst('is 63.5 mm (2.5 in) wide', 'mm')).toBe('is 63.5 mm (2.5 in) wide')
  })
})

describe('what can be typed for a length', () => {
  it('does not call a bare figure mm where inches are written', () => {
    const told = inUnitsFirst(`allowed: ${READABLE_LENGTHS}; read "x"`, 'in')
    expect(told).toContain('allowed: a length such as 2 3/8 in')
    expect(told).toContain('60.3 mm, 6 cm; read "x"')
    expect(told).not.toContain('number of mm')
  })
})

describe('inPercent', () => {
  it('tells limits and what was read as they are entered, and leaves text', () => {
    expect(inPercent('must be at most 0.999; read 1.2')).toBe('must be at most 99.9 %; read 120 %')
    expect(inPercent('must be a number; read "ab1"')).toBe('must be a number; read "ab1"')
  })
})
