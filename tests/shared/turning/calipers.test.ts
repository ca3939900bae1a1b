import { describe, expect, it } from 'vitest'
import { stageTarget } from '../../../shared/matching/reading.ts'
import {
  type CaliperMounting,
  type CalipersInput,
  caliperSetting,
  calipersFor,
  resetsFor,
  type SizedPlace,
} from '../../../shared/turning/calipers.ts'
import { inches } from '../../../shared/units/length.ts'
import { seeded } from '../route/random-profile.ts'
import { allowedOrders, fewestByTrying, ordersOf } from './caliper-search.ts'

const places = (...diameters: number[]) => diameters.map((diameter, i) => ({ station: `s${i}`, diameter }))

describe('calipersFor', () => {
  it('sets each caliper once while there are as many as settings', () => {
    expect(calipersFor({ places: places(40, 30, 20), pieces: 12, calipers: 3 })).toMatchObject({
      perPiece: 0,
      total: 3,
    })
  })

  it('resets the surplus on every further piece', () => {
    // 5 settings, 3 calipers, 8 pieces: 5 + 7 · 2
    expect(calipersFor({ places: places(50, 40, 30, 20, 10), pieces: 8, calipers: 3 })).toMatchObject({
      perPiece: 2,
      total: 19,
    })
  })

  it('shares a setting among equal diameters, to the nanometre', () => {
    const { settings } = calipersFor({
      places: places(inches(1.25), 20, 31.75, 31.750001),
      pieces: 2,
      calipers: 2,
    })
    expect(settings.map((setting) => setting.stations)).toEqual([['s3'], ['s0', 's2'], ['s1']])
  })

  it('goes from thick to thin', () => {
    expect(calipersFor({ places: places(20, 50, 30), pieces: 2, calipers: 1 }).order).toEqual([50, 30, 20])
  })

  it('has nothing to set where nothing is sized', () => {
    expect(calipersFor({ places: [], pieces: 5, calipers: 3 })).toMatchObject({
      perPiece: 0,
      total: 0,
      settings: [],
      order: [],
    })
  })

  it('cannot be beaten by any order of cuts and any choice of caliper', () => {
    for (let settings = 1; settings <= 5; settings++)
      for (let calipers = 1; calipers <= 4; calipers++)
        for (let pieces = 1; pieces <= 3; pieces++) {
          const all = Array.from({ length: settings }, (_, i) => i)
          const { total } = calipersFor({ places: places(...all.map((i) => 10 + i)), pieces, calipers })
          expect(total, `${settings} settings, ${calipers} calipers, ${pieces} pieces`).toBe(
            fewestByTrying(ordersOf(all), pieces, calipers),
          )
        }
  })

  it('cannot be beaten where cuts wait for each other, whatever waits for what', () => {
    const random = seeded(11)
    let [searched, dearer] = [0, 0]
    for (let round = 0; round < 400; round++) {
      const { input, orders, settingOf } = randomSizing(random)
      const sequences = [...new Set(orders.map((order) => String(order.map(settingOf))))]
      const least = fewestByTrying(
        sequences.map((sequence) => sequence.split(',').map(Number)),
        input.pieces,
        input.calipers,
      )
      const found = calipersFor(input)
      expect(found.total, JSON.stringify(input)).toBe(least)
      expect(found.mountings!.map(({ proven }) => proven)).toEqual([true])
      expect(resetsFor({ ...input, mode: 'by-piece' })).toBe(least)
      const free = new Set(input.places.map(({ diameter }) => diameter)).size
      if (least > free + (input.pieces - 1) * Math.max(0, free - input.calipers)) dearer++
      searched++
    }
    // Precedence costs something in a good part of them, so that the search is tried as well.
    expect(dearer / searched).toBeGreaterThan(0.1)
  })

  it('counts long batches as trying everything does, once their pieces repeat', () => {
    const random = seeded(21)
    for (let round = 0; round < 60; round++) {
      const { input, orders, settingOf } = randomSizing(random)
      const sequences = [...new Set(orders.map((order) => String(order.map(settingOf))))].map((sequence) =>
        sequence.split(',').map(Number),
      )
      if (sequences.length > 24) continue
      for (const pieces of [17, 30])
        expect(calipersFor({ ...input, pieces }).total, JSON.stringify({ ...input, pieces })).toBe(
          fewestByTrying(sequences, pieces, input.calipers),
        )
    }
  })

  it('gives rounds that keep precedence, stand where they say and come to what they are counted as', () => {
    const random = seeded(12)
    for (let round = 0; round < 300; round++) {
      const { input } = randomSizing(random)
      const { mountings, total, count } = calipersFor(input)
      const { rounds, byRounds = total } = mountings![0]!
      expect(played(input, rounds, count), JSON.stringify(input)).toBe(byRounds)
    }
  })

  it('costs nothing to work in layers while there is a caliper for each', () => {
    // Three stretches of four settings, one after the other: with three calipers one setting of each stretch is found.
    const layered = (layers: number, each: number): SizedPlace[] =>
      Array.from({ length: layers * each }, (_, i) => ({
        station: `s${i}`,
        diameter: 100 - i,
        operation: `o${i}`,
        after: Array.from({ length: Math.floor(i / each) * each }, (_, j) => `o${j}`),
      }))
    const { mountings } = calipersFor({ places: layered(3, 4), pieces: 20, calipers: 3 })
    expect(mountings).toMatchObject([{ total: 12 + 19 * 9, proven: true }])
    // With fewer calipers than stretches it has to cost more than if nothing had to wait.
    expect(calipersFor({ places: layered(3, 4), pieces: 20, calipers: 2 }).total).toBeGreaterThan(
      12 + 19 * 10,
    )
  })

  it('makes each cut on all blanks before the next where the batch is worked so', () => {
    const input: CalipersInput = { places: places(50, 40, 30, 20, 10), pieces: 30, calipers: 2 }
    expect(resetsFor({ ...input, mode: 'by-operation' })).toBe(5)
  })

  it('sizes each mounting by itself where all blanks go through one before the next', () => {
    const some = places(50, 40, 30, 20, 10).map((place, i) => ({ ...place, operation: `o${i}` }))
    const input = { places: some, pieces: 8, calipers: 2 }
    // Two settings with two calipers, once; three settings, one reset on each of 7 further pieces.
    const found = calipersFor({ ...input, mountings: [['turn', 'o0', 'o1'], ['sand'], ['o2', 'o3', 'o4']] })
    expect(found.mountings!.map(({ total }) => total)).toEqual([2, 3 + 7])
    expect(found).toMatchObject({ total: 12, perPiece: 1, order: [50, 40, 30, 20, 10] })
    // Each operation on all blanks: each setting once.
    expect(calipersFor({ ...input, mountings: some.map(({ operation }) => [operation]) }).total).toBe(5)
  })

  it('never has fewer resets over more pieces', () => {
    const random = seeded(13)
    for (let round = 0; round < 100; round++) {
      const { input } = randomSizing(random)
      const totals = [1, 2, 3, 4, 5, 6, 7, 8, 20, 21].map((pieces) => calipersFor({ ...input, pieces }).total)
      expect(totals).toEqual([...totals].sort((a, b) => a - b))
    }
  })

  it('goes there on odd pieces and back on even ones', () => {
    const { mountings } = calipersFor({ places: places(50, 40, 30, 20, 10), pieces: 8, calipers: 3 })
    const { rounds } = mountings![0]!
    expect(rounds.map(({ first, every }) => [first, every])).toEqual([
      [1, undefined],
      [2, 2],
      [3, 2],
    ])
    expect(rounds.map(({ cuts }) => cuts.map(({ diameter }) => diameter))).toEqual([
      [50, 40, 30, 20, 10],
      [10, 20, 30, 40, 50],
      [50, 40, 30, 20, 10],
    ])
    // The first three found on a further piece are those set last on the piece before.
    expect(rounds[1]!.cuts.map(({ reset }) => reset)).toEqual([false, false, false, true, true])
  })
})

