import { boardFeet, boardFeetNet, boardFeetTallied } from '../units/board-foot.ts'
import { nm } from '../units/length.ts'
import { minorDigits, minorOf } from '../units/money.ts'
import type { Board, CutBlank, CutBoard, CutOrder, CutPlan, Offcut, PlacedBlank } from './board.ts'

/**
 * Everything that is wrong with a cutting plan, in sentences; empty when it can be sawn as it stands. Shares
 * nothing with the search but the words: sizes, kerfs, trims, defects, strips and sections, counts, board feet
 * and cost are all reckoned anew from the order.
 */
export function cutBreaches(order: CutOrder, plan: CutPlan): string[] {
  const breaches: string[] = []
  const blanks = new Map(order.blanks.map((b) => [b.key, b]))
  const boards = new Map(order.boards.map((b) => [b.key, b]))
  for (const cut of plan.boards) {
    const name = `${cut.key} copy ${cut.copy}`
    const board = boards.get(cut.key)
    if (!board) breaches.push(`${name}: the order has no such board.`)
    else breaches.push(...boardBreaches(order, board, cut, blanks).map((text) => `${name}: ${text}`))
  }
  breaches.push(
    ...copyBreaches(boards, plan),
    ...countBreaches(order, plan),
    ...figureBreaches(order, plan, boards, blanks),
  )
  return breaches
}

const placedOn = (cut: CutBoard): PlacedBlank[] =>
  [...(cut.strips ?? []), ...(cut.sections ?? [])].flatMap((part) => part.blanks)

const mm = (nanometres: number): string => `${nanometres / 1e6} mm`

/** What is lost at each end and edge of a board, nanometres: nothing where it is sawn already. */
const trimOf = (order: CutOrder, { trimmed }: Board) => ({
  endTrim: trimmed ? 0 : nm(order.endTrim),
  edgeTrim: trimmed ? 0 : nm(order.edgeTrim),
})

function boardBreaches(
  order: CutOrder,
  board: Board,
  cut: CutBoard,
  blanks: Map<string, CutBlank>,
): string[] {
  const out: string[] = []
  for (const size of ['width', 'length', 'thickness'] as const) {
    if (nm(cut[size]) !== nm(board[size])) out.push(`its ${size} is not the board's.`)
  }
  if (order.process !== 'either' && cut.process !== order.process)
    out.push(`it is cut ${cut.process}, the order says ${order.process}.`)
  if (
    (cut.process === 'rip-first') !== (cut.strips !== undefined) ||
    (cut.process === 'rip-first') !== (cut.sections === undefined)
  ) {
    out.push('strips go with rip-first and sections with crosscut-first, never both.')
  }
  if (placedOn(cut).length === 0) out.push('it is bought but nothing is cut from it.')
  for (const placed of placedOn(cut)) out.push(...blankBreaches(order, board, placed, blanks.get(placed.key)))
  out.push(...stripBreaches(order, cut), ...sectionBreaches(order, cut), ...offcutBreaches(order, board, cut))
  return out
}

function blankBreaches(
  order: CutOrder,
  board: Board,
  placed: PlacedBlank,
  blank: CutBlank | undefined,
): string[] {
  const [from, to, low, high] = [nm(placed.from), nm(placed.to), nm(placed.across[0]), nm(placed.across[1])]
  const name = `blank ${placed.key} at ${mm(from)}`
  if (!blank) return [`${name}: the order has no such blank.`]
  const out: string[] = []
  if (to - from !== nm(blank.length))
    out.push(`${name} is ${mm(to - from)} long instead of ${mm(nm(blank.length))}.`)
  if (high - low !== nm(blank.side))
    out.push(`${name} is ${mm(high - low)} wide instead of ${mm(nm(blank.side))}.`)
  if (nm(blank.thickness ?? blank.side) > nm(board.thickness)) out.push(`${name} is thicker than the board.`)
  const { endTrim, edgeTrim } = trimOf(order, board)
  if (from < endTrim || to > nm(board.length) - endTrim) out.push(`${name} lies in the end trim.`)
  if (low < edgeTrim || high > nm(board.width) - edgeTrim) out.push(`${name} lies in the edge trim.`)
  for (const defect of board.defects ?? []) {
    const [d0, d1] = [nm(defect.from), nm(defect.to)]
    const [a0, a1] = defect.across
      ? [nm(defect.across[0]), nm(defect.across[1])]
      : [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY]
    if (d1 > d0 && a1 > a0 && from < d1 && to > d0 && low < a1 && high > a0)
      out.push(`${name} lies on the defect at ${mm(d0)}.`)
  }
  return out
}

interface Stretch {
  from: number
  to: number
  name: string
}

