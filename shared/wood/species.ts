import { readText } from '../input.ts'
import { badInput } from '../problem.ts'

/** One wood as the handbook gives it. Specific gravities on volume at 12 % or green; shrinkage in % green to ovendry. */
export interface Species {
  /** Common name, lower case, other characters to `-`, e.g. `walnut-black`. */
  key: string
  name: string
  botanical?: string
  kind: 'hardwood' | 'softwood'
  sgGreen?: number
  sg12?: number
  /** Modulus of elasticity at 12 %, GPa. */
  moeGPa?: number
  /** Modulus of rupture at 12 %, MPa. */
  morMPa?: number
  /** Side hardness at 12 %, N. */
  hardnessN?: number
  shrinkRadialPct?: number
  shrinkTangentialPct?: number
  shrinkVolumetricPct?: number
  /** Dimensional change per 1 % moisture, radial and tangential, 6 to 14 %. */
  cr?: number
  ct?: number
  source: string
  /** How sure the row is as a whole; `fieldConfidence` says it value by value. */
  confidence: 'cross' | 'read' | 'computed' | 'memory' | 'shop'
  fieldConfidence?: string
  /** Every value but volumetric shrinkage stands on print: offered by default. */
  safe: boolean
  notes?: string
}

const KEY_LEFTOVER = /[^a-z0-9]+/g

/**
 * The key of a wood from its common name: lower case, text in parentheses dropped, runs of other characters to `-`.
 *
 * @example speciesKey('Walnut, black') // 'walnut-black'
 * @example speciesKey('Hickory, bitternut (pecan group)') // 'hickory-bitternut'
 */
export function speciesKey(name: string): string {
  return name
    .replace(/\([^)]*\)/g, ' ')
    .toLowerCase()
    .replace(KEY_LEFTOVER, '-')
    .replace(/^-|-$/g, '')
}

/** Least number of letters to put in, take out, change or swap with a neighbour to get from one word to another. */
function editDistance(a: string, b: string): number {
  let [older, old, next]: [number[], number[], number[]] = [
    [],
    Array.from({ length: b.length + 1 }, (_, j) => j),
    [],
  ]
  for (let i = 1; i <= a.length; i++) {
    next = [i]
    for (let j = 1; j <= b.length; j++) {
      const change = old[j - 1]! + (a[i - 1] === b[j - 1] ? 0 : 1)
      const swapped = i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]
      next[j] = Math.min(old[j]! + 1, next[j - 1]! + 1, change, swapped ? older[j - 2]! + 1 : change)
    }
    ;[older, old] = [old, next]
  }
  return old[b.length]!
}

/** How far a wood's key is from what was asked for, word by word, whatever the order of the words. */
function keyDistance(asked: string, key: string): number {
  const words = (text: string) => text.split('-').filter(Boolean)
  const nearest = (word: string, among: string[]) =>
    Math.min(1, ...among.map((other) => editDistance(word, other) / Math.max(word.length, other.length)))
  const mean = (from: string[], to: string[]) =>
    from.reduce((sum, word) => sum + nearest(word, to), 0) / Math.max(1, from.length)
  return 2 * mean(words(asked), words(key)) + mean(words(key), words(asked))
}

/** The keys nearest to one that is not known, best first. */
export function nearestKeys(woods: Species[], key: string, count = 4): string[] {
  const asked = speciesKey(key.slice(0, 80))
  return [...new Set(woods.map((wood) => wood.key))]
    .map((known) => ({ known, distance: keyDistance(asked, known) }))
    .sort((a, b) => a.distance - b.distance || (a.known < b.known ? -1 : 1))
    .slice(0, count)
    .map(({ known }) => known)
}

/**
 * The wood of that key; where two share it the first, so put a shop's own woods before the handbook's.
 * @throws Problem `bad-input` at `path` that offers the nearest names
 */
export function speciesNamed(woods: Species[], key: string, path = 'species'): Species {
  const wanted = speciesKey(key)
  const found = woods.find((wood) => wood.key === wanted)
  if (found) return found
  const message = `must be a wood that is known here; read ${readText(key)}; nearest: ${nearestKeys(woods, key).join(', ')}`
  throw badInput([{ path, message }])
}
