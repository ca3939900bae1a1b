import { describe, expect, it } from 'vitest'
import type { ShipRow } from '../../../shared/ships.ts'
import {
  closedStretches,
  endOf,
  waitStretches,
  windowOf,
  workStretches,
  writtenDays,
} from '../../../web/elements/ships-days.ts'

// Wednesday
const today = '2026-11-25'
const row = {
  due: '2026-12-04',
  done: '2026-12-02',
  sure: { done: '2026-12-03', late: 0 },
  bars: [
    { day: '2026-11-25', minutes: 90, atLathe: false },
    { day: '2026-11-25', minutes: 90, atLathe: true },
    { day: '2026-11-25', minutes: 90, atLathe: true },
  ],
  waits: [
    { name: 'finish dries', from: '2026-11-30', to: '2026-12-02' },
    { name: 'ripped strips rest', from: '2026-11-25', to: '2026-11-26' },
  ],
} as unknown as ShipRow
const window = windowOf({ today, rows: [row] })

describe('the strip of days', () => {
  it('reaches in whole weeks past the last day that matters', () => {
    expect(window.count).toBe(14)
    expect(windowOf({ today, rows: [{ ...row, due: '2026-12-25' }] }).count).toBe(35)
  })

  it('stands work as high as it fills a day, by where it is done', () => {
    expect(workStretches(row, 360, window)).toEqual([
      { x: 0, width: 100 / 14, share: 0.25, atLathe: false },
      { x: 0, width: 100 / 14, share: 0.5, atLathe: true },
    ])
  })

  it('hatches whole days of a wait; a night alone takes none', () => {
    const [wait, ...more] = waitStretches(row, window)
    expect(more).toEqual([])
    expect(wait).toMatchObject({ name: 'finish dries' })
    expect(wait!.x).toBeCloseTo((6 / 14) * 100)
    expect(wait!.width).toBeCloseTo(100 / 14)
  })

  it('shades weekends and days the shop is closed', () => {
    const calendar = { workDays: ['mon', 'tue', 'wed', 'thu', 'fri'] as const, closed: ['2026-11-26'] }
    const days = closedStretches({ calendar: { ...calendar, workDays: [...calendar.workDays] } }, window)
    // Thursday, then two weekends
    expect(days.map(({ x }) => Math.round((x / 100) * 14))).toEqual([1, 3, 4, 10, 11])
  })

  it('puts lines at the ends of days, none where they are out of the picture', () => {
    expect(endOf('2026-11-25', window)).toBeCloseTo(100 / 14)
    expect(endOf('2027-11-25', window)).toBeUndefined()
    expect(endOf(undefined, window)).toBeUndefined()
  })

  it('writes days that stand apart', () => {
    for (const count of [14, 35, 49, 119]) {
      const written = writtenDays({ ...window, count })
      expect(written[0]).toEqual({ x: 0, day: today })
      for (const [i, { x }] of written.entries()) {
        if (i > 0) expect(x - written[i - 1]!.x).toBeGreaterThanOrEqual(20)
        expect(x).toBeLessThanOrEqual(86)
      }
    }
  })
})
