import { describe, expect, it } from 'vitest'
import { spansOf } from '../../../shared/profile/profile.ts'
import { diametersOf } from '../../../shared/profile/radius.ts'
import { featuresOf, pommelShouldersOf, stepFacesOf, zonesOf } from '../../../shared/route/features.ts'
import { inches } from '../../../shared/units/length.ts'
import { type InchStation, inchProfile, leg } from './route-inputs.ts'

const spans = (...stations: InchStation[]) => spansOf(inchProfile(stations))
const bead = { rise: inches(1 / 8) }

describe('featuresOf', () => {
  it('makes one of a row of equal beads', () => {
    const row = featuresOf(
      spans([0, 1, 'bead', bead], [0.5, 1, 'bead', bead], [1, 1, 'bead', bead], [1.5, 1]),
    )
    expect(row.map(({ kind, spans }) => [kind, spans.length])).toEqual([['bead', 3]])
  })

  it('makes one of a row of beads that differ, or have a fillet between', () => {
    const wider = spans([0, 1, 'bead', bead], [0.5, 1, 'bead', bead], [1.25, 1])
    const higher = spans([0, 1, 'bead', bead], [0.5, 1, 'bead', { rise: inches(3 / 16) }], [1, 1])
    const filleted = spans([0, 1, 'bead', bead], [0.5, 1], [0.6, 1, 'bead', bead], [1.1, 1])
    for (const list of [wider, higher, filleted])
      expect(featuresOf(list).filter(({ kind }) => kind === 'bead')).toHaveLength(1)
  })

  it('keeps beads apart on other diameters, or with more than a fillet between', () => {
    const thicker = spans([0, 1, 'bead', bead], [0.5, 1], [0.5, 1.5, 'bead', bead], [1, 1.5])
    const far = spans([0, 1, 'bead', bead], [0.5, 1], [0.8, 1, 'bead', bead], [1.3, 1])
    const sloping = spans([0, 1, 'bead', bead], [0.5, 1], [0.6, 1.25, 'bead', bead], [1.1, 1.25])
    for (const list of [thicker, far, sloping])
      expect(featuresOf(list).filter(({ kind }) => kind === 'bead')).toHaveLength(2)
  })

  it('makes one of a run of curves, and ends it at a step', () => {
    const run = featuresOf(spans([0, 1, 'curve'], [2, 2, 'curve'], [4, 1], [4, 1.5, 'curve'], [6, 1]))
    expect(run.map(({ spans }) => spans.map((span) => span.index))).toEqual([[0, 1], [3]])
  })

  it('tells straights, tapers and tenons apart', () => {
    const kinds = featuresOf(spans([0, 1, 'straight', { tenon: true }], [1, 1], [1, 2], [3, 2], [6, 1.5]))
    expect(kinds.map(({ kind }) => kind)).toEqual(['tenon', 'straight', 'taper'])
  })
})

describe('zonesOf', () => {
  it('ends a turned stretch at each part left square', () => {
    const list = spans([0, 1], [3, 1, 'square', { side: inches(2) }], [5, 1.5], [9, 1.75])
    const zones = zonesOf(list, (span) => diametersOf(span).greatest)
    expect(zones.map(({ from, to, maxDiameter }) => [from, to, maxDiameter])).toEqual([
      [0, inches(3), inches(1)],
      [inches(5), inches(9), inches(1.75)],
    ])
  })
})

describe('stepFacesOf', () => {
  it('finds the step between two diameters, but none at a shoulder', () => {
    const [step, ...more] = stepFacesOf(
      spans([0, 1], [2, 1], [2, 1.5], [4, 1.5, 'square', { side: inches(2) }], [6, undefined]),
    )
    expect(step).toMatchObject({ index: 2, at: inches(2), smaller: inches(1), larger: inches(1.5) })
    expect(more).toEqual([])
  })
})

describe('pommelShouldersOf', () => {
  it('finds the one shoulder of a leg that is square to its top', () => {
    expect(pommelShouldersOf(spansOf(leg()))).toMatchObject([
      { index: 3, at: inches(12), form: 'square', round: 'foot', side: inches(2.25) },
    ])
  })

  it('finds both of a square between two rounds, each as it is shaped', () => {
    const list = spans(
      [0, 1],
      [3, 1, 'square', { side: inches(2), shoulder: ['rounded', 'square'] }],
      [6, 1],
      [9, 1],
    )
    expect(pommelShouldersOf(list).map(({ index, form, round }) => [index, form, round])).toEqual([
      [1, 'rounded', 'foot'],
      [2, 'square', 'top'],
    ])
  })
})