/** Cuts of a piece with random settings that wait for each other at random, and every order that allows. */
function randomSizing(random: () => number) {
  const cuts = 2 + Math.floor(random() * 5)
  const setting = Array.from({ length: cuts }, () => Math.floor(random() * cuts))
  const place = Array.from({ length: cuts }, () => random())
  const density = random()
  const before = place.map((own, i) =>
    place.flatMap((other, j) => (j !== i && other < own && random() < density ? [j] : [])),
  )
  const input = {
    places: setting.map((s, i) => ({
      station: `s${i}`,
      diameter: 60 - s,
      operation: `o${i}`,
      after: before[i]!.map((j) => `o${j}`),
    })),
    pieces: 1 + Math.floor(random() * 6),
    calipers: 1 + Math.floor(random() * 3),
  }
  return { input, orders: allowedOrders(cuts, before), settingOf: (cut: number) => setting[cut]! }
}

/** Works the batch by its rounds: resets made, every cut once on every piece and after what it waits for. */
function played({ places, pieces }: CalipersInput, rounds: CaliperMounting['rounds'], count: number): number {
  const at: number[] = []
  let resets = 0
  for (let piece = 1; piece <= pieces; piece++) {
    const own = rounds.filter(({ first, every }) =>
      every === undefined ? piece === first : piece >= first && (piece - first) % every === 0,
    )
    expect(own).toHaveLength(1)
    const done: string[] = []
    for (const { diameter, caliper, reset, stations } of own[0]!.cuts) {
      expect(caliper).toBeLessThanOrEqual(count)
      if (reset) resets++
      if (reset) at[caliper] = diameter
      expect(at[caliper]).toBe(diameter)
      for (const station of stations) {
        const { after = [] } = places.find((one) => one.station === station)!
        for (const operation of after)
          expect(done).toContain(places.find((one) => one.operation === operation)!.station)
      }
      done.push(...stations)
    }
    expect(done.sort()).toEqual(places.map(({ station }) => station).sort())
  }
  return resets
}

describe('caliperSetting', () => {
  const left = { sizing: inches(1 / 16), turned: inches(1 / 64), film: 0.1 }

  it('is the size a sized reading is held to', () => {
    for (const tenon of [false, true])
      for (const film of [false, true])
        expect(caliperSetting(25, left, { tenon, film })).toBeCloseTo(
          stageTarget(25, 'sized', left, { tenon, film }),
          9,
        )
  })

  it('is 5/64 in over for what is turned and sanded, 1/16 in for a tenon', () => {
    expect(caliperSetting(inches(1), left)).toBeCloseTo(inches(1 + 5 / 64), 9)
    expect(caliperSetting(inches(1), left, { tenon: true })).toBeCloseTo(inches(1 + 1 / 16), 9)
  })
})
