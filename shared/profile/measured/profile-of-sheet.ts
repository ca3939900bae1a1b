import { mmOfNm, nm } from '../../units/length.ts'
import { needsDiameter } from '../breaches/stations.ts'
import type { Snap } from '../edit/snap.ts'
import { type Station, samePlace } from '../profile.ts'
import { type GatheredStation, gatheredStations } from './gathered.ts'
import { sheetNotes } from './notes.ts'
import { outOfOrder } from './order.ts'
import type { Sheet, SheetStation } from './sheet.ts'
import { snappedPositions, snappedSize } from './targets.ts'

/**
 * What a station of the sheet still lacks; `order` where its position does not lie between its neighbours, `at` of the
 * lowest one also where it is not the foot.
 */
export interface Missing {
  index: number
  what: 'at' | 'diameter' | 'side' | 'order'
}

export interface ProfileOfSheet {
  /** What can be drawn of it so far, from the foot to the top; the whole profile when nothing is missing. */
  stations: Station[]
  /** For each of them, the index of the sheet's station it comes from. */
  from: number[]
  missing: Missing[]
  /** What a turner should know of it, in sentences. */
  notes: string[]
}

/** Sagitta of a bead or a cove over a chord that wide: a half round where more was entered. */
function sagittaOf({ then, sagitta }: SheetStation, width: number, snap: Snap): Partial<Station> {
  if (sagitta === undefined || (then !== 'bead' && then !== 'cove')) return {}
  const size = snap === 'none' ? sagitta : snappedSize(sagitta, snap)
  if (nm(Math.max(size, sagitta)) * 2 > nm(width)) return {}
  return then === 'bead' ? { rise: size } : { depth: size }
}

/** A station whose position may not be known yet: not a number then, at one place with nothing. */
function draftStation(sheet: Sheet, gathered: GatheredStation, at: number | undefined, snap: Snap): Station {
  const { index, diameter } = gathered
  const { name, then, check } = sheet.stations[index]!
  return {
    at: at ?? Number.NaN,
    ...(diameter && { diameter: snappedSize(diameter.mean, snap) }),
    then: index === sheet.stations.length - 1 ? 'straight' : then,
    ...(name !== undefined && name.trim() !== '' && { name: name.trim() }),
    ...(check && { check }),
  }
}

/**
 * The stations with their squares' sides: as entered, else as the caliper read at the square's own station, where that
 * closes no turned span and so can only have read across the flats.
 */
function withSides({ stations }: Sheet, drafts: Station[], snap: Snap): Station[] {
  return drafts.map((draft, i) => {
    if (draft.then !== 'square') return draft
    const { diameter, ...square } = draft
    const side = stations[i]!.side
    if (needsDiameter(drafts, i))
      return side === undefined ? draft : { ...draft, side: snappedSize(side, snap) }
    const across = side === undefined ? diameter : snappedSize(side, snap)
    return across === undefined ? square : { ...square, side: across }
  })
}

function missingOf(drafts: Station[], wrong: readonly number[]): Missing[] {
  return drafts.flatMap((draft, index): Missing[] => {
    const lacks: [Missing['what'], boolean][] = [
      ['at', Number.isNaN(draft.at) || (index === 0 && draft.at !== 0)],
      ['order', wrong.includes(index)],
      ['diameter', draft.diameter === undefined && needsDiameter(drafts, index)],
      ['side', draft.then === 'square' && draft.side === undefined],
    ]
    return lacks.filter(([, is]) => is).map(([what]) => ({ index, what }))
  })
}

/** The stations at those indices with the spans between them; a span that lacks what it needs is drawn straight. */
function joined(sheet: Sheet, drafts: Station[], indices: readonly number[], snap: Snap): Station[] {
  return indices.map((i, k) => {
    const [draft, next] = [drafts[i]!, indices[k + 1]]
    const { side, ...plain } = { ...draft, then: 'straight' as const }
    if (next === undefined || samePlace(draft.at, drafts[next]!.at)) return plain
    if (draft.then === 'square') return side === undefined ? plain : draft
    if (next !== i + 1) return plain
    return { ...draft, ...sagittaOf(sheet.stations[i]!, drafts[next]!.at - draft.at, snap) }
  })
}

