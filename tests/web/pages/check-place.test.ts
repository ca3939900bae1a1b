import { describe, expect, it } from 'vitest'
import { type CheckPlace, placeAfter, settledPlace } from '../../../web/pages/check-place.ts'

const stations = ['foot', 'belly', 'neck']
const pieces = ['p1', 'p2']
const at = (piece: string, station: string, then: CheckPlace['then']): CheckPlace => ({
  stage: 'sanded',
  then,
  piece,
  station,
})

/** Every place in the order they are read, from the first on. */
function walk(then: CheckPlace['then'], steps: number): string[] {
  const places = [at('p1', 'foot', then)]
  for (let i = 0; i < steps; i++) places.push(placeAfter(places.at(-1)!, stations, pieces))
  return places.map(({ piece, station }) => `${piece} ${station}`)
}

describe('placeAfter', () => {
  it('goes along the stations of a piece and then to the next piece', () => {
    expect(walk('station', 5)).toEqual(['p1 foot', 'p1 belly', 'p1 neck', 'p2 foot', 'p2 belly', 'p2 neck'])
  })

  it('goes along the pieces at a station and then to the next station', () => {
    expect(walk('piece', 5)).toEqual(['p1 foot', 'p2 foot', 'p1 belly', 'p2 belly', 'p1 neck', 'p2 neck'])
  })

  it('stays on the last piece, or on the last station', () => {
    expect(placeAfter(at('p2', 'neck', 'station'), stations, pieces)).toMatchObject({ piece: 'p2' })
    expect(placeAfter(at('p2', 'neck', 'piece'), stations, pieces)).toMatchObject({ station: 'neck' })
  })
})

describe('settledPlace', () => {
  it('keeps a place that is there and begins at the first where it is not', () => {
    expect(settledPlace(at('p2', 'neck', 'piece'), stations, pieces)).toMatchObject({
      piece: 'p2',
      station: 'neck',
    })
    expect(settledPlace(at('p9', 'knee', 'piece'), stations, pieces)).toMatchObject({
      piece: 'p1',
      station: 'foot',
    })
    expect(settledPlace(at('p9', 'knee', 'piece'), [], [])).toMatchObject({ piece: '', station: '' })
  })
})
