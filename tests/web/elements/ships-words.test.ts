import { describe, expect, it } from 'vitest'
import type { ShipRow, Ships } from '../../../shared/ships.ts'
import { dayText, orderSentence, shipsSentence, standing } from '../../../web/elements/ships-words.ts'

const row = (more: Partial<ShipRow>): ShipRow => ({
  id: 'j',
  state: 'draft',
  name: 'Table legs',
  due: '2026-12-04',
  minutes: 600,
  start: '2026-12-01',
  done: '2026-12-03',
  late: 0,
  ends: true,
  sure: { done: '2026-12-04', late: 0 },
  bars: [],
  waits: [],
  ...more,
})

describe('when a job ships, in words', () => {
  it('names the day of the week and, of another year, the year', () => {
    expect(dayText('2026-12-04', '2026-11-25')).toBe('Fri 4 Dec')
    expect(dayText('2027-01-08', '2026-11-25')).toBe('Fri 8 Jan 2027')
  })

  it('says by how many working days it is late', () => {
    const late = row({ done: '2026-12-08', late: 2 })
    expect(shipsSentence(late, '2026-11-30')).toBe(
      'Table legs: due Fri 4 Dec, ships Tue 8 Dec, 2 working days late.',
    )
    expect(standing(late)).toEqual({ text: '2 working days late', look: 'under' })
    expect(standing(row({ late: 1 })).text).toBe('1 working day late')
  })

  it('warns of one that is in time only while all goes as usual', () => {
    const barely = row({ sure: { done: '2026-12-07', late: 1 } })
    expect(standing(barely)).toEqual({ text: 'in time, barely', look: 'going' })
    expect(shipsSentence(barely, '2026-11-30')).toContain(
      'where all goes slowly Mon 7 Dec, 1 working day late',
    )
  })

  it('calls an order the least late only where that is shown', () => {
    const ships = {
      by: 'least',
      rows: [row({ late: 2 })],
      totalLate: 2,
      totalLateByDue: 5,
      proven: true,
    } as unknown as Ships
    expect(orderSentence(ships)).toBe(
      'In this order 2 working days late in all: no other order is late by fewer; by due dates alone it would be 5.',
    )
    expect(orderSentence({ ...ships, proven: false })).not.toContain('no other order')
    expect(orderSentence({ ...ships, by: 'hand' })).toBe('In your own order: 2 working days late in all.')
  })
})
