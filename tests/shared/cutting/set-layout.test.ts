import { describe, expect, it } from 'vitest'
import { quickCut } from '../../../shared/cutting/quick.ts'
import { type SetPiece, type StandingLeg, setLayout, setPieces } from '../../../shared/cutting/set-layout.ts'
import { cuttingSheet } from '../../../shared/cutting/sheet.ts'
import type { PlacedJoint } from '../../../shared/profile/joint-reach.ts'
import { blanks, board, inch, orderOf } from './orders.ts'

const leg = (number: number, right: number, up: number): SetPiece => ({ number, heart: { right, up } })
/** Strips left and right of a heart that lies 70 below their middles. */
const four = [leg(1, 90, -70), leg(2, 40, -70), leg(3, -40, -70), leg(4, -90, -70)]
const named = (legs: StandingLeg[], row: string, side: string) =>
  legs.find((one) => one.row === row && one.side === side)!
const unit = ({ heart }: StandingLeg) =>
  [heart!.right, heart!.back].map((mm) => mm / Math.hypot(heart!.right, heart!.back)) as [number, number]
const mortise = (face: 'A' | 'B' | 'C' | 'D'): PlacedJoint => ({
  kind: 'mortise',
  at: 40,
  face,
  size: [10, 50],
  depth: 25,
})

