import { describe, expect, it } from 'vitest'
import { Problem } from '../../shared/problem.ts'
import { defaultShop, readShop } from '../../shared/shop.ts'

const weighing = { mass: 412, volume: 600_000, moisture: 8, at: '2026-11-20' }
const lot = (more: object = {}) => ({
  name: 'Autumn walnut',
  species: 'walnut-black',
  weighings: [weighing],
  ...more,
})

const refusals = (lots: unknown): [path: string, message: string][] => {
  try {
    readShop({ lots })
  } catch (error) {
    if (error instanceof Problem) return error.errors.map(({ path, message }) => [path, message])
    throw error
  }
  throw new Error('it was read')
}

describe('the lots of a shop', () => {
  it('are none until some are entered', () => {
    expect(readShop({}).lots).toEqual([])
    expect(defaultShop.lots).toEqual([])
  })

  it('are read with their weighings', () => {
    expect(readShop({ lots: [lot(), { name: 'New oak', species: 'oak-white' }] }).lots).toEqual([
      lot(),
      { name: 'New oak', species: 'oak-white', weighings: [] },
    ])
    const timed = lot({ weighings: [{ ...weighing, at: '2026-11-20T09:30:00+01:00' }] })
    expect(readShop({ lots: [timed] }).lots).toEqual([timed])
  })

  it.each([
    [[lot({ weighings: [{ ...weighing, mass: 0 }] })], 'lots[0].weighings[0].mass', /more than 0; read 0/],
    [
      [lot({ weighings: [{ ...weighing, mass: '412 g' }] })],
      'lots[0].weighings[0].mass',
      /number; read "412 g"/,
    ],
    [
      [lot({ weighings: [{ ...weighing, volume: -3 }] })],
      'lots[0].weighings[0].volume',
      /more than 0; read -3/,
    ],
    [
      [lot({ weighings: [{ ...weighing, mass: 1_000_001 }] })],
      'lots[0].weighings[0].mass',
      /at most 1000000; read 1000001/,
    ],
    [
      [lot({ weighings: [{ ...weighing, volume: 2.1e10 }] })],
      'lots[0].weighings[0].volume',
      /at most 20000000000; read 21000000000/,
    ],
    [[lot({ weighings: [{ ...weighing, moisture: 201 }] })], 'lots[0].weighings[0].moisture', /at most 200/],
    [
      [lot({ weighings: [{ ...weighing, at: 'noon' }] })],
      'lots[0].weighings[0].at',
      /day or a moment.*"noon"/,
    ],
    [[lot({ weighings: [{ mass: 3, moisture: 8 }] })], 'lots[0].weighings[0].volume', /missing/],
    [[lot({ name: ' ' })], 'lots[0].name', /must not be empty/],
    [[lot({ species: undefined })], 'lots[0].species', /missing/],
    [{}, 'lots', /list/],
  ])('refuse %j at %s', (lots, path, says) => {
    const found = refusals(lots)
    expect(found.map(([at]) => at)).toContain(path)
    expect(found.find(([at]) => at === path)![1]).toMatch(says)
  })

  it('go by one name each', () => {
    const [[path, message]] = refusals([lot(), lot({ name: 'Oak' }), lot({ weighings: [] })]) as [
      [string, string],
    ]
    expect(path).toBe('lots[2].name')
    expect(message).toMatch(/must be unique; lot 0 has the name "Autumn walnut" too/)
  })

  it('are refused by their number before they are looked at', () => {
    expect(refusals(Array.from({ length: 201 }, () => null))).toEqual([
      ['lots', expect.stringMatching(/at most 200 entries; read a list of 201/)],
    ])
    const weighings = Array.from({ length: 501 }, () => null)
    expect(refusals([lot({ weighings })])).toEqual([
      ['lots[0].weighings', expect.stringMatching(/at most 500 entries; read a list of 501/)],
    ])
  })
})
