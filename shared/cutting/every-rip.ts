import { overlap, without } from './clear.ts'
import { heldBy, type Line, type LineBlank, type Patience } from './line.ts'
import { type Part, type Row, rowOf } from './row.ts'
import type { BoardKind, Side, SortedOrder } from './sorted-order.ts'
import { countsOf, type Takings } from './takings.ts'

/**
 * Every taking that can be cut from one board by ripping first. If strips lie anyhow, each can be pushed to the
 * edge until the strip before it or a defect stops it, so strips start a kerf after another or at a defect's
 * far edge only.
 */
export function everyRip(sorted: SortedOrder, takings: Takings, kind: BoardKind, patience: Patience): Row {
  const { usable, defects } = kind.wood
  const edges = [...new Set(defects.map((d) => d.across[1]))].sort((a, b) => a - b)
  const sides = kind.thickEnough.sides.map((side) => stripsOf(sorted, takings, kind, side, patience))
  const known = new Map<number, Part[]>()
  const partsFrom = (from: number): Part[] => {
    const parts = known.get(from) ?? sides.flatMap((strips) => strips(from, edges))
    known.set(from, parts)
    return parts
  }
  const row = rowOf(takings, usable.across, sorted.kerf, partsFrom, patience)
  return {
    process: 'rip-first',
    held: row.held,
    layout: (taking) => ({
      process: 'rip-first',
      takes: countsOf(sorted, takings, taking),
      value: 0,
      strips: () =>
        row.partsOf(taking).map(({ part, spots }) => ({
          side: part.measure,
          across: part.at,
          spots: spots.map(({ blank, at }) => ({
            size: takings.sizes[blank.place]!,
            along: at,
            across: part.at,
          })),
        })),
    }),
  }
}

/** Strips of one side from a point on: there, and wherever fewer or other defects lie on them. */
function stripsOf(
  sorted: SortedOrder,
  takings: Takings,
  { wood: { usable, defects } }: BoardKind,
  { side, sizes }: Side,
  patience: Patience,
): (from: number, edges: readonly number[]) => Part[] {
  const blanks = sizes
    .filter((s) => takings.sizes.includes(s))
    .map((s): LineBlank => ({ place: takings.sizes.indexOf(s), measure: sorted.sizes[s]!.length }))
  const lines = new Map<string, Pick<Part, 'line' | 'held'>>()
  const lineAt = (over: number[]) => {
    const name = over.join(' ')
    const known = lines.get(name)
    if (known) return known
    const runs = without(
      usable.along,
      over.map((d) => defects[d]!.along),
    )
    const earliest = ({ measure }: LineBlank, from: number) => {
      const run = runs.find(([start, end]) => Math.max(start, from) + measure <= end)
      return run ? Math.max(run[0], from) : Number.POSITIVE_INFINITY
    }
    const [from, to] = usable.along
    const line: Line = { takings, blanks, from, to, kerf: sorted.kerf, earliest }
    const all = { line, held: heldBy(line, patience) }
    lines.set(name, all)
    return all
  }
  return (from, edges) => {
    const parts: Part[] = []
    for (const at of [from, ...edges.filter((edge) => edge > from)]) {
      if (at + side > usable.across[1] || patience.isSpent()) break
      const over = defects.flatMap((d, i) => (overlap(d.across, [at, at + side]) ? [i] : []))
      const all = lineAt(over)
      patience.steps += defects.length
      if (!parts.some((part) => part.line === all.line)) parts.push({ at, measure: side, ...all })
      if (over.length === 0) break
    }
    return parts
  }
}
