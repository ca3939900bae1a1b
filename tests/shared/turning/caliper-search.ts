/** Every set of calipers that stands after one more is set to `wanted`. */
function settings(standing: number[], wanted: number, calipers: number): number[][] {
  if (standing.length < calipers) return [[...standing, wanted]]
  return standing.map((_, i) => standing.map((s, j) => (i === j ? wanted : s)))
}

const keyOf = (standing: number[]): string => [...standing].sort((a, b) => a - b).join()

/** Cheapest way to each standing set, over every order of one piece’s cuts and every caliper to change. */
function afterPiece(from: Map<string, number>, orders: number[][], calipers: number): Map<string, number> {
  const best = new Map<string, number>()
  for (const [key, cost] of from) {
    const start = key === '' ? [] : key.split(',').map(Number)
    for (const order of orders) {
      let open = new Map<string, number>([[keyOf(start), cost]])
      for (const wanted of order) {
        const next = new Map<string, number>()
        for (const [k, c] of open) {
          const standing = k === '' ? [] : k.split(',').map(Number)
          const ways = standing.includes(wanted) ? [standing] : settings(standing, wanted, calipers)
          const paid = c + (standing.includes(wanted) ? 0 : 1)
          for (const way of ways)
            next.set(keyOf(way), Math.min(paid, next.get(keyOf(way)) ?? Number.POSITIVE_INFINITY))
        }
        open = next
      }
      for (const [k, c] of open) best.set(k, Math.min(c, best.get(k) ?? Number.POSITIVE_INFINITY))
    }
  }
  return best
}

/** All orders of a list. */
export function ordersOf(list: number[]): number[][] {
  if (list.length <= 1) return [list]
  return list.flatMap((first, i) => ordersOf(list.filter((_, j) => j !== i)).map((rest) => [first, ...rest]))
}

/** All orders of `count` cuts in which each comes after those that `before` names for it. */
export const allowedOrders = (count: number, before: number[][]): number[][] =>
  ordersOf(Array.from({ length: count }, (_, i) => i)).filter((order) =>
    order.every((cut, i) => before[cut]!.every((other) => order.indexOf(other) < i)),
  )

/** Fewest resets there can be, found by trying everything: any of `orders` for each piece, any caliper changed. */
export function fewestByTrying(orders: number[][], pieces: number, calipers: number): number {
  let best = new Map<string, number>([['', 0]])
  for (let piece = 0; piece < pieces; piece++) best = afterPiece(best, orders, calipers)
  return Math.min(...best.values())
}
