import { overlap, type Patch, type Run, without } from './clear.ts'
import { heldBy, type Line, type LineBlank, type Patience } from './line.ts'
import { type CutPart, type Part, type Row, rowOf } from './row.ts'
import type { BoardKind, SortedOrder } from './sorted-order.ts'
import { countsOf, type Takings, together } from './takings.ts'

/**
 * Every taking that can be cut from one board by crosscutting first. If sections lie anyhow, each can be pushed
 * to the butt end until the section before it, or a defect that a blank in it touches, stops it; such a blank
 * lies at the section's far end.
 */
export function everyCrosscut(
  sorted: SortedOrder,
  takings: Takings,
  kind: BoardKind,
  patience: Patience,
): Row {
  const { usable } = kind.wood
  const sizes = kind.thickEnough.sizes.filter((s) => takings.sizes.includes(s))
  const lengths = [...new Set(sizes.map((s) => sorted.sizes[s]!.length))]
  const sections = lengths.map((length) => sectionsOf(sorted, takings, kind, { length, sizes }, patience))
  const known = new Map<number, Part[]>()
  const partsFrom = (from: number): Part[] => {
    const parts = known.get(from) ?? sections.flatMap((ofLength) => ofLength(from))
    known.set(from, parts)
    return parts
  }
  const row = rowOf(takings, usable.along, sorted.kerf, partsFrom, patience)
  return {
    process: 'crosscut-first',
    held: row.held,
    layout: (taking) => ({
      process: 'crosscut-first',
      takes: countsOf(sorted, takings, taking),
      value: 0,
      sections: () => row.partsOf(taking).map((part) => sectionLayout(sorted, takings, kind, part)),
    }),
  }
}

function sectionLayout(sorted: SortedOrder, takings: Takings, kind: BoardKind, { part, spots }: CutPart) {
  const along: Run = [part.at, part.at + part.measure]
  return {
    along,
    spots: spots.map(({ blank, at }) => {
      const size = takings.sizes[blank.place]!
      const { side, length } = sorted.sizes[size]!
      return { size, along: spotIn(along, kind.wood.defects, [at, at + side], length)!, across: at }
    }),
  }
}

/** The first place in a section where a blank is clear of defects, its place across given. */
function spotIn(section: Run, defects: readonly Patch[], across: Run, length: number): number | undefined {
  const over = defects.filter((d) => overlap(d.across, across)).map((d) => d.along)
  return without(section, over).find(([from, to]) => to - from >= length)?.[0]
}

/** Sections of one length from a point on: there, and wherever a blank could lie just past a defect. */
function sectionsOf(
  sorted: SortedOrder,
  takings: Takings,
  { wood: { usable, defects } }: BoardKind,
  { length, sizes: all }: { length: number; sizes: number[] },
  patience: Patience,
): (from: number) => Part[] {
  const sizes = all.filter((s) => sorted.sizes[s]!.length <= length)
  const blanks = sizes.map(
    (s): LineBlank => ({ place: takings.sizes.indexOf(s), measure: sorted.sizes[s]!.side }),
  )
  const whole = sizes.flatMap((s, i) =>
    sorted.sizes[s]!.length === length ? [takings.one[blanks[i]!.place]!] : [],
  )
  const ends = defects.flatMap((d) => sizes.map((s) => d.along[1] + sorted.sizes[s]!.length - length))
  const starts = [...new Set(ends)].sort((a, b) => a - b)
  const lines = new Map<number | 'clear', Pick<Part, 'line' | 'held'>>()
  const lineAt = (at: number, over: Patch[]) => {
    const name = over.length > 0 ? at : 'clear'
    const known = lines.get(name)
    if (known) return known
    const earliest = earliestIn(sorted, takings, [at, at + length], over)
    const [from, to] = usable.across
    const line: Line = { takings, blanks, from, to, kerf: sorted.kerf, earliest }
    const held = heldBy(line, patience).filter((taking) => whole.some((one) => holds(takings, taking, one)))
    lines.set(name, { line, held })
    return { line, held }
  }
  return (from) => {
    const parts: Part[] = []
    for (const at of [from, ...starts.filter((start) => start > from)]) {
      if (at + length > usable.along[1] || patience.isSpent()) break
      const over = defects.filter((d) => overlap(d.along, [at, at + length]))
      parts.push({ at, measure: length, ...lineAt(at, over) })
      patience.steps += defects.length
      if (over.length === 0) break
    }
    return parts
  }
}

/** Where across a section a blank can lie at the soonest, somewhere along it clear of the defects. */
function earliestIn(sorted: SortedOrder, takings: Takings, section: Run, over: Patch[]): Line['earliest'] {
  const edges = [...new Set(over.map((d) => d.across[1]))].sort((a, b) => a - b)
  return ({ place, measure }, from) => {
    const { length } = sorted.sizes[takings.sizes[place]!]!
    const isClear = (low: number) => spotIn(section, over, [low, low + measure], length) !== undefined
    return [from, ...edges.filter((edge) => edge > from)].find(isClear) ?? Number.POSITIVE_INFINITY
  }
}

/** Whether a taking holds this single blank. */
const holds = (takings: Takings, taking: number, one: number): boolean =>
  together(takings, takings.all - 1 - taking, one)
