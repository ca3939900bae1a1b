import { crosscutFirst, crosscutFirstAround } from './crosscut-first.ts'
import type { Layout, Wanted } from './layout.ts'
import { ripFirst, ripFirstAround, sidesWanted } from './rip-first.ts'
import { singleLayout } from './single.ts'
import type { BoardKind, Stock } from './stock.ts'

/** The most valuable way to cut one board into blanks that are still wanted, by the processes the order allows. */
export function boardLayout(stock: Stock, kind: BoardKind, wanted: Wanted): Layout | undefined {
  const { process } = stock.order
  const sides = sidesWanted(kind, wanted.left).length
  if (sides === 0) return undefined
  const { grids, partial } = kind.wood
  const layouts: Layout[] = []
  if (process !== 'crosscut-first') {
    for (const grid of grids) layouts.push(ripFirst(stock, kind, grid, wanted))
    if (partial) layouts.push(ripFirstAround(stock, kind, wanted))
  }
  // With one side ripping first is never worse on a clear grid: every section could be strips as well.
  if (process === 'crosscut-first' || (process === 'either' && (sides > 1 || partial))) {
    for (const grid of grids) layouts.push(crosscutFirst(stock, kind, grid, wanted))
    if (partial) layouts.push(crosscutFirstAround(stock, kind, wanted))
  }
  const best = layouts.reduce((a, b) => (b.value > a.value ? b : a))
  return best.value > 0 ? best : partial ? anySingle(stock, kind, wanted) : undefined
}

function anySingle(stock: Stock, kind: BoardKind, wanted: Wanted): Layout | undefined {
  for (const size of kind.thickEnough.sizes) {
    const layout = wanted.left[size]! > 0 ? singleLayout(stock, kind, size, wanted.values[size]!) : undefined
    if (layout) return layout
  }
  return undefined
}