/** Those that can be drawn: the ones left without a diameter they need go, which may leave others wanting. */
function drawable(
  sheet: Sheet,
  drafts: Station[],
  indices: number[],
  snap: Snap,
): { stations: Station[]; from: number[] } {
  const stations = joined(sheet, drafts, indices, snap)
  const from = indices.filter(
    (_, k) => stations[k]!.diameter !== undefined || (stations.length > 1 && !needsDiameter(stations, k)),
  )
  return from.length === indices.length ? { stations, from } : drawable(sheet, drafts, from, snap)
}

/**
 * The profile that the sheet tells: at each station the mean over the originals of the position from the foot as it
 * was made, and of the diameter that counts, both on the steps of `snap` (default none). What is missing is named
 * and left out of the drawing; when nothing is missing, station i of the sheet is station i of the profile.
 */
export function profileOfSheet(sheet: Sheet, { snap = 'none' }: { snap?: Snap } = {}): ProfileOfSheet {
  const gathered = gatheredStations(sheet)
  const measured = gathered.map(({ at }) => at?.mean)
  const wrong = outOfOrder(measured)
  const sound = measured.map((at, i) => (wrong.includes(i) ? undefined : at))
  const { positions, unsnapped } = snappedPositions(sound, snap)
  const read = gathered.map((station, i) => draftStation(sheet, station, positions[i] ?? measured[i], snap))
  const drafts = withSides(sheet, read, snap)
  const placed = positions.flatMap((at, i) => (at === undefined ? [] : [i]))
  return {
    ...drawable(sheet, drafts, placed, snap),
    missing: missingOf(drafts, wrong),
    notes: sheetNotes(sheet, { gathered, drafts, wrong, unsnapped }),
  }
}

/** Tolerances that the originals themselves kept, mm. */
export interface OfferedTolerance {
  /** By station of the sheet: how far the originals lie above and below the profile's diameter. */
  stations: { index: number; plus: number; minus: number }[]
  /** The greatest departure of any diameter, of any position, of the whole length; absent where two did not tell it. */
  diameter?: number
  position?: number
  length?: number
}

/** How far the greatest and the least lie above and below a target; absent where fewer than two tell, or all agree. */
function departure(
  spread: GatheredStation['at'],
  target: number | undefined,
): { plus: number; minus: number } | undefined {
  if (!spread || target === undefined || spread.n < 2 || nm(spread.range) === 0) return undefined
  const over = (mm: number): number => mmOfNm(Math.max(0, nm(mm)))
  return { plus: over(spread.greatest - target), minus: over(target - spread.least) }
}

const greatest = (found: readonly ({ plus: number; minus: number } | undefined)[]): number | undefined => {
  const all = found.flatMap((d) => (d ? [d.plus, d.minus] : []))
  return all.length > 0 ? Math.max(...all) : undefined
}

/**
 * The range among the originals, offered as tolerance about the profile that `profileOfSheet` makes of them with
 * the same snap: what the hand that made them allowed itself. A range counts from two originals on.
 */
export function offeredTolerance(sheet: Sheet, { snap = 'none' }: { snap?: Snap } = {}): OfferedTolerance {
  const gathered = gatheredStations(sheet)
  const { positions } = snappedPositions(
    gathered.map(({ at }) => at?.mean),
    snap,
  )
  const stations = gathered.flatMap(({ index, diameter }) => {
    const found = departure(diameter, diameter && snappedSize(diameter.mean, snap))
    return found ? [{ index, ...found }] : []
  })
  const places = gathered.map(({ at }, i) => departure(at, positions[i]))
  const [diameter, position, length] = [greatest(stations), greatest(places), greatest(places.slice(-1))]
  return {
    stations,
    ...(diameter !== undefined && { diameter }),
    ...(position !== undefined && { position }),
    ...(length !== undefined && { length }),
  }
}
