import type { CaliperCut, SizingWay } from './kept-settings.ts'
import type { SizingOrder } from './sizing-order.ts'

/**
 * What the search goes by. Settings of one kind are wanted by cuts that wait for the same and are waited for by the
 * same, so that one may stand for the other.
 */
interface Kinds {
  /** Of each setting its kind. */
  kindOf: number[]
  /** Of each kind the classes of its cuts. */
  classesOf: number[][]
  /** Of each class those that come before it. */
  before: number[][]
  /** Of each setting the cut in each class of its kind. */
  cutsOf: number[][]
}

/**
 * Where a piece stands: settings by their kind, which of their cuts are made and whether a caliper is set to them, as one
 * number, and how many settings there are of each such number; in turn, by rising number.
 */
type Standing = number[]

const MASK_BITS = 15
const codeOf = (kind: number, made: number, set: boolean): number =>
  (kind << (MASK_BITS + 1)) | (made << 1) | (set ? 1 : 0)
const kindIn = (code: number): number => code >>> (MASK_BITS + 1)
const madeIn = (code: number): number => (code >>> 1) & ((1 << MASK_BITS) - 1)
const isSet = (code: number): boolean => (code & 1) === 1

/** Each number with what it is turned into, put together again. */
function mapped(standing: Standing, into: (code: number) => number): Standing {
  const counts = new Map<number, number>()
  for (let i = 0; i < standing.length; i += 2) {
    const code = into(standing[i]!)
    counts.set(code, (counts.get(code) ?? 0) + standing[i + 1]!)
  }
  return [...counts.keys()].sort((a, b) => a - b).flatMap((code) => [code, counts.get(code)!])
}

/** As it stands when the next piece is taken up. */
const forNext = (standing: Standing): Standing =>
  mapped(standing, (code) => codeOf(kindIn(code), 0, isSet(code)))

/** The different numbers of it. */
const codesOf = (standing: Standing): number[] => standing.filter((_, i) => i % 2 === 0)

/** A caliper set anew: from which code to which setting’s code; none given up while one is still unset. */
interface Reset {
  set: number
  given: number | undefined
}

interface Node {
  codes: Standing
  before?: Node
  reset?: Reset
}

/** Cuts that cannot be told apart by what comes before and after them get one class. */
function classesOf({ cuts }: SizingOrder): { classOf: number[]; before: number[][] } {
  const after = cuts.map((_, i) => cuts.flatMap(({ before }, other) => (before.has(i) ? [other] : [])))
  const byKey = new Map<string, number>()
  const classOf = cuts.map(({ before }, i) => {
    const key = `${[...before].sort((a, b) => a - b)} < ${after[i]}`
    if (!byKey.has(key)) byKey.set(key, byKey.size)
    return byKey.get(key)!
  })
  const before: number[][] = Array.from({ length: byKey.size }, () => [])
  cuts.forEach((cut, i) => {
    before[classOf[i]!] = [...new Set([...cut.before].map((other) => classOf[other]!))]
  })
  return { classOf, before }
}

function kindsOf(order: SizingOrder): Kinds | undefined {
  const { classOf, before } = classesOf(order)
  const own = order.diameters.map((_, setting) =>
    order.cuts
      .flatMap((cut, i) => (cut.setting === setting ? [i] : []))
      .sort((a, b) => classOf[a]! - classOf[b]!),
  )
  if (own.some((cuts) => cuts.length > MASK_BITS)) return undefined
  const kinds = new Map<string, number>()
  const classes: number[][] = []
  const kindOf = own.map((cuts) => {
    const key = String(cuts.map((cut) => classOf[cut]!))
    if (!kinds.has(key)) {
      kinds.set(key, kinds.size)
      classes.push(cuts.map((cut) => classOf[cut]!))
    }
    return kinds.get(key)!
  })
  return { kindOf, classesOf: classes, before, cutsOf: own }
}

/** Which classes may be cut now: all that comes before them is made. */
function openClasses({ classesOf, before }: Kinds, codes: number[]): boolean[] {
  const left = before.map(() => false)
  for (const code of codes) {
    const made = madeIn(code)
    classesOf[kindIn(code)]!.forEach((one, bit) => {
      if (!((made >> bit) & 1)) left[one] = true
    })
  }
  return before.map((classes) => classes.every((one) => !left[one]))
}

/** Cuts of a setting that may be made now, as bits. */
function openCuts({ classesOf }: Kinds, code: number, open: boolean[]): number {
  let bits = 0
  classesOf[kindIn(code)]!.forEach((one, bit) => {
    if (open[one] && !((madeIn(code) >> bit) & 1)) bits |= 1 << bit
  })
  return bits
}

/** All cuts made that the calipers as they stand allow: to put one off gains nothing. */
function withFreeCuts(kinds: Kinds, standing: Standing): Standing {
  let now = standing
  for (;;) {
    const codes = codesOf(now)
    const open = openClasses(kinds, codes)
    const free = (code: number): number => (isSet(code) ? openCuts(kinds, code, open) : 0)
    if (!codes.some((code) => free(code) > 0)) return now
    now = mapped(now, (code) => codeOf(kindIn(code), madeIn(code) | free(code), isSet(code)))
  }
}

/** One setting of each number changed over: a caliper is set to the one and given up at the other. */
function changed(standing: Standing, { set, given }: Reset): Standing {
  const counts = new Map<number, number>()
  for (let i = 0; i < standing.length; i += 2) counts.set(standing[i]!, standing[i + 1]!)
  const add = (code: number, by: number): void => void counts.set(code, (counts.get(code) ?? 0) + by)
  add(set, -1)
  add(set | 1, 1)
  if (given !== undefined) {
    add(given, -1)
    add(given & ~1, 1)
  }
  return [...counts.keys()]
    .filter((code) => counts.get(code)! > 0)
    .sort((a, b) => a - b)
    .flatMap((code) => [code, counts.get(code)!])
}

