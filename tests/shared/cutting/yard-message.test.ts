import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { yardGrades } from '../../../shared/cutting/grade-names.ts'
import { type YardInput, yardList } from '../../../shared/cutting/yard-list.ts'
import { MESSAGE_MOST, yardMessages } from '../../../shared/cutting/yard-message.ts'

const inch = 25.4
const list = (over: Partial<YardInput> = {}) =>
  yardList({
    species: 'walnut-black',
    nominal: '8/4',
    thickness: 2 * inch,
    blanks: [{ sawn: 1.875 * inch, length: 30 * inch, count: 12, layers: 1, layerThickness: 1.875 * inch }],
    dryness: 'kiln',
    sap: 'none',
    grain: 'straight',
    oneBoard: false,
    kerf: inch / 8,
    endTrim: inch,
    edgeTrim: inch / 8,
    grade: 'FAS',
    extra: 0.2,
    yardBoards: [{ width: 8 * inch, length: 120 * inch }],
    ...over,
  })
const walnut = (over: Partial<YardInput> = {}) => ({ list: list(over), wood: 'black walnut' })

describe('yardMessages', () => {
  it('asks in one message for the wood, its grade, dryness and sizes, says what it is for, and signs', () => {
    const wanted = walnut()
    const [message, ...others] = yardMessages([wanted], 'fraction', 'Hill shop')
    expect(others).toEqual([])
    expect(message).toContain(`${wanted.list.boardFeet.ask} bd ft 8/4 black walnut, FAS, KD, rough`)
    for (const words of [
      'no sap',
      'straight grain',
      '1-7/8" thick or more',
      '12 @ 1-7/8" x 30"',
      'Hill shop',
    ])
      expect(message).toContain(words)
    expect(message!.length).toBeLessThanOrEqual(MESSAGE_MOST)
  })

  it('says nothing of a width that the grade has anyhow, but of a greater one', () => {
    // FAS boards are 6 in wide at least.
    expect(yardMessages([walnut()], 'fraction', '')[0]).not.toContain('wider')
    const wide = { sawn: 6.5 * inch, length: 30 * inch, count: 2, layers: 1, layerThickness: 1.875 * inch }
    expect(yardMessages([walnut({ blanks: [wide] })], 'fraction', '')[0]).toContain('6-3/4" and wider')
  })

  it('writes mm where the shop does, never smaller than it is', () => {
    // 1-7/8 in are 47.625 mm
    expect(yardMessages([walnut()], 'mm', '')[0]).toContain('48 mm thick or more')
  })

  it('asks for softwood by pieces of its dressed sizes', () => {
    const fir = { list: list({ softwood: true }), wood: 'coast Douglas-fir' }
    expect(yardMessages([fir], 'fraction', '')[0]).toMatch(
      /\d pieces? 4x\d+ \d+' coast Douglas-fir, clear, KD/,
    )
  })

  it('puts two woods in one message where they fit, and leaves the least needful out', () => {
    const messages = yardMessages(
      [walnut(), { list: list({ nominal: '6/4', grade: '1C' }), wood: 'hard maple' }],
      'fraction',
      'Hill shop',
    )
    expect(messages).toHaveLength(1)
    expect(messages[0]).toContain('black walnut')
    expect(messages[0]).toContain('6/4 hard maple, 1 Common')
  })

  it('divides what is too long for one, and forgets no wood', () => {
    const woods = [
      'walnut',
      'hard maple',
      'white ash',
      'cherry',
      'white oak',
      'hickory',
      'beech',
      'soft maple',
    ]
    const messages = yardMessages(
      woods.map((wood) => ({ list: list(), wood })),
      'fraction',
      'Hill shop',
    )
    expect(messages.length).toBeGreaterThan(1)
    for (const wood of woods) expect(messages.filter((text) => text.includes(wood))).toHaveLength(1)
  })

  it('writes nothing where nothing is wanted', () => {
    const none = { sawn: 40, length: 700, count: 0, layers: 1, layerThickness: 40 }
    expect(yardMessages([walnut({ blanks: [none] })], 'fraction', 'Hill shop')).toEqual([])
    expect(yardMessages([], 'fraction', 'Hill shop')).toEqual([])
  })

  it('never writes more than a message holds, whatever is asked for, and asks for it all', () => {
    const wanted = fc.record({
      wood: fc.string({ minLength: 1, maxLength: 80 }),
      sawn: fc.double({ min: 20, max: 90, noNaN: true }),
      length: fc.double({ min: 200, max: 1500, noNaN: true }),
      count: fc.integer({ min: 1, max: 9999 }),
      grade: fc.constantFrom(...yardGrades),
      softwood: fc.boolean(),
      oneBoard: fc.boolean(),
      grain: fc.constantFrom('any' as const, 'rift' as const, 'straight' as const),
    })
    fc.assert(
      fc.property(
        fc.array(wanted, { minLength: 1, maxLength: 9 }),
        fc.string({ maxLength: 120 }),
        (many, from) => {
          const asked = many.map(({ wood, sawn, length, count, ...over }) => ({
            wood,
            list: list({ ...over, blanks: [{ sawn, length, count, layers: 1, layerThickness: sawn }] }),
          }))
          const messages = yardMessages(asked, 'fraction', from)
          expect(messages.every((text) => text.length <= MESSAGE_MOST)).toBe(true)
          const open = asked.filter(({ list: { boardFeet } }) => boardFeet.ask > 0)
          expect(messages.length > 0).toBe(open.length > 0)
        },
      ),
      { numRuns: 150, seed: 7 },
    )
  })
})
