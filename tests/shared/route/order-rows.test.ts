import { describe, expect, it } from 'vitest'
import type { Operation } from '../../../shared/route/operation.ts'
import {
  ceilingReasons,
  orderRows,
  placeText,
  rowCautions,
  rowMinutes,
  rowNumber,
  rowText,
} from '../../../shared/route/order-rows.ts'

const inch = (n: number) => n * 25.4

const made = (change: Partial<Operation>): Operation =>
  ({
    key: 'x',
    kind: 'bead',
    name: 'Cut the bead',
    stage: 'turning',
    pass: 1,
    where: null,
    tool: 'skew',
    minutesOnce: 0,
    minutesEach: 0.5,
    learns: true,
    after: [],
    why: '',
    ...change,
  }) as Operation

const turned = (name: string, from: number, change: Partial<Operation> = {}): Operation =>
  made({
    name,
    where: [inch(from), inch(from + 0.5)],
    rpm: 1200,
    rpmCeiling: 1663.9,
    ceilingBy: 'whip',
    restPosition: 1,
    spans: [1],
    ...change,
  })

const order: Operation[] = [
  made({ name: 'Rip strips', pass: 0, tool: 'table saw', stage: 'milling' }),
  turned('Size at the neck to 1-1/16 in', 5, {
    caliper: inch(1.0625),
    tool: 'parting tool',
    spans: undefined,
  }),
  turned('Cut the bead at 6 in', 6),
  turned('Cut the ring (bead)', 7),
  made({ name: 'Number it', tool: 'pencil', stage: 'handwork' }),
  turned('Cut the bead at 8 in', 8, { caution: 'Light cuts.' }),
  turned('Cut the bead at 9 in', 9, { caution: 'Light cuts.' }),
  turned('Cut the bead at 10 in', 10, { restPosition: 2, rpm: undefined }),
  turned('Oil it', 0, { pass: 2, stage: 'finish', tool: 'pad', restPosition: undefined, spans: undefined }),
]

describe('orderRows', () => {
  it('heads the rows where the work goes to the lathe or is mounted again', () => {
    expect(orderRows(order).flatMap(({ heading }) => heading ?? [])).toEqual([
      'Away from the lathe',
      'On the lathe, mounting 1',
      'On the lathe, mounting 2',
    ])
    expect(orderRows(order.slice(0, 4))[1]!.heading).toBe('On the lathe')
  })

  it('tells what the lathe is set to where it is set anew, and what is done by hand between leaves it set', () => {
    const rows = orderRows(order)
    expect(rows.map(({ setAnew }) => setAnew)).toEqual([
      false,
      true,
      true,
      false,
      false,
      false,
      false,
      true,
      true,
    ])
    expect(rows[2]!.setting).toBe('skew · 1200 rpm · never above 1663 rpm a · rest 1')
    expect(rows[7]!.setting).toBe('skew · no safe speed · never above 1663 rpm a · rest 2')
    expect(rows[0]!.setting).toBeUndefined()
  })

  it('gathers only what is cut alike in a row, with nothing new to mind', () => {
    const rows = orderRows(order, { gathered: true })
    expect(rows.map(rowNumber)).toEqual(['1', '2', '3–4', '5', '6–7', '8', '9'])
    expect(rows.flatMap(({ operations }) => operations)).toEqual(order)
  })

  it('never gathers across a change of tool, speed, ceiling, rest or mounting', () => {
    const pair = (change: Partial<Operation>) =>
      orderRows([turned('Cut the bead at 1 in', 1), turned('Cut the bead at 2 in', 2, change)], {
        gathered: true,
      })
    expect(pair({})).toHaveLength(1)
    for (const change of [
      { tool: 'gouge' },
      { rpm: 1100 },
      { rpmCeiling: 1500 },
      { restPosition: 2 },
      { pass: 2 },
    ])
      expect(pair(change), JSON.stringify(change)).toHaveLength(2)
    expect(pair({ caliper: 20 })).toHaveLength(2)
    expect(pair({ caution: 'New.' })).toHaveLength(2)
  })
})

describe('a row', () => {
  it('says what and where once, and with what away from the lathe', () => {
    const texts = orderRows(order).map((row) => rowText(row, 'fraction'))
    expect(texts[0]).toBe('Rip strips · table saw')
    expect(texts[1]).toBe('Size at the neck · 5 – 5-1/2 in')
    expect(texts[3]).toBe('Cut the ring (bead) · 7 – 7-1/2 in')
  })

  it('lists gathered features each with its place, and adds their minutes', () => {
    const [, , row] = orderRows(order, { gathered: true })
    expect(rowText(row!, 'fraction')).toBe('Cut the bead 6 – 6-1/2 in; ring (bead) 7 – 7-1/2 in')
    expect(rowMinutes(row!)).toBe(1)
  })

  it('gives a caution in full once, then where it stands', () => {
    const rows = orderRows(order)
    expect(rowCautions(rows[5]!, new Map())).toEqual({ fresh: ['Light cuts.'], before: [] })
    expect(rowCautions(rows[6]!, new Map([['Light cuts.', 6]]))).toEqual({ fresh: [], before: [6] })
  })
})

describe('ceilingReasons', () => {
  it('has each once', () => {
    expect(ceilingReasons(order)).toEqual(['whip'])
  })
})

describe('placeText', () => {
  it('tells a place from a stretch to the nanometre', () => {
    expect(placeText([127, 127 + 1e-8], 'fraction')).toBe('at 5 in')
    expect(placeText([127, 139.7], 'mm')).toBe('127.0 – 139.7 mm')
  })
})
