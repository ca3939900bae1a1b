import { nm } from '../units/length.ts'
import type { SizedPlace } from './calipers.ts'

/** One cut, or several that nothing keeps apart: the setting it needs, by its place in the list of settings. */
export interface SizingCut {
  setting: number
  /** The places it sizes, as they were given. */
  places: number[]
  /** Cuts that have to be made on the same piece before it, however far before. */
  before: ReadonlySet<number>
}

/** What has to be sized on every piece, and what of it has to come first. */
export interface SizingOrder {
  /** The diameters a caliper is set to, thick to thin, mm. */
  diameters: number[]
  /** In the order of the operations; thick to thin where no operations are told. */
  cuts: SizingCut[]
}

/** For each operation all that come before it, from what each waits for. */
function allBefore(places: SizedPlace[]): Map<string, Set<string>> {
  const after = new Map(places.map((place, i) => [operationOf(place, i), place.after ?? []]))
  const found = new Map<string, Set<string>>()
  const visit = (key: string): Set<string> => {
    const known = found.get(key)
    if (known) return known
    const keys = new Set<string>()
    found.set(key, keys)
    for (const earlier of after.get(key) ?? []) {
      if (!after.has(earlier)) continue
      keys.add(earlier)
      for (const sooner of visit(earlier)) keys.add(sooner)
    }
    return keys
  }
  for (const key of after.keys()) visit(key)
  return found
}

const operationOf = ({ operation }: SizedPlace, index: number): string => operation ?? `place ${index}`

/**
 * The sizing cuts of a piece with what comes before each. Equal diameters (in whole nanometres) share a setting, and
 * are one cut where the same waits for them and they wait for the same.
 */
export function sizingOrder(places: SizedPlace[]): SizingOrder {
  const diameters = [...new Map(places.map(({ diameter }) => [nm(diameter), diameter])).values()]
  diameters.sort((a, b) => nm(b) - nm(a))
  const settingOf = new Map(diameters.map((diameter, i) => [nm(diameter), i]))
  const before = allBefore(places)
  const later = new Map([...before.keys()].map((key) => [key, [] as string[]]))
  for (const [key, keys] of before) for (const earlier of keys) later.get(earlier)!.push(key)

  const merged = new Map<string, { setting: number; places: number[]; operations: string[] }>()
  places.forEach((place, i) => {
    const operation = operationOf(place, i)
    const setting = settingOf.get(nm(place.diameter))!
    const sides = [[...before.get(operation)!], later.get(operation)!].map((keys) => keys.sort().join('\n'))
    const key = [setting, ...sides].join('\n\n')
    const cut = merged.get(key) ?? { setting, places: [], operations: [] }
    merged.set(key, cut)
    cut.places.push(i)
    cut.operations.push(operation)
  })
  const told = places.some(({ operation }) => operation !== undefined)
  const list = [...merged.values()].sort((a, b) => (told ? 0 : a.setting - b.setting))
  const cutsOf = new Map<string, number[]>()
  list.forEach(({ operations }, cut) => {
    for (const operation of new Set(operations))
      cutsOf.set(operation, [...(cutsOf.get(operation) ?? []), cut])
  })
  return {
    diameters,
    cuts: list.map(({ setting, places: own, operations }) => ({
      setting,
      places: own,
      before: new Set([...before.get(operations[0]!)!].flatMap((key) => cutsOf.get(key)!)),
    })),
  }
}

/** All cuts so that each comes after what it waits for; of those that may be next, the one `first` prefers. */
function inTurn({ cuts }: SizingOrder, first: (a: number, b: number) => number): number[] {
  const left = new Set(cuts.keys())
  const order: number[] = []
  while (left.size > 0) {
    const open = [...left].filter((cut) => ![...cuts[cut]!.before].some((other) => left.has(other)))
    const next = open.reduce((best, cut) => (first(cut, best) < 0 ? cut : best))
    left.delete(next)
    order.push(next)
  }
  return order
}

/**
 * The two ways to go along a piece: in the order of the operations, and back from the last as far as precedence allows.
 * Both are lists of cuts.
 */
export function thereAndBack(order: SizingOrder): { there: number[]; back: number[] } {
  const there = inTurn(order, (a, b) => a - b)
  const place = new Map(there.map((cut, i) => [cut, i]))
  return { there, back: inTurn(order, (a, b) => place.get(b)! - place.get(a)!) }
}
