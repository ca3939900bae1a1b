import { describe, expect, it } from 'vitest'
import {
  dressedThickness,
  dressedWidth,
  edgeSurfacedWidth,
  softwoodThicknesses,
  softwoodWidths,
  squareGrades,
} from '../../shared/blank/dressed-sizes.ts'
import { surfacedThickness } from '../../shared/blank/nominal.ts'
import { blanksToCut, chanceOfEnough } from '../../shared/blank/spares.ts'
import { type BoardGrade, gradePromise, gradeRules, gradeYield } from '../../shared/cutting/board-grade.ts'
import { readJob } from '../../shared/job.ts'
import { defaultShop } from '../../shared/shop.ts'
import { boardFeet, boardFeetNet, boardFeetTallied, surfaceMeasure } from '../../shared/units/board-foot.ts'
import { nm, readLength } from '../../shared/units/length.ts'
import { near } from '../near.ts'
import { data, row } from './rows.ts'

const inch = 25.4
const foot = 12 * inch
/** A size as the rows write it: inches, or text. */
const mm = (size: number | string): number => readLength(typeof size === 'number' ? `${size}` : size, 'in')!
/** Inches of whole nanometres, so that a printed fraction comes out exactly. */
const inInches = (size: number): number => nm(size) / nm(inch)
const feetOf = ([thickness, width, length]: (number | string)[]): number =>
  boardFeet({ thickness: mm(thickness!), width: mm(width!), length: mm(length!) })

describe('board feet', () => {
  it.each([row('C001'), row('C002')])('$id: $what', ({ inputs, expected, tolerance }) => {
    near(inputs.sizes_in.map(feetOf), expected, tolerance)
  })

  it.each([row('C004'), row('C005'), row('C013')])('$id: $what', ({ inputs, expected, tolerance }) => {
    near(feetOf(inputs.size), expected, tolerance)
  })

  it('C006: the board measure on the steel square, in feet and twelfths', () => {
    const { inputs, expected, tolerance } = row('C006')
    near(
      inputs.w_in_l_ft.map(([width, feet]: [number, number]) => feetOf([1, width, `${feet} ft`])),
      expected,
      tolerance,
    )
  })

  it('C008: four leg blanks', () => {
    const { inputs, expected, tolerance } = row('C008')
    const [thickness, width, length] = inputs.size_in.map(mm)
    near(inputs.n * boardFeetNet({ thickness, width, length }), expected, tolerance)
  })

  it('C029: a softwood post by its nominal sizes', () => {
    near(feetOf(row('C029').inputs.nominal), row('C029').expected, row('C029').tolerance)
  })
})

describe('the tally', () => {
  it('C009: a board of 6-7/16 in by 10 ft 9 in', () => {
    const { inputs, expected, tolerance } = row('C009')
    const width = inputs.width_in * inch
    near(boardFeet({ thickness: inch, width, length: 10 * foot }), expected.raw, tolerance)
    expect(surfaceMeasure(width, inputs.length_ft * foot)).toBe(expected.sm)
  })

  it('C010: nearest whole square foot', () => {
    const { inputs, expected } = row('C010')
    expect(inputs.boards.map(([w, l]: [number, number]) => surfaceMeasure(w * inch, l * foot))).toEqual(
      expected,
    )
  })

  it('C012: surface measure × nominal thickness', () => {
    const { inputs, expected, tolerance } = row('C012')
    // 7 in × 12 ft has a surface measure of 7.
    const size = { width: inputs.sm * inch, length: 12 * foot }
    near(
      inputs.quarters.map((quarters: number) =>
        boardFeetTallied({ thickness: (quarters / 4) * inch, ...size }),
      ),
      expected,
      tolerance,
    )
  })
})

