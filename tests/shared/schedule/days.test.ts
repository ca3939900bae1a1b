import { describe, expect, it } from 'vitest'
import {
  dayNumber,
  isoDay,
  weekDay,
  workDayFrom,
  workDaysLate,
  worksOn,
} from '../../../shared/schedule/days.ts'

const week = { workDays: ['mon', 'tue', 'wed', 'thu', 'fri'] as const, closed: ['2026-12-25'] }

describe('the days of a shop', () => {
  it('counts days as the calendar of the platform does, over four centuries', () => {
    for (let number = -60_000; number < 100_000; number += 97) {
      const date = new Date(number * 86_400_000)
      expect(isoDay(number)).toBe(date.toISOString().slice(0, 10))
      expect(dayNumber(isoDay(number))).toBe(number)
      expect(weekDay(number)).toBe(['sun', 'mon', 'tue', 'wed', 'thu', 'fri', 'sat'][date.getUTCDay()])
    }
  })

  it('works on its days of the week but those it is closed', () => {
    const works = worksOn(week)
    expect(
      ['2026-12-24', '2026-12-25', '2026-12-26', '2026-12-27', '2026-12-28'].map((d) => works(dayNumber(d))),
    ).toEqual([true, false, false, false, true])
    expect(isoDay(workDayFrom(works, dayNumber('2026-12-25')))).toBe('2026-12-28')
  })

  it('counts a job late by the days the shop works after its date', () => {
    const works = worksOn(week)
    const late = (due: string, done: string) => workDaysLate(works, dayNumber(due), dayNumber(done))
    expect(late('2026-12-04', '2026-12-08')).toBe(2)
    expect(late('2026-12-24', '2026-12-28')).toBe(1)
    expect(late('2026-12-08', '2026-12-04')).toBe(0)
    // done on a closed day after a date that was a Friday
    expect(late('2026-12-04', '2026-12-05')).toBe(1)
  })
})