/** Neighbours in one direction that are closer than a kerf, whatever lies between; and those out of turn. */
function rowBreaches(parts: Stretch[], kerf: number): string[] {
  const sorted = [...parts].sort((a, b) => a.from - b.from || a.to - b.to)
  const close = sorted.flatMap((part, i) => {
    const before = sorted[i - 1]
    return before && !(part.from - before.to >= kerf)
      ? [
          `${before.name} and ${part.name} lie ${mm(part.from - before.to)} apart, less than the kerf of ${mm(kerf)}.`,
        ]
      : []
  })
  const turned = parts.flatMap((part, i) => {
    const before = parts[i - 1]
    return before && part.from < before.from
      ? [`${part.name} is listed after ${before.name}, but lies before it.`]
      : []
  })
  return [...close, ...turned]
}

function stripBreaches(order: CutOrder, cut: CutBoard): string[] {
  const strips = cut.strips ?? []
  const out = rowBreaches(
    strips.map((s, i) => ({ from: nm(s.across[0]), to: nm(s.across[1]), name: `strip ${i + 1}` })),
    nm(order.kerf),
  )
  strips.forEach((strip, i) => {
    if (nm(strip.across[1]) - nm(strip.across[0]) !== nm(strip.side))
      out.push(`strip ${i + 1} is not as wide as its side.`)
    if (strip.blanks.length === 0) out.push(`strip ${i + 1} is empty.`)
    for (const blank of strip.blanks) {
      if (nm(blank.across[0]) !== nm(strip.across[0]) || nm(blank.across[1]) !== nm(strip.across[1])) {
        out.push(`blank ${blank.key} is not exactly as wide as strip ${i + 1}.`)
      }
    }
    out.push(
      ...rowBreaches(
        strip.blanks.map((b) => ({
          from: nm(b.from),
          to: nm(b.to),
          name: `blank ${b.key} in strip ${i + 1}`,
        })),
        nm(order.kerf),
      ),
    )
  })
  return out
}

function sectionBreaches(order: CutOrder, cut: CutBoard): string[] {
  const sections = cut.sections ?? []
  const out = rowBreaches(
    sections.map((s, i) => ({ from: nm(s.from), to: nm(s.to), name: `section ${i + 1}` })),
    nm(order.kerf),
  )
  sections.forEach((section, i) => {
    if (section.blanks.length === 0) out.push(`section ${i + 1} is empty.`)
    const longest = Math.max(0, ...section.blanks.map((b) => nm(b.to) - nm(b.from)))
    if (longest !== nm(section.to) - nm(section.from))
      out.push(`section ${i + 1} is not as long as its longest blank.`)
    for (const blank of section.blanks) {
      if (nm(blank.from) < nm(section.from) || nm(blank.to) > nm(section.to))
        out.push(`blank ${blank.key} reaches out of section ${i + 1}.`)
    }
    out.push(
      ...rowBreaches(
        section.blanks.map((b) => ({
          from: nm(b.across[0]),
          to: nm(b.across[1]),
          name: `blank ${b.key} in section ${i + 1}`,
        })),
        nm(order.kerf),
      ),
    )
  })
  return out
}

interface Box {
  from: number
  to: number
  low: number
  high: number
}

const boxOf = (o: Offcut | PlacedBlank): Box => ({
  from: nm(o.from),
  to: nm(o.to),
  low: nm(o.across[0]),
  high: nm(o.across[1]),
})

const meet = (a: Box, b: Box, clear: number): boolean =>
  a.from < b.to + clear && b.from < a.to + clear && a.low < b.high + clear && b.low < a.high + clear

function offcutBreaches(order: CutOrder, board: Board, cut: CutBoard): string[] {
  const out: string[] = []
  const kerf = nm(order.kerf)
  const { endTrim, edgeTrim } = trimOf(order, board)
  const blanks = placedOn(cut).map(boxOf)
  const offcuts = cut.offcuts.map(boxOf)
  const defects = (board.defects ?? []).map((d): Box => boxOf({ ...d, across: d.across ?? [0, board.width] }))
  offcuts.forEach((box, i) => {
    const name = `offcut ${i + 1}`
    if (![box.from, box.to, box.low, box.high].every(Number.isFinite)) out.push(`${name} lies nowhere.`)
    if (box.to - box.from < nm(order.minOffcut)) out.push(`${name} is shorter than an offcut worth keeping.`)
    if (
      box.from < endTrim ||
      box.to > nm(board.length) - endTrim ||
      box.low < edgeTrim ||
      box.high > nm(board.width) - edgeTrim
    )
      out.push(`${name} lies in the trim or off the board.`)
    if (blanks.some((blank) => meet(box, blank, kerf))) out.push(`${name} lies within a kerf of a blank.`)
    if (defects.some((defect) => defect.to > defect.from && defect.high > defect.low && meet(box, defect, 0)))
      out.push(`${name} holds a defect.`)
    if (offcuts.some((other, j) => j < i && meet(box, other, kerf)))
      out.push(`${name} lies within a kerf of another, or overlaps it.`)
  })
  return out
}