describe('setLayout', () => {
  it('pairs the legs whose rings mirror each other', () => {
    const [stand] = setLayout(four, { legs: 4, joints: [] })
    const pairs = ['front', 'back'].map((row) =>
      ['left', 'right'].map((side) => named(stand!.legs, row, side).piece).sort((a, b) => a - b),
    )
    expect(pairs).toContainEqual([1, 4])
    expect(pairs).toContainEqual([2, 3])
    for (const row of ['front', 'back']) {
      const [left, right] = [named(stand!.legs, row, 'left'), named(stand!.legs, row, 'right')]
      // A mirror between them turns the one heart’s direction into the other’s: what lies right lies left.
      const [[x, y], [u, v]] = [unit(left), unit(right)]
      expect(x).toBeCloseTo(-u, 9)
      expect(y).toBeCloseTo(v, 9)
      expect(left.rings).toBeCloseTo(right.rings!, 9)
    }
  })

  it('turns every heart to the inside of the stand', () => {
    const [stand] = setLayout(four, { legs: 4, joints: [] })
    for (const leg of stand!.legs) {
      const [x, y] = unit(leg)
      const { row, side } = leg
      expect(Math.sign(x)).toBe(side === 'left' ? 1 : -1)
      expect(Math.sign(y)).toBe(row === 'front' ? 1 : -1)
    }
  })

  it('turns the straighter grain to the front and the back: rings nearer to square there', () => {
    const [stand] = setLayout(four, { legs: 4, joints: [] })
    for (const { rings } of stand!.legs) expect(rings).toBeGreaterThanOrEqual(45)
    // 90 aside and 70 below: the ring lies at atan(90/70) to one pair of faces, the rest of 90° to the other.
    const angles = stand!.legs.map(({ rings }) => Math.round(rings! * 100) / 100).sort((a, b) => a - b)
    expect(angles).toEqual([52.13, 52.13, 60.26, 60.26])
  })

  it('letters the faces left about from A, whichever way the blank lay', () => {
    const [stand] = setLayout(four, { legs: 4, joints: [] })
    for (const { faces, lettered, piece, heart } of stand!.legs) {
      expect([faces.front, faces.right, faces.back, faces.left]).toEqual(['A', 'B', 'C', 'D'])
      const about = [lettered['near edge'], lettered.face, lettered['far edge'], lettered.underside].join('')
      expect('ABCDABCD').toContain(about)
      // In the board the heart lay below; the face that was the underside looks most nearly to where it lies now.
      const from = four.find(({ number }) => number === piece)!.heart!
      const lay = Math.atan2(from.up, from.right) * (180 / Math.PI)
      const turned = Math.round((Math.atan2(heart!.back, heart!.right) * (180 / Math.PI) - lay) / 90)
      const stood = { A: 270, B: 0, C: 90, D: 180 }[lettered.underside]
      expect((((stood - 270 - 90 * turned) % 360) + 360) % 360).toBe(0)
    }
  })

  it('turns one of a pair end for end where all come from one side of the heart', () => {
    const same = [leg(1, 130, -60), leg(2, 130, -60)]
    const [stand] = setLayout(same, { legs: 2, joints: [] })
    const [left, right] = [named(stand!.legs, 'front', 'left'), named(stand!.legs, 'front', 'right')]
    expect(left.reversed).not.toBe(right.reversed)
    expect(left.rings).toBeCloseTo(right.rings!, 9)
    const [[x, y], [u, v]] = [unit(left), unit(right)]
    expect([x, y]).toEqual([expect.closeTo(-u, 9), expect.closeTo(v, 9)])
    for (const one of stand!.legs) {
      // With the foot at the far end the same walk about the blank meets the letters in turn the other way.
      const about = [
        one.lettered['near edge'],
        one.lettered.face,
        one.lettered['far edge'],
        one.lettered.underside,
      ]
      expect(one.reversed ? 'DCBADCBA' : 'ABCDABCD').toContain(about.join(''))
    }
  })

  it('leaves rift legs as they grew: they look alike on every face', () => {
    const [stand] = setLayout([leg(1, 70, -75), leg(2, 70, -66)], { legs: 2, joints: [] })
    expect(stand!.legs.map(({ reversed }) => reversed)).toEqual([false, false])
  })

  it('turns faces with mortises to the inside', () => {
    const [stand] = setLayout(four, { legs: 4, joints: [mortise('A'), mortise('B')] })
    for (const { row, side, faces } of stand!.legs) {
      const inner = [faces[side === 'left' ? 'right' : 'left'], faces[row === 'front' ? 'back' : 'front']]
      expect(inner.sort()).toEqual(['A', 'B'])
    }
  })

  it('stands hands of mirrored pieces across from each other', () => {
    const pieces = four.map((one): SetPiece => ({ ...one, hand: one.number % 2 === 1 ? 'left' : 'right' }))
    const [stand] = setLayout(pieces, { legs: 4, joints: [mortise('B'), mortise('C')] })
    const handAt = (row: string, side: string) => named(stand!.legs, row, side).piece % 2
    expect([
      handAt('front', 'left'),
      handAt('front', 'right'),
      handAt('back', 'left'),
      handAt('back', 'right'),
    ]).toEqual([1, 0, 0, 1])
    for (const { row, side, faces, piece } of stand!.legs) {
      const inner = [faces[side === 'left' ? 'right' : 'left'], faces[row === 'front' ? 'back' : 'front']]
      // The right hand has B and D changed about.
      expect(inner.sort()).toEqual(piece % 2 === 1 ? ['B', 'C'] : ['C', 'D'])
    }
  })

  it('stands an odd leg by itself and any number of stands', () => {
    const stands = setLayout([...four, leg(5, 10, -70), leg(6, -10, -70)], { legs: 3, joints: [] })
    expect(stands.map(({ legs }) => legs.map(({ row, side }) => `${row} ${side}`))).toEqual([
      ['front left', 'front right', 'back middle'],
      ['front left', 'front right', 'back middle'],
    ])
    expect(setLayout([leg(1, 1, 1)], { legs: 1, joints: [] })[0]!.legs).toHaveLength(1)
  })

  it('places glue-ups without a word on rings', () => {
    const [stand] = setLayout([{ number: 1 }, { number: 2 }], { legs: 2, joints: [] })
    expect(stand!.legs.map(({ rings }) => rings)).toEqual([undefined, undefined])
  })
})

describe('setPieces', () => {
  const order = (heart?: { across: number; below: number }) =>
    orderOf({ blanks: [blanks('leg', 2, 20, 3)], boards: [board('a', 6.25, 20, heart ? { heart } : {})] })
  const piecesOf = (of: ReturnType<typeof order>) =>
    setPieces(cuttingSheet(quickCut(of), [{ key: 'leg', layers: 1, pieces: 1 }]), of.boards, { quantity: 2 })

  it('sees the heart from the top: farther across lies to the left', () => {
    const heart = { across: 3.125 * inch, below: 5 * inch }
    const [first, second] = piecesOf(order(heart))
    // The first strip lies at 0 to 2 in, nearer to the edge measured from than the heart: that is to its left.
    expect(first!.heart!.right).toBeCloseTo(-2.125 * inch, 6)
    expect(first!.heart!.up).toBeCloseTo(-4 * inch, 6)
    expect(second!.heart!.right).toBeCloseTo(0, 6)
    expect(first!.assumed).toBeUndefined()
  })

  it('leaves spares out, and says where the heart is only taken to lie', () => {
    const pieces = piecesOf(order())
    expect(pieces.map(({ number, assumed }) => [number, assumed])).toEqual([
      [1, true],
      [2, true],
    ])
  })
})
