import type { Board, CutOrder } from '../../../shared/cutting/board.ts'

/**
 * The best plan of a tiny order by trying everything: every share-out of single blanks to single boards, every
 * way to part a board's blanks into strips or sections, every order of those along and across. Shares no code
 * with the search; whole-width and whole-length defects only. Nanometres inside.
 */
const nano = (mm: number): number => Math.round(mm * 1e6)

interface Unit {
  side: number
  length: number
  thickness: number
}

function permutations<T>(all: T[]): T[][] {
  if (all.length <= 1) return [all]
  return all.flatMap((one, i) =>
    permutations([...all.slice(0, i), ...all.slice(i + 1)]).map((rest) => [one, ...rest]),
  )
}

/** Every way to part a list into groups. */
function partitions<T>(all: T[]): T[][][] {
  const [first, ...rest] = all
  if (first === undefined) return [[]]
  return partitions(rest).flatMap((groups) => [
    [[first], ...groups],
    ...groups.map((group, i) => groups.map((g, j) => (i === j ? [first, ...group] : g))),
  ])
}

/** Whether lengths can lie in a stretch with blocked places, a kerf between neighbours: every order, each as early as it can. */
function lie(
  lengths: number[],
  from: number,
  to: number,
  blocked: [number, number][],
  kerf: number,
): boolean {
  return permutations(lengths).some((order) => {
    let at = from
    for (const length of order) {
      let start = at
      for (let moved = true; moved; ) {
        moved = false
        for (const [a, b] of blocked) {
          if (start < b && start + length > a) {
            start = b
            moved = true
          }
        }
      }
      if (start + length > to) return false
      at = start + length + kerf
    }
    return true
  })
}

function holds(order: CutOrder, board: Board, units: Unit[]): boolean {
  if (units.length === 0) return true
  if (units.some((u) => u.thickness > nano(board.thickness))) return false
  const kerf = nano(order.kerf)
  const [x0, x1] = [nano(order.endTrim), nano(board.length) - nano(order.endTrim)]
  const [y0, y1] = [nano(order.edgeTrim), nano(board.width) - nano(order.edgeTrim)]
  const defects = board.defects ?? []
  const alongs = defects
    .filter((d) => !d.across && nano(d.to) > nano(d.from))
    .map((d): [number, number] => [nano(d.from), nano(d.to)])
  const acrosses = defects
    .filter((d) => d.across && nano(d.across[1]) > nano(d.across[0]))
    .map((d): [number, number] => [nano(d.across![0]), nano(d.across![1])])
  const lengthwise = (lengths: number[]) => lie(lengths, x0, x1, alongs, kerf)
  const crosswise = (sides: number[]) => lie(sides, y0, y1, acrosses, kerf)
  return partitions(units).some((groups) => {
    const ripped =
      order.process !== 'crosscut-first' &&
      groups.every((g) => g.every((u) => u.side === g[0]!.side) && lengthwise(g.map((u) => u.length))) &&
      crosswise(groups.map((g) => g[0]!.side))
    const crosscut =
      order.process !== 'rip-first' &&
      groups.every((g) => crosswise(g.map((u) => u.side))) &&
      lengthwise(groups.map((g) => Math.max(...g.map((u) => u.length))))
    return ripped || crosscut
  })
}

/** Fewest missing blanks and the least cost with that many missing; `costs` by board of the order. */
export function exhaustive(order: CutOrder, costs: number[]): { missing: number; cost: number } {
  const units: Unit[] = order.blanks.flatMap((b) =>
    Array.from({ length: b.count }, () => ({
      side: nano(b.side),
      length: nano(b.length),
      thickness: nano(b.thickness ?? b.side),
    })),
  )
  const boards = order.boards.flatMap((b, i) =>
    Array.from({ length: b.count ?? units.length }, () => ({ board: b, cost: costs[i]! })),
  )
  const sets = 2 ** units.length
  // cheapest[set]: least cost to cut exactly this set of blanks from the boards looked at so far.
  let cheapest = new Array<number>(sets).fill(Number.POSITIVE_INFINITY)
  cheapest[0] = 0
  const known = new Map<Board, boolean[]>()
  for (const { board, cost } of boards) {
    const fits =
      known.get(board) ??
      Array.from({ length: sets }, (_, set) =>
        holds(
          order,
          board,
          units.filter((_, u) => set & (1 << u)),
        ),
      )
    known.set(board, fits)
    const next = [...cheapest]
    for (let set = 0; set < sets; set++) {
      for (let part = set; part > 0; part = (part - 1) & set) {
        if (fits[part]) next[set] = Math.min(next[set]!, cheapest[set ^ part]! + cost)
      }
    }
    cheapest = next
  }
  const bits = (set: number): number => (set === 0 ? 0 : (set & 1) + bits(set >> 1))
  let best = { missing: units.length, cost: 0 }
  cheapest.forEach((cost, set) => {
    const missing = units.length - bits(set)
    if (
      cost < Number.POSITIVE_INFINITY &&
      (missing < best.missing || (missing === best.missing && cost < best.cost))
    )
      best = { missing, cost }
  })
  return best
}