function copyBreaches(boards: Map<string, Board>, plan: CutPlan): string[] {
  const seen = new Set<string>()
  return plan.boards.flatMap(({ key, copy }) => {
    const out: string[] = []
    const count = boards.get(key)?.count ?? Number.POSITIVE_INFINITY
    if (!(Number.isInteger(copy) && copy >= 1 && copy <= count))
      out.push(`${key} copy ${copy}: there are ${count} of it.`)
    if (seen.has(`${copy} ${key}`)) out.push(`${key} copy ${copy} is cut twice.`)
    seen.add(`${copy} ${key}`)
    return out
  })
}

function countBreaches(order: CutOrder, plan: CutPlan): string[] {
  const cut = new Map<string, number>()
  for (const { key } of plan.boards.flatMap(placedOn)) cut.set(key, (cut.get(key) ?? 0) + 1)
  const unmet = new Map(plan.unmet.map((row) => [row.key, row.count]))
  const asked = new Set(order.blanks.map((b) => b.key))
  const out: string[] = []
  if (unmet.size !== plan.unmet.length) out.push('A blank stands in unmet twice.')
  for (const { key, count } of plan.unmet) {
    if (!asked.has(key)) out.push(`Unmet names ${key}, which the order has not.`)
    if (!(Number.isInteger(count) && count > 0)) out.push(`Unmet of ${key} is ${count}.`)
  }
  for (const { key, count } of order.blanks) {
    const [made, missing] = [cut.get(key) ?? 0, unmet.get(key) ?? 0]
    if (made > count) out.push(`${key}: ${made} are cut, ${count} are asked for.`)
    if (made + missing !== count) out.push(`${key}: ${made} cut and ${missing} missing do not make ${count}.`)
  }
  return out
}

const near = (a: number, b: number): boolean =>
  Math.abs(a - b) <= 1e-9 * Math.max(1, Math.abs(a), Math.abs(b))

function figureBreaches(
  order: CutOrder,
  plan: CutPlan,
  boards: Map<string, Board>,
  blanks: Map<string, CutBlank>,
): string[] {
  const out: string[] = []
  const hold = (what: string, read: number, right: number) => {
    if (!near(read, right)) out.push(`${what} is ${read} instead of ${right}.`)
  }
  const scale = 10 ** minorDigits(order.currency)
  const toBuy = order.boards.filter((b) => !b.onHand)
  const priced = toBuy.some((b) => b.price !== undefined || b.pricePerBoardFoot !== undefined)
  let [bought, tallied, minor, inBlanks, onHand, worth] = [0, 0, 0, 0, 0, 0]
  for (const cut of plan.boards) {
    const board = boards.get(cut.key)
    if (!board) continue
    hold(`${cut.key}: board feet`, cut.boardFeet, boardFeet(board))
    hold(`${cut.key}: tallied board feet`, cut.boardFeetTallied, boardFeetTallied(board))
    if (!!cut.onHand !== !!board.onHand) out.push(`${cut.key} is on hand in the order or in the plan only.`)
    const feet = order.priceBy === 'tally' && !board.onHand ? boardFeetTallied(board) : boardFeet(board)
    const cents = minorOf(
      board.price ?? (board.pricePerBoardFoot ?? (board.onHand ? Number.NaN : 0)) * feet,
      order.currency,
    )
    if (board.onHand) {
      onHand += boardFeet(board)
      worth += cents
    } else {
      bought += boardFeet(board)
      tallied += boardFeetTallied(board)
      if (priced) minor += cents
    }
    if (priced) hold(`${cut.key}: cost`, cut.cost ?? Number.NaN, board.onHand ? 0 : cents / scale)
  }
  for (const { key } of plan.boards.flatMap(placedOn)) {
    const blank = blanks.get(key)
    if (blank)
      inBlanks += boardFeetNet({
        thickness: blank.thickness ?? blank.side,
        width: blank.side,
        length: blank.length,
      })
  }
  hold('Board feet bought', plan.boardFeetBought, bought)
  hold('Board feet tallied', plan.boardFeetTallied, tallied)
  hold('Board feet in blanks', plan.boardFeetInBlanks, inBlanks)
  hold('Board feet on hand', plan.boardFeetOnHand ?? 0, onHand)
  if (plan.worthOnHand !== undefined) hold('Worth of the boards on hand', plan.worthOnHand, worth / scale)
  hold('Yield', plan.yield, bought + onHand > 0 ? inBlanks / (bought + onHand) : 0)
  const counted = toBuy.length === 0 ? onHand : order.priceBy === 'tally' ? tallied : bought
  hold('Cost', plan.cost, priced ? minor / scale : counted)
  if (plan.lowerBound > plan.cost && !near(plan.lowerBound, plan.cost))
    out.push('The bound lies above the cost.')
  if (plan.proven && !near(plan.lowerBound, plan.cost))
    out.push('It is called proven, but the bound does not meet the cost.')
  if (![plan.cost, plan.lowerBound, plan.yield, plan.seconds].every((n) => Number.isFinite(n) && n >= 0))
    out.push('A figure is no number.')
  return out
}
