import type { SizingOrder } from './sizing-order.ts'

/**
 * What the search goes by. Settings of one kind are wanted by cuts that wait for the same and are waited for by the
 * same, so that one may stand for the other.
 */
export interface Kinds {
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
export type Standing = number[]

/** Cuts of one setting that are told apart: each takes a bit. */
const CUTS_MAX = 15
export const codeOf = (kind: number, made: number, set: boolean): number =>
  (kind << (CUTS_MAX + 1)) | (made << 1) | (set ? 1 : 0)
const kindIn = (code: number): number => code >>> (CUTS_MAX + 1)
const madeIn = (code: number): number => (code >>> 1) & ((1 << CUTS_MAX) - 1)
const isSet = (code: number): boolean => (code & 1) === 1

/** So many settings more of one number, or fewer where `more` is below zero; changes the list. */
function put(standing: Standing, code: number, more: number): void {
  let at = 0
  while (at < standing.length && standing[at]! < code) at += 2
  if (standing[at] !== code) standing.splice(at, 0, code, more)
  else if (standing[at + 1] === -more) standing.splice(at, 2)
  else standing[at + 1]! += more
}

/** Each number with what it is turned into, put together again. */
export function mapped(standing: Standing, into: (code: number) => number): Standing {
  const next: Standing = []
  for (let i = 0; i < standing.length; i += 2) put(next, into(standing[i]!), standing[i + 1]!)
  return next
}

/** As it stands when the next piece is taken up. */
export const forNext = (standing: Standing): Standing =>
  mapped(standing, (code) => codeOf(kindIn(code), 0, isSet(code)))

/** The different numbers of it. */
const codesOf = (standing: Standing): number[] => standing.filter((_, i) => i % 2 === 0)

/** A caliper set anew: from which code to which setting’s code; none given up while one is still unset. */
export interface Reset {
  set: number
  given: number | undefined
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

export function kindsOf(order: SizingOrder): Kinds | undefined {
  const { classOf, before } = classesOf(order)
  const own = order.diameters.map((_, setting) =>
    order.cuts
      .flatMap((cut, i) => (cut.setting === setting ? [i] : []))
      .sort((a, b) => classOf[a]! - classOf[b]!),
  )
  if (own.some((cuts) => cuts.length > CUTS_MAX)) return undefined
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
export function openClasses({ classesOf, before }: Kinds, codes: number[]): boolean[] {
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
export function openCuts({ classesOf }: Kinds, code: number, open: boolean[]): number {
  let bits = 0
  classesOf[kindIn(code)]!.forEach((one, bit) => {
    if (open[one] && !((madeIn(code) >> bit) & 1)) bits |= 1 << bit
  })
  return bits
}

/** All cuts made that the calipers as they stand allow: to put one off gains nothing. */
export function withFreeCuts(kinds: Kinds, standing: Standing): Standing {
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
export function changed(standing: Standing, { set, given }: Reset): Standing {
  const next = [...standing]
  put(next, set, -1)
  put(next, set | 1, 1)
  if (given === undefined) return next
  put(next, given, -1)
  put(next, given & ~1, 1)
  return next
}

/** Calipers that are set. */
function countSet(standing: Standing): number {
  let set = 0
  for (let i = 0; i < standing.length; i += 2) if (isSet(standing[i]!)) set += standing[i + 1]!
  return set
}

/** Each reset that leads on: to a setting that is wanted now, giving up any other. */
export function resetsFrom(kinds: Kinds, standing: Standing, calipers: number): Reset[] {
  const codes = codesOf(standing)
  const open = openClasses(kinds, codes)
  const wanted = codes.filter((code) => !isSet(code) && openCuts(kinds, code, open) > 0)
  const givable: (number | undefined)[] = countSet(standing) >= calipers ? codes.filter(isSet) : [undefined]
  return wanted.flatMap((set) => givable.map((given) => ({ set, given })))
}

export const isDone = ({ classesOf }: Kinds, standing: Standing): boolean =>
  codesOf(standing).every((code) => madeIn(code) === (1 << classesOf[kindIn(code)]!.length) - 1)

/** How many calipers have to be set to stand as in `to` when they stand as in `from`. */
export function apart(from: Standing, to: Standing): number {
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
