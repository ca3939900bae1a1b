import { describe, expect, it } from 'vitest'
import type { EnteredStation } from '../../web/job-file.ts'
import { movedStation, withoutStation, withStation } from '../../web/station-order.ts'

const station = (at: string, shape?: EnteredStation['then']): EnteredStation => ({
  at,
  diameter: '1',
  ...(shape && { then: shape }),
})
const leg = [station('0', 'bead'), station('1', 'cove'), station('2')]

describe('withStation', () => {
  it('takes the thickness of the neighbour and leaves the place to be entered', () => {
    expect(withStation(leg, 1)).toEqual([leg[0], { at: '', diameter: '1' }, leg[1], leg[2]])
    expect(withStation(leg, 3).at(-1)).toEqual({ at: '', diameter: '1' })
  })
})

describe('withoutStation', () => {
  it('leaves the shapes of the others as they were', () => {
    expect(withoutStation(leg, 0)).toEqual([leg[1], leg[2]])
  })

  it('drops the span that the last station closed', () => {
    expect(withoutStation(leg, 2)).toEqual([leg[0], station('1')])
  })
})

describe('movedStation', () => {
  it('changes places with its neighbour', () => {
    expect(movedStation(leg, 0, 1)).toEqual([leg[1], leg[0], leg[2]])
  })

  it('keeps the shape of the last span when another station becomes the last', () => {
    expect(movedStation(leg, 2, -1)).toEqual([leg[0], station('2', 'cove'), station('1')])
    expect(movedStation(leg, 1, 1)).toEqual([leg[0], station('2', 'cove'), station('1')])
  })
})
