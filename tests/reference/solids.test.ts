import { describe, expect, it } from 'vitest'
import { overlap, roundSection, sectionArea, squareSection } from '../../shared/profile/section.ts'
import { solidOf } from '../../shared/profile/solid.ts'
import { near } from '../near.ts'
import { oneSpan, profileOf, station } from '../shared/profile/build.ts'
import { type Row, row } from './rows.ts'

const volume = (...part: Parameters<typeof oneSpan>): number => solidOf(oneSpan(...part)).volume
const says = ({ id, what, source }: Row): string => `${id} ${what} (${source})`

/** A sphere's middle slice between two parallel cuts as far on either side, as a bead on its chord. */
const zone = (R: number, reach: number): number => {
  const chord = 2 * Math.sqrt(R * R - reach * reach)
  return volume('bead', 2 * reach, chord, chord, { rise: R - chord / 2 })
}

/** A hemisphere, as an ovolo that falls to the axis in its own radius. */
const hemisphere = (R: number): number => volume('ovolo', R, 2 * R, 0)

/** A ring: what a half-round bead holds more than a half-round cove on the same cylinder. */
function ring(r: number, R: number): { V: number; A: number } {
  const [bead, cove] = [
    solidOf(oneSpan('bead', 2 * r, 2 * R, 2 * R)),
    solidOf(oneSpan('cove', 2 * r, 2 * R, 2 * R)),
  ]
  return { V: bead.volume - cove.volume, A: bead.surfaceTurned + cove.surfaceTurned }
}

/** Stations of a paraboloid of that height and base, as a curve through 120 places that crowd towards the tip. */
function paraboloid(h: number, d: number, least = 0) {
  const n = 120
  const places = Array.from({ length: n + 1 }, (_, i) => {
    const diameter = least + ((d - least) * i) / n
    return { at: h * ((diameter * diameter - least * least) / (d * d - least * least)), diameter }
  })
  return profileOf(
    ...places.map(({ at, diameter }, i) => station(at, diameter, i < n ? 'curve' : 'straight')),
  )
}

/** One row: its sentence as the test's name, its value against what the program makes of it. */
function holds(reference: Row, actual: (inputs: any) => unknown, expected = reference.expected): void {
  it(says(reference), () => near(actual(reference.inputs), expected, reference.tolerance, reference.id))
}

describe('sections', () => {
  const D030 = row('D030')
  it('turns corners off, and so has no use for the octagon that row D030 also prints', () => {
    expect(Object.keys(D030.expected)).toEqual(['diagonal', 'waste_square', 'waste_octagon'])
  })

  const { diagonal, waste_square } = D030.expected
  holds(
    D030,
    ({ s }) => {
      const [square, round] = [squareSection(s), roundSection(s / 2)]
      const corner = roundSection(square.half * Math.SQRT2)
      // the circle through the corners holds the whole square and no smaller one does
      expect(sectionArea(overlap(square, corner))).toBe(sectionArea(square))
      return { diagonal: 2 * corner.radius, waste_square: 1 - sectionArea(round) / sectionArea(square) }
    },
    { diagonal, waste_square },
  )
})

describe('cylinders and cones', () => {
  holds(row('D038'), ({ d, h }) => {
    const solid = solidOf(oneSpan('straight', h, d, d))
    return { V: solid.volume, S: solid.surfaceTurned }
  })
  holds(
    row('D040'),
    ({ h, D, t }) => volume('straight', h, D, D) - volume('straight', h, D - 2 * t, D - 2 * t),
  )
  holds(row('D041'), ({ D, d, h }) => volume('straight', h, D, d))
  // radius 3, height 10: what is left of the cone when the upper half of its height is cut away, over πr²h
  holds(row('D053'), () => volume('straight', 5, 6, 3) / (Math.PI * 9 * 10))
})

describe('spheres and their parts', () => {
  holds(row('D042'), ({ d }) => {
    const solid = solidOf(oneSpan('bead', d, 0, 0))
    return { V: solid.volume, A: solid.surface }
  })
  holds(row('D044'), ({ r, h }) => {
    const chord = 2 * Math.sqrt(r * r - (r - h) ** 2)
    const cap = hemisphere(r) - zone(r, r - h) / 2
    return { V: volume('straight', r - h, 0, chord) + cap, c: chord }
  })
  holds(row('D045'), ({ h, c }) => {
    const R = (c * c) / (8 * h) + h / 2
    return { V: hemisphere(R) - zone(R, R - h) / 2, r: R }
  })
  holds(row('D046'), ({ c1, c2, h }) => {
    // the two cuts at y1 and y2 of one sphere: y1² − y2² = (c2² − c1²)/4 and y1 − y2 = h
    const sum = (c2 * c2 - c1 * c1) / 4 / h
    const [y1, y2] = [(sum + h) / 2, (sum - h) / 2]
    const R = Math.hypot(c1 / 2, y1)
    return (zone(R, y1) - Math.sign(y2) * zone(R, Math.abs(y2))) / 2
  })
  holds(row('D054'), ({ r }) => [hemisphere(r), zone(r, 1) / 2])
})

describe('paraboloids, as a curve through many stations', () => {
  holds(row('D048'), ({ h, d }) => solidOf(paraboloid(h, d)).volume)
  holds(row('D049'), ({ D, d, h }) => solidOf(paraboloid(h, D, d)).volume)
})

describe('rings and coves, by the theorem of Pappus', () => {
  holds(row('D050'), ({ d, D }) => ring(d / 2, D / 2))
  holds(row('D052'), ({ r_R }) => r_R.map(([r, R]: [number, number]) => ring(r, R).V))
  holds(row('D056'), ({ cove_r_mm, d_mm }) => volume('cove', 2 * cove_r_mm, d_mm, d_mm))
})