describe('surfaced thickness', () => {
  it.each([row('C014'), row('C016'), row('C017'), row('C018')])('$id: $what', ({ inputs, expected }) => {
    const rough = mm(inputs.nominal_in)
    expect(inInches(surfacedThickness(rough, 1))).toBe(expected.S1S)
    expect(inInches(surfacedThickness(rough))).toBe(expected.S2S)
  })

  it.each([row('C020'), row('C021')])('$id: $what', ({ inputs, expected }) => {
    expect(inputs.nominal_in.map((text: string) => inInches(surfacedThickness(mm(text))))).toEqual(expected)
  })

  it('C022: 10/4', () => {
    expect(surfacedThickness(mm(row('C022').inputs.nominal_in)) / inch).toBe(row('C022').expected)
  })

  it('is that of every printed row of the table', () => {
    const table = data('surfaced_thickness.json')
    for (const [sides, rows] of [
      [1, table.S1S],
      [2, table.S2S],
    ] as const) {
      for (const [rough, surfaced] of Object.entries(rows)) {
        if (surfaced !== null)
          expect(inInches(surfacedThickness(mm(rough), sides)), `${rough}, ${sides}`).toBe(surfaced)
      }
    } // prettier-ignore
  })
})

describe('softwood as it is dressed', () => {
  it('C024: thickness of dimension lumber surfaced dry', () => {
    const { inputs, expected } = row('C024')
    expect(inputs.nominal_in.map((n: number) => inInches(dressedThickness(n, 'dry')!))).toEqual(expected)
  })

  it('C025: surfaced green, a sixteenth over', () => {
    const { inputs, expected } = row('C025')
    expect(inputs.nominal_in.map((n: number) => inInches(dressedThickness(n, 'green')!))).toEqual(expected)
  })

  it('C026: widths surfaced dry', () => {
    const { inputs, expected } = row('C026')
    expect(inputs.nominal_in.map((n: number) => inInches(dressedWidth(n, 'dry')!))).toEqual(expected)
  })

  it('C028: posts', () => {
    const { inputs, expected } = row('C028')
    const sides = (inputs.nominal as string[]).map((name) => name.split('x').map(Number))
    expect(
      sides.map(([thick, wide]) => [
        inInches(dressedThickness(thick!, 'dry')!),
        inInches(dressedWidth(wide!, 'dry')!),
      ]),
    ).toEqual(expected)
  })

  it('is that of every printed row of the table', () => {
    const table = data('softwood_sizes.json')
    for (const [nominal, dry, green] of table.thickness_nominal_dry_green) {
      expect(
        [dressedThickness(nominal, 'dry'), dressedThickness(nominal, 'green')].map((t) => inInches(t!)),
      ).toEqual([dry, green])
    }
    for (const [nominal, dry, green] of table.width_nominal_dry_green) {
      expect([dressedWidth(nominal, 'dry'), dressedWidth(nominal, 'green')].map((w) => inInches(w!))).toEqual(
        [dry, green],
      )
    }
    expect(inInches(dressedThickness(1, 'dry')!)).toBe(table.boards_1in.thickness_dry)
    expect(softwoodThicknesses).toHaveLength(table.thickness_nominal_dry_green.length + 1)
    expect(softwoodWidths).toHaveLength(table.width_nominal_dry_green.length)
  })
})

describe('hardwood with its edges surfaced, and squares', () => {
  it('C040: how scant the width is', () => {
    const { expected } = row('C040')
    const scant = (nominal: number) => nominal - inInches(edgeSurfacedWidth(nominal * inch))
    expect([7.75, 8].map(scant)).toEqual(expected)
  })

  it('C041: grades of squares', () => {
    expect([...squareGrades]).toEqual(row('C041').expected)
  })
})

