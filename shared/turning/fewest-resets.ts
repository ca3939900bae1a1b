import type { SizingWay } from './kept-settings.ts'
import { played } from './played-resets.ts'
import type { SizingOrder } from './sizing-order.ts'
import {
  apart,
  changed,
  codeOf,
  forNext,
  isDone,
  type Kinds,
  kindsOf,
  mapped,
  type Reset,
  resetsFrom,
  type Standing,
  withFreeCuts,
} from './sizing-state.ts'

interface Node {
  codes: Standing
  before?: Node
  reset?: Reset
}

/** Search steps after which nothing is proven any more. */
const STEPS_MAX = 8_000

class OverBudget extends Error {}

interface PieceEnd {
  resets: number
  node: Node
}

/**
 * Whether a state is worth going on from: none with the same cuts made was met from which setting calipers over leads to
 * it at no more resets. Remembers it if so.
 */
function worthwhile(spend: (steps: number) => void): (codes: Standing, resets: number) => boolean {
  const met = new Map<string, { codes: Standing; resets: number }[]>()
  return (codes, resets) => {
    const made = String(mapped(codes, (code) => code & ~1))
    const others = met.get(made)
    spend(1 + (others?.length ?? 0) / 20)
    if (!others) met.set(made, [{ codes, resets }])
    else if (others.some((other) => other.resets + apart(other.codes, codes) <= resets)) return false
    else others.push({ codes, resets })
    return true
  }
}

/** Fewest resets on one piece from calipers as they stand to each way they may stand after it that is worth it. */
function endsOfPiece(
  kinds: Kinds,
  start: Standing,
  calipers: number,
  spend: (steps: number) => void,
): Map<string, PieceEnd> {
  const ends = new Map<string, PieceEnd>()
  const worth = worthwhile(spend)
  let level: Node[] = [{ codes: withFreeCuts(kinds, start) }]
  let fewest = Number.POSITIVE_INFINITY
  // Any way to stand is had from the first end by setting all calipers over: more resets than that are not worth it.
  for (let resets = 0; level.length > 0 && resets < fewest + calipers; resets++) {
    const next: Node[] = []
    for (const node of level) {
      if (isDone(kinds, node.codes)) {
        const key = String(forNext(node.codes))
        if (!ends.has(key)) ends.set(key, { resets, node })
        fewest = Math.min(fewest, resets)
        continue
      }
      for (const reset of resetsFrom(kinds, node.codes, calipers)) {
        const codes = withFreeCuts(kinds, changed(node.codes, reset))
        if (worth(codes, resets + 1)) next.push({ codes, before: node, reset })
      }
    }
    level = next
  }
  return ends
}

interface Reached {
  codes: Standing
  resets: number
  /** How the calipers stood before that piece. */
  from: string
}
type Layer = Map<string, Reached>

/** Without those that another one reaches by setting calipers over, at no more resets. */
function undominated(layer: Layer): Layer {
  const all = [...layer.values()]
  return new Map(
    [...layer].filter(([, one]) =>
      all.every((other) => other === one || other.resets + apart(other.codes, one.codes) > one.resets),
    ),
  )
}

/** The layer as it is counted from its least, to tell whether it was met before. */
function shapeOf(layer: Layer): string {
  const least = leastOf(layer)
  return [...layer]
    .map(([key, { resets }]) => `${key}=${resets - least}`)
    .sort()
    .join(';')
}

const leastOf = (layer: Layer): number => Math.min(...[...layer.values()].map(({ resets }) => resets))

/** Layers after 0, 1, 2, … pieces until one repeats an earlier one but for a count that all share. */
function layersOf(
  start: Standing,
  endsFrom: (codes: Standing) => Map<string, PieceEnd>,
): { layers: Layer[]; from: number } {
  const layers: Layer[] = [new Map([[String(start), { codes: start, resets: 0, from: '' }]])]
  const seen = new Map<string, number>()
  for (;;) {
    const layer = layers.at(-1)!
    const shape = shapeOf(layer)
    const before = seen.get(shape)
    if (before !== undefined) return { layers, from: before }
    seen.set(shape, layers.length - 1)
    const next: Layer = new Map()
    for (const [key, { codes, resets }] of layer)
      for (const [end, { resets: more, node }] of endsFrom(codes)) {
        const known = next.get(end)
        if (known && known.resets <= resets + more) continue
        next.set(end, { codes: forNext(node.codes), resets: resets + more, from: key })
      }
    layers.push(undominated(next))
  }
}

/** The resets made on a piece, in order. */
function pathTo({ before, reset }: Node): Reset[] {
  return before ? [...pathTo(before), reset!] : []
}

/**
 * The way with the fewest resets there are, whatever has to come before what: every order that precedence allows and
 * every choice of caliper is gone over, piece after piece, until the choices repeat. Absent where there are too
 * many to go through.
 */
export function fewestResets(order: SizingOrder, calipers: number): SizingWay | undefined {
  const kinds = kindsOf(order)
  if (!kinds) return undefined
  let steps = 0
  const spend = (more: number): void => {
    steps += more
    if (steps > STEPS_MAX) throw new OverBudget()
  }
  const known = new Map<string, Map<string, PieceEnd>>()
  const endsFrom = (codes: Standing): Map<string, PieceEnd> => {
    const key = String(codes)
    if (!known.has(key)) known.set(key, endsOfPiece(kinds, codes, calipers, spend))
    return known.get(key)!
  }
  const start = mapped(
    kinds.kindOf.flatMap((kind) => [codeOf(kind, 0, false), 1]),
    (code) => code,
  )
  try {
    const { layers, from } = layersOf(start, endsFrom)
    return wayThrough({ kinds, layers, from, endsFrom })
  } catch (problem) {
    if (problem instanceof OverBudget) return undefined
    throw problem
  }
}

interface Found {
  kinds: Kinds
  layers: Layer[]
  /** The layer that the last one repeats. */
  from: number
  endsFrom(codes: Standing): Map<string, PieceEnd>
}

function wayThrough({ kinds, layers, from, endsFrom }: Found): SizingWay {
  const repeat = layers.length - 1
  const period = repeat - from
  const at = (piece: number): number => (piece <= repeat ? piece : from + ((piece - from) % period))
  const gained = leastOf(layers[repeat]!) - leastOf(layers[from]!)
  const rounds = (piece: number): number => (piece <= repeat ? 0 : Math.floor((piece - from) / period))
  /** The way its calipers stand after a piece is come to from that of the piece before. */
  const reached = (piece: number, key: string): Reached =>
    layers[piece > repeat && at(piece) === from ? repeat : at(piece)]!.get(key)!
  return {
    resets: (pieces) => leastOf(layers[at(pieces)]!) + gained * rounds(pieces),
    cuts: (pieces) => {
      const last = layers[at(pieces)]!
      let [key] = [...last].find(([, { resets }]) => resets === leastOf(last))!
      const paths: Reset[][] = []
      for (let piece = pieces; piece > 0; piece--) {
        const { from: earlier } = reached(piece, key)
        const source = layers[at(piece - 1)]!.get(earlier)!
        paths.push(pathTo(endsFrom(source.codes).get(key)!.node))
        key = earlier
      }
      return played(kinds, paths.reverse())
    },
  }
}
