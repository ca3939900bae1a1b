import { describe, expect, it } from 'vitest'
import { usualTerms } from '../../shared/cutting/yard-terms.ts'
import { inches } from '../../shared/units/length.ts'
import { type DefectEntry, freshDefect } from '../../web/yard-entry.ts'
import { onPile, withBoard } from '../../web/yard-tally.ts'
import {
  boardWords,
  chargeWords,
  crookWords,
  defectWords,
  enteredDefectWords,
  forWords,
  groundWords,
  headline,
  shortfallWords,
  signalWords,
  sumWords,
  underWords,
  wantedCount,
  wantedWords,
} from '../../web/yard-words.ts'
import { choice, emptyTally, legsOrder, needOf, newBoard, pulled, size } from './yard-bench.ts'

describe('words at the yard', () => {
  it('say a board as it is called across the stack', () => {
    expect(boardWords(pulled, 'fraction')).toBe('7-3/8 in × 8 ft 4 in, 2 in thick')
    expect(boardWords({ ...pulled, nominal: '8/4' }, 'fraction')).toBe('7-3/8 in × 8 ft 4 in, 8/4')
    expect(boardWords(pulled, 'mm')).toBe('187.3 mm × 2540.0 mm, 50.8 mm thick')
  })

  it('say where defects and crook lie', () => {
    const words = (from: number, to: number, across?: [number, number]) =>
      defectWords({ kind: 'knot', from, to, ...(across && { across }) }, { length: 2400, width: 150 }, 'mm')
    expect(words(410, 450)).toBe('knot 410.0 mm to 450.0 mm')
    expect(words(0, 2400, [0, 25])).toBe('knot, 25.0 mm along the near edge')
    expect(words(0, 2400, [130, 150])).toBe('knot, 20.0 mm along the far edge')
    expect(words(0, 2400, [20, 60])).toBe('knot, 20.0 mm to 60.0 mm across')
    expect(words(0, 90)).toBe('knot, 90.0 mm from the butt end')
    expect(words(2300, 2400, [0, 25])).toBe('knot, 100.0 mm from the far end, 25.0 mm along the near edge')
    expect(words(410, 450, [20, 60])).toBe('knot 410.0 mm to 450.0 mm, 20.0 mm to 60.0 mm across')
    expect(words(0, 2400)).toBe('knot all over')
    expect(crookWords(12.7, 'fraction')).toBe('crook 1/2 in over the length')
  })

  it('say a defect as far as it is keyed in', () => {
    const words = (entry: DefectEntry) => enteredDefectWords(entry, 'in')
    expect(words({ ...freshDefect('knot'), at: ['41', '', '', ''] })).toBe('knot, 41 to … in')
    expect(words({ ...freshDefect('split'), at: ['6', '', '', ''] })).toBe('split, 6 in from the butt end')
    expect(words({ ...freshDefect('sap'), across: 'last', at: ['', '', '1-1/2', ''] })).toBe(
      'sap, 1-1/2 in along the far edge',
    )
    expect(words({ ...freshDefect('pith'), at: ['', '', '3', '4'] })).toBe('pith, 3 to 4 in across')
  })

  it('say at arm’s length whether it is enough', () => {
    expect(headline({ missing: 0 })).toEqual({ state: 'enough', text: 'ENOUGH' })
    expect(headline({ missing: 5 })).toEqual({ state: 'missing', text: '5 MISSING' })
    expect(underWords(choice({}), 'USD')).toBe('keep 1 board · 10.0 bd ft · 84.20 USD')
    expect(underWords(choice({ keep: [], sum: { boards: 0, feet: 0, minor: 0 } }), 'USD')).toMatch(
      /boards on hand/,
    )
    expect(underWords(choice({ missing: 5 }), 'USD')).toBe('7 of 12 blanks · 84.20 USD')
  })

  it('say what it comes to', () => {
    expect(sumWords({ boards: 1, feet: 5, minor: 4750 }, 'USD')).toBe('1 board · 5.00 bd ft · 47.50 USD')
    expect(sumWords({ boards: 4, feet: 31.5 }, 'USD')).toBe('4 boards · 31.5 bd ft')
    const least = { boards: 1, feet: 5, minor: 7500, isLeastCharge: true } as const
    expect(sumWords(least, 'USD')).toBe('1 board · 5.00 bd ft · 75.00 USD, least charge')
    expect(underWords(choice({ sum: least }), 'USD')).toBe(
      'keep 1 board · 5.00 bd ft · 75.00 USD, least charge',
    )
    expect(underWords(choice({ missing: 5, sum: least }), 'USD')).toBe(
      '7 of 12 blanks · 75.00 USD, least charge',
    )
  })

  it('say why nothing can come from a board', () => {
    expect(shortfallWords({ why: 'thin', least: 44.45 }, 'fraction')).toBe(
      'Too thin for every blank wanted: it must be 1-3/4 in thick at least.',
    )
    expect(shortfallWords({ why: 'short', least: 720 }, 'mm')).toMatch(/must be 720.0 mm long/)
  })

  it('say what is wanted and the least board that gives one, trim included', () => {
    expect(wantedWords(needOf(), 'mm')).toEqual([
      '8 blanks 50.0 mm × 700.0 mm, from boards at least 50.0 mm thick, 54.0 mm wide, 720.0 mm long',
    ])
    // 2-17/64 in up to the next sixteenth is 2-5/16 in; with 1/8 in off each edge 2-33/64 in, 2-9/16 in.
    const blank = { key: 'blank', side: inches(2.265625), length: inches(29), count: 1 }
    const order = legsOrder({ blanks: [blank], edgeTrim: inches(1 / 8), endTrim: inches(1) })
    expect(wantedWords({ order }, 'fraction')).toEqual([
      '1 blank 2-17/64 in × 29 in, from boards at least 2-5/16 in thick, 2-9/16 in wide, 31 in long',
    ])
    expect(forWords({ needs: [needOf()] })).toBe('Bench legs · Maple, sugar')
    expect(forWords({ needs: [] })).toMatch(/only counted/)
  })

  it('say how many blanks are wanted, and that some of them are spares', () => {
    const stool = needOf({ job: 'stool', spares: 1 })
    expect(wantedCount([needOf()])).toEqual({ wanted: 8, spare: '' })
    expect(wantedCount([needOf(), stool])).toEqual({ wanted: 16, spare: 'one of them a spare' })
    expect(wantedCount([needOf({ spares: 2 }), stool]).spare).toBe('3 of them spares')
  })

  it('say plainly whether the page opens without a signal, and how old the jobs are', () => {
    expect(signalWords('ready')).toMatch(/without a signal/)
    expect(signalWords('unsupported')).toMatch(/leave this page open/)
    expect(signalWords('failed')).toMatch(/could not keep the pages.*leave this page open/)
    expect(signalWords('installing')).toMatch(/a moment/)
    expect(groundWords('2026-03-07T09:00:00Z', true)).toBe('')
    expect(groundWords('2026-03-07T09:00:00Z', false)).toMatch(/Mar 7, 2026.*out of reach/)
  })

  it('warn of the yard’s least order and least charge', () => {
    const terms = { ...usualTerms, name: 'Mill', minimumFeet: 50, minimumCharge: 100 }
    const tally = withBoard(emptyTally({ terms }), newBoard(0, { ...size, price: 47.5 }))
    // 7.375 × 8 / 12 is 5 square feet surface measure, × 2 in: 10 board feet.
    expect(chargeWords(onPile(tally), tally)).toEqual([
      'This yard sells from 50.0 bd ft on: 40.0 bd ft are wanting.',
      'Below this yard’s least charge of 100.00 EUR: 52.50 EUR come on top.',
    ])
    expect(chargeWords([], tally)).toEqual([])
  })
})