describe('the grades', () => {
  it.each([
    ['FAS', row('C030')],
    ['2A', row('C032')],
    ['3A', row('C033')],
    ['3B', row('C034')],
  ] as const)('%s: clear-face yield', (grade, { expected, tolerance }) => {
    near(gradeYield(grade) * 12, expected.twelfths, tolerance)
    near(gradeYield(grade) * 100, expected.percent, tolerance)
  })

  it('C036: least clear cuttings', () => {
    const { inputs, expected } = row('C036')
    for (const grade of inputs.grades as BoardGrade[])
      expect(gradeRules[grade].leastCuttings).toEqual(expected[grade])
  })

  it('C037: cutting units and cuts of a board of 8 square feet', () => {
    const { inputs, expected } = row('C037')
    for (const grade of Object.keys(expected) as BoardGrade[])
      expect(gradePromise(grade, inputs.sm)).toEqual(expected[grade])
  })

  it('C038: the extra cutting', () => {
    const { inputs, expected } = row('C038')
    for (const grade of inputs.grades as BoardGrade[]) {
      const { extra } = gradeRules[grade]
      expect([extra?.from, extra?.to, extra?.twelfths]).toEqual(expected[grade])
    }
  })

  it('are those of the grade chart', () => {
    const { grades } = data('nhla_grades.json')
    const size = ([width, feet]: [number, number]) => `${width} in x ${feet} ft`
    for (const grade of ['FAS', '1C', '2A', '3A', '3B'] as const) {
      const rule = gradeRules[grade]
      expect(rule.twelfths).toBe(grades[grade].yield_twelfths)
      expect(size(rule.leastBoard)).toBe(grades[grade].min_board)
      if (grade !== '3B') expect(rule.leastCuttings.map(size)).toEqual(grades[grade].min_cuttings)
    }
    expect(size(gradeRules.Selects.leastBoard)).toBe(grades.Selects.min_board)
    // Selects: the better face is FAS.
    expect(gradeYield('Selects')).toBe(gradeYield(grades.Selects.better_face))
    // 3B: 36 sq in at 1-1/2 in wide.
    const [[width, feet]] = gradeRules['3B'].leastCuttings as [[number, number]]
    expect(grades['3B'].min_cuttings).toEqual([`1-1/2 in wide, ${width * feet * 12} sq in`])
  })
})

describe('what the shop starts from', () => {
  it('C045: kerf and extra wood', () => {
    const { expected } = row('C045')
    expect(defaultShop.kerf / inch).toBe(expected.kerf_in)
    expect(defaultShop.extraWood * 100).toBeGreaterThanOrEqual(expected.waste_pct[0])
    expect(defaultShop.extraWood * 100).toBeLessThanOrEqual(expected.waste_pct[1])
  })

  it('C042: moisture of wood for indoor furniture', () => {
    const { kiln_dried: kilnDried, average } = row('C042').expected
    const job = readJob({
      name: 'Dowel',
      units: 'in',
      species: 'maple-sugar',
      quantity: 1,
      profile: {
        stations: [
          { at: 0, diameter: '1' },
          { at: '12', diameter: '1' },
        ],
      },
    }) // prettier-ignore
    expect(job.moisture).toBeGreaterThanOrEqual(kilnDried[0])
    expect(job.moisture).toBeLessThanOrEqual(kilnDried[1])
    expect(job.serviceMoisture).toBe(average[0])
  })
})

describe('the binomial tail behind the spares', () => {
  it('A094: P(X <= 12) of 20', () => {
    const { inputs, expected, tolerance } = row('A094')
    near(1 - chanceOfEnough(inputs.n, inputs.k + 1, 1 - inputs.p), expected, tolerance)
  })

  it('A096: P(X > 3) of 5', () => {
    const { inputs, expected, tolerance } = row('A096')
    near(chanceOfEnough(inputs.n, 4, 1 - inputs.p), expected, tolerance)
  })

  it('A097: cells of the cumulative table', () => {
    const { inputs, expected, tolerance } = row('A097')
    near(
      inputs.cells.map(([n, p, k]: [number, number, number]) => chanceOfEnough(n, k, 1 - p)),
      expected,
      tolerance,
    )
  })

  it.each([row('A098'), row('A100'), row('A101'), row('A102')])('$id: $what', ({ inputs, expected }) => {
    expect(inputs.yield.map((good: number) => blanksToCut(inputs.good, 1 - good, inputs.confidence))).toEqual(
      expected,
    )
  })

  it('gives the whole table of spares', () => {
    const { rows, confidence } = data('spares.json')
    for (const { k, n, p_at_n: chances } of rows) {
      for (const [good, count] of Object.entries(n) as [string, number][]) {
        expect(blanksToCut(k, 1 - Number(good), confidence), `${k} good at ${good}`).toBe(count)
        near(chanceOfEnough(count, k, 1 - Number(good)), chances[good], 5.1e-7, `${k} good at ${good}`)
      }
    }
  })
})
