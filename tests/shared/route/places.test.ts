import { describe, expect, it } from 'vitest'
import { placesOf } from '../../../shared/route/places.ts'
import { routeFor } from '../../../shared/route/route.ts'
import { calipersFor } from '../../../shared/turning/calipers.ts'
import { inches } from '../../../shared/units/length.ts'
import { type InchStation, inchProfile, leg, routeInput } from './route-inputs.ts'

const slender = { at: inches(18), criticalRpm: 900, rest: 'needed' as const }
/** Three straights of different thickness along 36 in, one for each position of a 12 in rest, all checked. */
const balusterInput = () => {
  const diameters = [1.5, 1.25, 1]
  const profile = inchProfile([
    ...diameters.flatMap((d, i): InchStation[] => [
      [12 * i, d],
      [12 * (i + 1), d],
    ]),
  ])
  const checks = diameters.map((d, i) => ({
    key: `c${i}`,
    at: inches(12 * i + 6),
    kind: 'diameter' as const,
    target: inches(d),
  }))
  return routeInput(profile, { whip: slender, checks })
}

describe('placesOf', () => {
  it('lets places of one mounting be sized in any order once all is roughed', () => {
    const { places } = routeFor(routeInput(leg()))
    const sizing = places.filter(({ operation }) => operation!.startsWith('size-'))
    for (const { after } of sizing) expect(after!.filter((key) => key.startsWith('size-'))).toEqual([])
  })

  it('keeps the stretches of slender work in turn, from the tail on', () => {
    const { places, operations } = routeFor(balusterInput())
    const stretchOf = (key: string) => operations.find((o) => o.key === key)!.stretch
    const sized = places.filter(({ operation }) => stretchOf(operation!) !== undefined)
    expect(new Set(sized.map(({ operation }) => stretchOf(operation!))).size).toBe(3)
    for (const one of sized)
      for (const other of sized) {
        const sooner = stretchOf(other.operation!)! < stretchOf(one.operation!)!
        expect(one.after!.includes(other.operation!)).toBe(sooner)
      }
  })

  it('counts nothing that lies outside of the part of the order it is given', () => {
    const { operations } = routeFor(balusterInput())
    const half = operations.slice(Math.floor(operations.length / 2))
    const keys = new Set(half.map(({ key }) => key))
    for (const { after } of placesOf(half)) expect(after!.filter((key) => !keys.has(key))).toEqual([])
  })

  it('names the places in the order of work, which the first piece then follows', () => {
    const { places, operations } = routeFor(balusterInput())
    const inOrder = operations.flatMap(({ caliper }) => (caliper === undefined ? [] : [caliper]))
    expect(places.map(({ diameter }) => diameter)).toEqual(inOrder)
    expect(calipersFor({ places, pieces: 5, calipers: 2 }).order).toEqual([...new Set(inOrder)])
  })

  it('tells what each setting is made up of', () => {
    const { places } = routeFor(routeInput(leg(), { finish: 'film' }))
    expect(places.length).toBeGreaterThan(0)
    for (const { diameter, sum } of places) {
      const { target, film, turned, sizing } = sum!
      expect(target + film + turned + sizing).toBeCloseTo(diameter, 9)
      expect([film, turned, sizing]).toEqual([-0.1, inches(1 / 64), inches(1 / 16)])
    }
  })
})
