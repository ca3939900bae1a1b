import { describe, expect, it } from 'vitest'
import { typedDiameter } from '../../web/sheet-keys.ts'

describe('typedDiameter', () => {
  it('takes a letter behind a figure as the shape of the span above', () => {
    expect(typedDiameter('1 1/4b', 'in')).toEqual({ text: '1 1/4', shape: 'bead' })
    expect(typedDiameter('32,5c', 'mm')).toEqual({ text: '32,5', shape: 'cove' })
    expect(typedDiameter('q', 'in')).toEqual({ text: '', shape: 'square' })
    expect(typedDiameter('2V', 'in')).toEqual({ text: '2', shape: 'cavetto' })
  })

  it('leaves units as they are typed, letter by letter', () => {
    for (const written of ['2 in', '2 inches', '44 mm', '1 ft', '1 foot', '2"']) {
      for (let n = 1; n <= written.length; n++) {
        expect(typedDiameter(written.slice(0, n), 'in'), written).toEqual({ text: written.slice(0, n) })
      }
    }
  })

  it('takes the cove back when the c turns out to begin cm', () => {
    expect(typedDiameter('6c', 'mm')).toEqual({ text: '6', shape: 'cove' })
    expect(typedDiameter('6m', 'mm', { key: 'c', text: '6' })).toEqual({ text: '6 cm', takenBack: true })
    expect(typedDiameter('6m', 'mm')).toEqual({ text: '6m' })
  })

  it('opens a second diameter by x and sets the check mark by k', () => {
    expect(typedDiameter('1 1/2x', 'in')).toEqual({ text: '1 1/2', second: true })
    expect(typedDiameter('1 1/2k', 'in')).toEqual({ text: '1 1/2', check: true })
  })

  it('leaves a letter behind half a figure to be put right', () => {
    expect(typedDiameter('1 1/b', 'in')).toEqual({ text: '1 1/b' })
  })
})
