import { beforeEach, describe, expect, it } from 'vitest'
import { ranOf, Stopwatches, writtenMinutes } from '../../web/stopwatches.ts'

let shelf: Map<string, string>
let now: number
const storage = () => ({
  getItem: (key: string) => shelf.get(key) ?? null,
  setItem: (key: string, value: string) => void shelf.set(key, value),
  removeItem: (key: string) => void shelf.delete(key),
})
const watches = () => new Stopwatches(storage(), () => now)
beforeEach(() => {
  shelf = new Map()
  now = 1_000_000
})
const minute = 60_000

describe('writtenMinutes', () => {
  it.each([
    ['', undefined],
    ['  ', undefined],
    ['4.5', 4.5],
    ['4,5', 4.5],
    ['.5', 0.5],
    ['3.', 3],
    ['4:30', 4.5],
    ['0', 0],
    ['10000', 10_000],
  ])('reads %j', (text, minutes) => expect(writtenMinutes(text)).toBe(minutes))

  it.each(['-1', 'ten', '4:75', '1:2:3', '10001', '1e3', '4 5', 'NaN', 'Infinity'])(
    'does not take %j for minutes',
    (text) => expect(writtenMinutes(text)).toBeNaN(),
  )
})

describe('a stopwatch', () => {
  it('runs, pauses, goes on and stops with all its time in minutes', () => {
    const all = watches()
    all.start('a', 'piece 1')
    now += 2 * minute
    all.pause('a')
    now += 60 * minute
    all.start('a', 'piece 1')
    now += 1.5 * minute
    all.stop('a')
    now += minute
    expect(all.of('a')).toMatchObject({ minutes: '3.5' })
  })

  it('goes on running while the page is gone or the battery is dead', () => {
    watches().start('a', 'piece 1')
    now += 7 * minute
    const after = watches()
    expect(ranOf(after.of('a')!, now)).toBe(7 * minute)
    after.stop('a')
    expect(watches().of('a')!.minutes).toBe('7')
  })

  it('pauses for another, says which, and keeps its time', () => {
    const all = watches()
    all.start('a', 'piece 1')
    now += minute
    expect(all.start('b', 'piece 2')?.name).toBe('piece 1')
    now += 5 * minute
    expect(ranOf(all.of('a')!, now)).toBe(minute)
    expect(all.running()?.key).toBe('b')
  })

  it('goes on from the minutes that are written, so that a press of Stop too early loses nothing', () => {
    const all = watches()
    all.start('a', 'piece 1')
    now += 3 * minute
    all.stop('a')
    all.write('a', 'piece 1', '3.5')
    all.start('a', 'piece 1')
    now += minute
    all.stop('a')
    expect(all.of('a')!.minutes).toBe('4.5')
  })

  it('keeps what is written by hand until it is logged', () => {
    watches().write('a', 'piece 1', '4,5')
    expect(watches().of('a')!.minutes).toBe('4,5')
    watches().clear('a')
    expect(watches().of('a')).toBeUndefined()
    watches().write('a', 'piece 1', '4')
    watches().write('a', 'piece 1', '')
    expect(shelf.size).toBe(0)
  })

  it('lasts as long as the page where nothing can be kept', () => {
    const refusing = {
      getItem: () => null,
      setItem: () => {
        throw new Error('full')
      },
      removeItem: () => {},
    }
    const all = new Stopwatches(refusing, () => now)
    all.start('a', 'piece 1')
    now += minute
    expect(ranOf(all.of('a')!, now)).toBe(minute)
  })

  it('begins anew over what cannot be read', () => {
    shelf.set('setwright.stopwatches', '{broken')
    const all = watches()
    all.start('a', 'piece 1')
    expect(all.running()?.key).toBe('a')
  })

  it('does not run backwards when the clock of the device is set back', () => {
    const all = watches()
    all.start('a', 'piece 1')
    now -= 5 * minute
    expect(ranOf(all.of('a')!, now)).toBe(0)
  })
})
