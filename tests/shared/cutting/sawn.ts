import fc from 'fast-check'
import type { Board, CutBoard, CutOrder, CutPlan } from '../../../shared/cutting/board.ts'
import { orderOf } from './orders.ts'

/** A rectangle on a board, whole nanometres: along x0 to x1, across y0 to y1. */
interface Rectangle {
  x0: number
  x1: number
  y0: number
  y1: number
}

const nano = (mm: number): number => Math.round(mm * 1e6)
const rectangle = ({
  from,
  to,
  across,
}: {
  from: number
  to: number
  across: [number, number]
}): Rectangle => ({
  x0: nano(from),
  x1: nano(to),
  y0: nano(across[0]),
  y1: nano(across[1]),
})
const gapAlong = (a: Rectangle, b: Rectangle) => Math.max(a.x0, b.x0) - Math.min(a.x1, b.x1)
const gapAcross = (a: Rectangle, b: Rectangle) => Math.max(a.y0, b.y0) - Math.min(a.y1, b.y1)

/**
 * What a sawyer would find wrong with a plan at the saw. Shares no code with the program: every plan becomes a
 * pile of rectangles, and every pair on a board is measured in the direction of the cut that parts it: across
 * between strips and along in a strip when ripped first, along between sections and across in a section when
 * crosscut first.
 */
export function faultsAtTheSaw(order: CutOrder, plan: CutPlan): string[] {
  const faults: string[] = []
  const got = new Map<string, number>()
  const used = new Map<string, number>()
  for (const cut of plan.boards) {
    const board = order.boards.find((b) => b.key === cut.key)!
    used.set(cut.key, (used.get(cut.key) ?? 0) + 1)
    faults.push(...faultsOn(order, board, cut, got))
  }
  for (const [key, n] of used) {
    const { count } = order.boards.find((b) => b.key === key)!
    if (count !== null && n > count) faults.push(`${n} of ${count} boards ${key}`)
  }
  for (const { key, count } of order.blanks) {
    const missing = plan.unmet.find((row) => row.key === key)?.count ?? 0
    if ((got.get(key) ?? 0) + missing !== count) faults.push(`blanks ${key} do not add up`)
  }
  return faults
}

function faultsOn(order: CutOrder, board: Board, cut: CutBoard, got: Map<string, number>): string[] {
  const faults: string[] = []
  const kerf = nano(order.kerf)
  const ripped = cut.process === 'rip-first'
  if (order.process !== 'either' && order.process !== cut.process) faults.push('the other process')
  const parts = (ripped ? cut.strips : cut.sections) ?? []
  const all = parts.flatMap((part, p) =>
    part.blanks.map((placed) => ({ p, key: placed.key, ...rectangle(placed) })),
  )
  for (const placed of all) {
    const blank = order.blanks.find((b) => b.key === placed.key)!
    got.set(blank.key, (got.get(blank.key) ?? 0) + 1)
    if (placed.x1 - placed.x0 !== nano(blank.length) || placed.y1 - placed.y0 !== nano(blank.side))
      faults.push('not the size of its blank')
    if (nano(blank.thickness ?? blank.side) > nano(board.thickness)) faults.push('too thin a board')
    const [end, edge] = [nano(order.endTrim), nano(order.edgeTrim)]
    if (placed.x0 < end || placed.x1 > nano(board.length) - end) faults.push('in the end trim')
    if (placed.y0 < edge || placed.y1 > nano(board.width) - edge) faults.push('in the edge trim')
    for (const { from, to, across = [-1e6, 1e6] as [number, number] } of board.defects ?? []) {
      const defect = rectangle({ from, to, across })
      if (
        defect.x1 > defect.x0 &&
        defect.y1 > defect.y0 &&
        gapAlong(placed, defect) < 0 &&
        gapAcross(placed, defect) < 0
      )
        faults.push('on a defect')
    }
  }
  all.forEach((a, i) => {
    for (const b of all.slice(i + 1)) {
      const along = (a.p === b.p) === ripped
      if ((along ? gapAlong(a, b) : gapAcross(a, b)) < kerf)
        faults.push(`less than a kerf between ${a.key} and ${b.key}`)
      if (ripped && a.p === b.p && (a.y0 !== b.y0 || a.y1 !== b.y1)) faults.push('a strip of two widths')
    }
  })
  // A section is one cut through the board: as long as its longest blank, and all its blanks lie in it.
  for (const p of ripped ? [] : parts.keys()) {
    const own = all.filter((blank) => blank.p === p)
    const { from, to } = cut.sections![p]!
    if (Math.max(...own.map(({ x0, x1 }) => x1 - x0)) !== nano(to) - nano(from))
      faults.push('a section too long')
    if (own.some(({ x0, x1 }) => x0 < nano(from) || x1 > nano(to))) faults.push('out of its section')
    for (const other of cut.sections!.slice(p + 1)) {
      const gap = Math.max(nano(from), nano(other.from)) - Math.min(nano(to), nano(other.to))
      if (gap < kerf) faults.push('less than a kerf between sections')
    }
  }
  return faults
}

/**
 * Small orders on small boards with defects anywhere, whole mm (defects and kerf on half mm when `halves`), so
 * that close fits and lines shared by chance are common.
 */
export function closeOrders({ halves = true, blanksMax = 3 } = {}): fc.Arbitrary<CutOrder> {
  const whole = (min: number, max: number) => fc.integer({ min, max })
  const half = (min: number, max: number) =>
    halves ? whole(2 * min, 2 * max).map((n) => n / 2) : whole(min, max)
  const oneBoard = fc.record({ width: whole(6, 14), length: whole(10, 24) }).chain(({ width, length }) =>
    fc.record({
      width: fc.constant(width),
      length: fc.constant(length),
      thickness: fc.constantFrom(5, 7, 8, 8, 9),
      count: fc.constantFrom(1, 2, null),
      price: whole(1, 30),
      defects: fc.array(
        fc
          .record({
            from: half(-2, length),
            long: half(0, 6),
            low: half(-1, width - 1),
            wide: half(0, 4),
            kind: whole(0, 5),
          })
          .map(({ from, long, low, wide, kind }) =>
            kind === 0
              ? { from, to: from + long }
              : {
                  from: kind === 1 ? -1 : from,
                  to: kind === 1 ? length + 1 : from + long,
                  across: [low, low + wide] as [number, number],
                },
          ),
        { maxLength: 3 },
      ),
    }),
  )
  return fc
    .record({
      kerf: half(1, 3),
      endTrim: whole(0, 2),
      edgeTrim: fc.constantFrom(0, 0, 1),
      process: fc.constantFrom('either' as const, 'rip-first' as const, 'crosscut-first' as const),
      blanks: fc.array(fc.record({ side: whole(3, 7), length: whole(5, 14), count: whole(1, blanksMax) }), {
        minLength: 1,
        maxLength: 3,
      }),
      boards: fc.array(oneBoard, { minLength: 1, maxLength: 2 }),
    })
    .map((raw) =>
      orderOf({
        ...raw,
        units: 'mm',
        blanks: raw.blanks.map((b, i) => ({ key: `k${i}`, ...b })),
        boards: raw.boards.map((b, i) => ({ key: `b${i}`, ...b })),
      }),
    )
}
