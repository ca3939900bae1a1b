import { crosscutFirst, crosscutFirstAround } from './crosscut-first.ts'
import type { Layout, Wanted } from './layout.ts'
import { ripFirst, ripFirstAround, sidesWanted } from './rip-first.ts'
import { singleLayout } from './single.ts'
import type { BoardKind, SortedOrder } from './sorted-order.ts'

/** The most valuable way to cut one board into blanks that are still wanted, by the processes the order allows. */
export function boardLayout(sorted: SortedOrder, kind: BoardKind, wanted: Wanted): Layout | undefined {
  const { process } = sorted.order
  const sides = sidesWanted(kind, wanted.left).length
  if (sides === 0) return undefined
  const { grids, partial } = kind.wood
  const layouts: Layout[] = []
  if (process !== 'crosscut-first') {
    for (const grid of grids) layouts.push(ripFirst(sorted, kind, grid, wanted))
    if (partial) layouts.push(ripFirstAround(sorted, kind, wanted))
  }
  // With one side ripping first is never worse on a clear grid: every section could be strips as well.
  if (process === 'crosscut-first' || (process === 'either' && (sides > 1 || partial))) {
    for (const grid of grids) layouts.push(crosscutFirst(sorted, kind, grid, wanted))
    if (partial) layouts.push(crosscutFirstAround(sorted, kind, wanted))
  }
  const best = layouts.reduce((a, b) => (b.value > a.value ? b : a))
  return best.value > 0 ? best : partial ? anySingle(sorted, kind, wanted) : undefined
}

function anySingle(sorted: SortedOrder, kind: BoardKind, wanted: Wanted): Layout | undefined {
  for (const size of kind.thickEnough.sizes) {
    const layout = wanted.left[size]! > 0 ? singleLayout(sorted, kind, size, wanted.values[size]!) : undefined
    if (layout) return layout
  }
  return undefined
}
