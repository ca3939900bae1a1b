import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, describe, expect, it } from 'vitest'
import type { CutPlan } from '../../shared/cutting/board.ts'
import { cutBreaches } from '../../shared/cutting/check.ts'
import { readCutOrder } from '../../shared/cutting/order.ts'
import { missingOf } from '../shared/cutting/orders.ts'
import { cli } from './cli/run.ts'
import { withServer } from './serving.ts'

const { post } = withServer()
const here = mkdtempSync(join(tmpdir(), 'setwright-cut-'))
afterAll(() => rmSync(here, { recursive: true, force: true }))

/** On a busy machine reading and checking the largest orders takes its time. */
const PATIENCE = { timeout: 120_000 }

// Small boards, in millimetres: only how sizes stand to each other counts here.
const base = { units: 'mm', kerf: 0.125, endTrim: 1, edgeTrim: 0, seconds: 0.2 }
const leg = { key: 'leg', side: 2, length: 20, count: 3 }
const plank = { key: 'B', width: 6, length: 96, thickness: 2, count: 4 }

/** Boards of many widths and lengths, each one of its kind. */
const yard = (count: number) =>
  Array.from({ length: count }, (_, i) => ({
    key: `B${i}`,
    width: 4 + (i % 33) / 4,
    length: 72 + ((i * 7) % 145) / 2,
    thickness: 2,
    count: 1,
    price: 2 + (i % 19),
  }))

/** What the command line and the interface say of an order. */
async function bothSay(order: object) {
  writeFileSync(join(here, 'order.json'), JSON.stringify(order))
  const { code, out, err } = await cli(['cut', 'order.json', '--json'], here)
  const { status, body } = await post('/api/cut', order)
  return { code, err, status, body, plan: code === 0 ? (JSON.parse(out) as CutPlan) : undefined }
}

describe('an order that cannot be read names the field, what was read and what is allowed', () => {
  it.each([
    ['a side of zero', { blanks: [{ ...leg, side: 0 }] }, 'blanks[0].side', /between 0\.01 .*read 0/],
    ['a negative length', { blanks: [{ ...leg, length: -20 }] }, 'blanks[0].length', /read -20/],
    ['a negative board', { boards: [{ ...plank, width: -6 }] }, 'boards[0].width', /read -6/],
    ['a negative price', { boards: [{ ...plank, price: -1 }] }, 'boards[0].price', /-1/],
    ['a negative kerf', { kerf: -0.125 }, 'kerf', /read -0\.125/],
    ['a kerf wider than any blade', { kerf: 200 }, 'kerf', /between 0 and 25\.4 mm; read 200/],
    ['half a blank', { blanks: [{ ...leg, count: 1.5 }] }, 'blanks[0].count', /1\.5/],
    [
      'a price on some boards',
      {
        boards: [
          { ...plank, price: 3 },
          { ...plank, key: 'C' },
        ],
      },
      'boards[1]',
      /every board has a price or none/,
    ],
    [
      'too many blanks',
      {
        blanks: [
          { ...leg, count: 99_999 },
          { ...leg, key: 'x', count: 2 },
        ],
      },
      'blanks',
      /read 100001/,
    ],
    ['too many boards', { boards: yard(10_001) }, 'boards', /10000|10 000|10,000/],
  ])('%s', PATIENCE, async (_, change, path, message) => {
    const { code, err, status, body } = await bothSay({ ...base, blanks: [leg], boards: [plank], ...change })
    expect(code).toBe(2)
    expect(err).toContain(path)
    expect(err).toMatch(message)
    expect(status).toBe(422)
    expect(body.errors.map((breach: { path: string }) => breach.path)).toContain(path)
  })
})

describe('what cannot be cut is said to be missing', () => {
  it.each([
    ['from boards narrower than any blank', { boards: [{ ...plank, width: 1.9 }] }, 3],
    ['from boards that the trim uses up', { endTrim: 48, boards: [plank] }, 3],
    [
      'from a board with a kerf as wide as itself',
      {
        kerf: 1,
        endTrim: 0,
        blanks: [{ ...leg, side: 0.9, length: 5 }],
        boards: [{ ...plank, width: 0.9, length: 12, count: 1 }],
      },
      1,
    ],
    ['from no boards', { boards: [] }, 3],
    ['from boards thinner than the blanks', { boards: [{ ...plank, thickness: 1.9 }] }, 3],
  ])('%s', PATIENCE, async (_, change, missing) => {
    const order = Object.assign({ ...base, blanks: [leg], boards: [plank] }, change)
    const { plan, status, body } = await bothSay(order)
    expect([status, missingOf(plan!), missingOf(body)]).toEqual([200, missing, missing])
  })
})

describe('the largest orders are answered', () => {
  const sizes = (count: number, each: number) =>
    Array.from({ length: count }, (_, i) => ({
      key: `b${i}`,
      side: 1.25 + (i % 7) / 8,
      length: 6 + ((i * 13) % 2700) / 80,
      count: each,
    }))

  it.each([
    ['10,000 boards', { blanks: sizes(5, 40), boards: yard(10_000) }],
    ['10,000 boards and 10,000 sizes', { blanks: sizes(10_000, 1), boards: yard(10_000) }],
    ['100,000 blanks', { blanks: sizes(5, 20_000), boards: yard(5).map((b) => ({ ...b, count: null })) }],
    [
      '100,000 blanks of 10,000 sizes',
      { blanks: sizes(10_000, 10), boards: yard(5).map((b) => ({ ...b, count: null })) },
    ],
    [
      'boards with 200 defects',
      {
        blanks: sizes(5, 40),
        boards: yard(50).map((b) => ({
          ...b,
          defects: Array.from({ length: 200 }, (_, i) => ({
            from: (i * 37) % 140,
            to: ((i * 37) % 140) + 0.1,
            across: [i % 5, (i % 5) + 0.2],
          })),
        })),
      },
    ],
  ])('%s', PATIENCE, async (_, change) => {
    const order = { ...base, ...change }
    const { status, body } = await post('/api/cut', order)
    expect(status).toBe(200)
    expect(cutBreaches(readCutOrder(order), body)).toEqual([])
    expect(body.lowerBound).toBeLessThanOrEqual(body.cost)
  })
})
