import { type Segment, type SpanWear, written } from './segment.ts'

/** A fillet of that width (nanometres) between the diameters of two segments; no thicker than the thinner of them. */
function filletBetween(width: number, below: Segment, above: Segment): Segment {
  // beside a square the fillet is the round that lies in it
  const ends = [below.d1 ?? below.wear.side, above.d0 ?? above.wear.side].filter((d) => d !== undefined)
  const diameter = ends.length > 0 ? Math.min(...ends) : undefined
  return {
    width,
    wear: { then: 'straight' },
    ...written({ d0: diameter, d1: diameter }),
    foot: {},
    top: {},
  }
}

/** What a copy says of itself: names are the original’s. */
const unnamed = (wear: SpanWear): SpanWear => {
  const { name: _name, key: _key, ...rest } = wear
  return rest
}

/** So many copies of a group, each behind a fillet `between` nanometres wide; none where it is 0. */
export function copiesOf(group: readonly Segment[], times: number, between: number): Segment[] {
  const [first, last] = [group[0]!, group.at(-1)!]
  const copy = group.map((segment) => ({ ...segment, wear: unnamed(segment.wear) }))
  const one = between > 0 ? [filletBetween(between, last, first), ...copy] : copy
  return Array.from({ length: times }, () => one).flat()
}
