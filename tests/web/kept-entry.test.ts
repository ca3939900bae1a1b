import { afterEach, describe, expect, it, vi } from 'vitest'
import { keepEntry, keptEntry } from '../../web/kept-entry.ts'

const shelf = (at: Record<string, string>, room = true) =>
  vi.stubGlobal('localStorage', {
    getItem: (place: string) => at[place] ?? null,
    setItem: (place: string, text: string) => {
      if (!room) throw new Error('no room')
      at[place] = text
    },
  })

afterEach(() => vi.unstubAllGlobals())

describe('what is typed and in no file yet', () => {
  it('is there again after a reload', () => {
    shelf({})
    keepEntry('scales', { mass: '20 oz' })
    expect(keptEntry('scales', { mass: '', lot: 'barn' })).toEqual({ mass: '20 oz', lot: 'barn' })
  })

  it('is as at first where nothing is kept, or what is kept cannot be read', () => {
    shelf({ torn: '{"mass":', odd: '7' })
    for (const place of ['none', 'torn', 'odd']) expect(keptEntry(place, { mass: '' })).toEqual({ mass: '' })
  })

  it('does no harm on a device without room', () => {
    shelf({}, false)
    expect(() => keepEntry('scales', { mass: '20 oz' })).not.toThrow()
    expect(keptEntry('scales', { mass: '' })).toEqual({ mass: '' })
  })
})
