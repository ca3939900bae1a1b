import { inches, mmOfNm, nm } from '../../units/length.ts'
import type { Original, Sheet } from './sheet.ts'

type Nanometres = number | undefined

/** One length read twice by tape differs by less than this, mm. Common practice, no source. */
const TAPE_APART = inches(1 / 4)

const sameName = (a: string | undefined, b: string): boolean =>
  a?.trim().toLowerCase() === b.trim().toLowerCase()

/** The place that stands at the datum of itself: the only one called like it, or the last where it is the top. */
function placeAtDatum({ stations }: Sheet, { datum }: Original): number {
  if (!datum || datum.name.trim() === '') return -1
  const named = stations.flatMap(({ name }, i) => (sameName(name, datum.name) ? [i] : []))
  if (named.length === 1) return named[0]!
  return named.length === 0 && sameName('top', datum.name) ? stations.length - 1 : -1
}

/**
 * How far each place lies from where the tape starts, in nanometres, more towards the top; absent where that was not
 * read. A tape that starts at the foot itself is there without a reading when each place is read from the one before.
 */
export function fromStart(sheet: Sheet, original: Original): Nanometres[] {
  const down = original.datum?.towards === 'foot'
  const sign = down ? -1 : 1
  const atDatum = placeAtDatum(sheet, original)
  const read = sheet.stations.map((_, i): Nanometres => {
    const at = original.readings[i]?.at
    return at === undefined ? undefined : sign * nm(at)
  })
  if (sheet.way === 'running') return read.map((at, i) => at ?? (i === atDatum ? 0 : undefined))
  // nothing lies before the foot: a tape without a datum starts there
  if (!original.datum && read.length > 0) read[0] ??= 0
  return down ? chained(read.reverse(), read.length - 1 - atDatum).reverse() : chained(read, atDatum)
}

/** Sums of distances from each place to the one before; a gap breaks the chain, the datum's own place mends it. */
function chained(read: Nanometres[], atDatum: number): Nanometres[] {
  let [sum, begun]: [Nanometres, boolean] = [0, false]
  return read.map((step, i) => {
    if (step === undefined && i === atDatum) {
      ;[sum, begun] = [0, true]
      return 0
    }
    if (step === undefined) {
      if (begun) sum = undefined
      return undefined
    }
    begun = true
    sum = sum === undefined ? undefined : sum + step
    return sum
  })
}

/**
 * How far the start of the tape lies from the foot as it stands today, in nanometres, `atFoot` being what the foot
 * reads from there; absent where neither tells it.
 */
export function startFromFoot({ datum }: Original, atFoot: Nanometres): Nanometres {
  if (datum?.fromFoot !== undefined) return nm(datum.fromFoot)
  if (atFoot !== undefined) return -atFoot
  return datum ? undefined : 0
}

/**
 * By how much the foot's own reading and the distance of the datum differ, mm, above the foot counting more: both
 * measure one length. `unread` where they differ by more than a tape does, so that the lowest place cannot be the
 * foot. Absent where one of them is not known.
 */
export function footApart(sheet: Sheet, original: Original): { apart: number; unread: boolean } | undefined {
  const [atFoot, from] = [fromStart(sheet, original)[0], original.datum?.fromFoot]
  if (atFoot === undefined || from === undefined) return undefined
  const apart = mmOfNm(nm(from) + atFoot)
  return { apart, unread: nm(Math.abs(apart)) > nm(TAPE_APART) }
}

/**
 * Where the places of the sheet lie on one original, mm from the foot as it was made: from whatever datum and in
 * whichever way they were read, with the wear of the foot added. The foot itself is always 0; a tape that reads more
 * there is read from there. Absent where it cannot be told from what was read. As long as the lowest place read is far
 * from the foot that the datum gives, it is not taken for the foot.
 *
 * @example positionsFromFoot({ units: 'mm', way: 'span', choice: 'larger', stations: [{ then: 'straight' }, { then: 'straight' }], originals: [] }, { name: '', readings: [{ diameters: [] }, { at: 120, diameters: [] }], wear: 3 }) // [0, 123]
 */
export function positionsFromFoot(sheet: Sheet, original: Original): (number | undefined)[] {
  const read = fromStart(sheet, original)
  const start = startFromFoot(original, read[0])
  const wear = nm(original.wear ?? 0)
  const footRead = !footApart(sheet, original)?.unread
  return read.map((at, i) => {
    if (i === 0 && footRead) return 0
    return at === undefined || start === undefined ? undefined : mmOfNm(start + at + wear)
  })
}