/** Calipers that are set. */
function countSet(standing: Standing): number {
  let set = 0
  for (let i = 0; i < standing.length; i += 2) if (isSet(standing[i]!)) set += standing[i + 1]!
  return set
}

/** Each reset that leads on: to a setting that is wanted now, giving up any other. */
function resetsFrom(kinds: Kinds, standing: Standing, calipers: number): Reset[] {
  const codes = codesOf(standing)
  const open = openClasses(kinds, codes)
  const wanted = codes.filter((code) => !isSet(code) && openCuts(kinds, code, open) > 0)
  const givable: (number | undefined)[] = countSet(standing) >= calipers ? codes.filter(isSet) : [undefined]
  return wanted.flatMap((set) => givable.map((given) => ({ set, given })))
}

const isDone = ({ classesOf }: Kinds, standing: Standing): boolean =>
  codesOf(standing).every((code) => madeIn(code) === (1 << classesOf[kindIn(code)]!.length) - 1)

/** Search steps after which nothing is proven any more. */
const BUDGET = 4_000

class OverBudget extends Error {}

interface PieceEnd {
  resets: number
  node: Node
}

/** How many calipers have to be set to stand as in `to` when they stand as in `from`. */
function apart(from: Standing, to: Standing): number {
  let missing = 0
  let at = 0
  for (let i = 0; i < to.length; i += 2) {
    if (!isSet(to[i]!)) continue
    while (at < from.length && from[at]! < to[i]!) at += 2
    const have = from[at] === to[i] ? from[at + 1]! : 0
    missing += Math.max(0, to[i + 1]! - have)
  }
  return missing
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
  for (let resets = 0; level.length > 0; resets++) {
    const next: Node[] = []
    for (const node of level) {
      if (isDone(kinds, node.codes)) {
        const key = String(forNext(node.codes))
        if (!ends.has(key)) ends.set(key, { resets, node })
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

/** Plays the found resets through with real settings, to tell the order of the cuts and which caliper is set. */
function played(kinds: Kinds, order: SizingOrder, pieces: Reset[][]): CaliperCut[][] {
  const { kindOf, cutsOf, classesOf } = kinds
  const caliperOf: (number | undefined)[] = kindOf.map(() => undefined)
  return pieces.map((resets, piece) => {
    const made = kindOf.map(() => 0)
    const code = (setting: number): number =>
      codeOf(kindOf[setting]!, made[setting]!, caliperOf[setting] !== undefined)
    const settings = [...kindOf.keys()]
    if (piece % 2 === 1) settings.reverse()
    const cuts: CaliperCut[] = []
    let anew: number | undefined
    const cutAll = (): void => {
      for (;;) {
        const open = openClasses(
          kinds,
          kindOf.map((_, setting) => code(setting)),
        )
        const cut = settings.find(
          (setting) => caliperOf[setting] !== undefined && openCuts(kinds, code(setting), open) > 0,
        )
        if (cut === undefined) return
        const bits = openCuts(kinds, code(cut), open)
        const bit = classesOf[kindOf[cut]!]!.findIndex((_, i) => (bits >> i) & 1)
        made[cut]! |= 1 << bit
        cuts.push({ cut: cutsOf[cut]![bit]!, caliper: caliperOf[cut]!, reset: anew === cut })
        if (anew === cut) anew = undefined
      }
    }
    cutAll()
    for (const { set, given } of resets) {
      const wanted = settings.find((setting) => code(setting) === set)!
      const old = given === undefined ? undefined : settings.find((setting) => code(setting) === given)!
      caliperOf[wanted] = old === undefined ? caliperOf.filter((c) => c !== undefined).length : caliperOf[old]
      if (old !== undefined) caliperOf[old] = undefined
      anew = wanted
      cutAll()
    }
    if (cuts.length !== order.cuts.length) throw new Error('a sizing cut is missing')
    return cuts
  })
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
    if (steps > BUDGET) throw new OverBudget()
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
    return wayThrough(layers, from, { kinds, order, endsFrom })
  } catch (problem) {
    if (problem instanceof OverBudget) return undefined
    throw problem
  }
}

function wayThrough(
  layers: Layer[],
  from: number,
  {
    kinds,
    order,
    endsFrom,
  }: { kinds: Kinds; order: SizingOrder; endsFrom(codes: Standing): Map<string, PieceEnd> },
): SizingWay {
  const period = layers.length - 1 - from
  const at = (piece: number): number => (piece < layers.length ? piece : from + ((piece - from) % period))
  const gained = leastOf(layers.at(-1)!) - leastOf(layers[from]!)
  return {
    resets: (pieces) =>
      leastOf(layers[at(pieces)]!) +
      (pieces < layers.length ? 0 : gained * Math.floor((pieces - from) / period)),
    cuts: (pieces) => {
      const last = layers[at(pieces)]!
      let [key] = [...last].find(([, { resets }]) => resets === leastOf(last))!
      const paths: Reset[][] = []
      for (let piece = pieces; piece > 0; piece--) {
        const { from: earlier } =
          layers[piece === at(piece) ? piece : at(piece) === from ? layers.length - 1 : at(piece)]!.get(key)!
        const source = layers[at(piece - 1)]!.get(earlier)!
        paths.unshift(pathTo(endsFrom(source.codes).get(key)!.node))
        key = earlier
      }
      return played(kinds, order, paths)
    },
  }
}
