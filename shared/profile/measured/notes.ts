import { lengthText, mmOfNm, nm, styleOf } from '../../units/length.ts'
import type { Station } from '../profile.ts'
import type { GatheredStation } from './gathered.ts'
import { footApart, fromStart, startFromFoot } from './positions.ts'
import type { Original, Sheet } from './sheet.ts'

/** What has been made of a sheet so far. */
interface Made {
  gathered: GatheredStation[]
  drafts: Station[]
  /** Indices of stations that do not lie between their neighbours. */
  wrong: number[]
  /** Indices of stations that lie too near to one another for the snap. */
  unsnapped: number[]
}

/**
 * Share of its diameter by which a station can be out of round, at most, by drying: tangential less radial shrinkage
 * from green to oven-dry stays below 8 % in every wood of the seed table (Wood Handbook FPL-GTR-282, tables 4-3, 4-4).
 */
const OVAL_MOST = 0.08

type Say = (mm: number) => string

/** `station 3 (foot bead)`, counted as everywhere from 0 at the foot. */
function stationText({ stations }: Sheet, index: number): string {
  const name = stations[index]?.name?.trim()
  return name ? `station ${index} (${name})` : `station ${index}`
}

const listText = (words: readonly string[]): string =>
  words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`

const nameOf = (sheet: Sheet, { name }: Original, k: number): string =>
  name.trim() || (sheet.originals.length === 1 ? 'the original' : `original ${k + 1}`)

/** How the tape started on one original: not at the foot, or at two places at once. */
function startNotes(sheet: Sheet, original: Original, who: string, say: Say): string[] {
  const atFoot = fromStart(sheet, original)[0]
  const { datum } = original
  if (atFoot === undefined) {
    const lost = datum !== undefined && startFromFoot(original, undefined) === undefined
    const place = datum?.name.trim() || 'datum'
    return lost ? [`On ${who}, enter how far the ${place} lies from the foot, or read the foot from it.`] : []
  }
  if (!datum) {
    return atFoot === 0
      ? []
      : [`On ${who} the tape reads ${say(mmOfNm(atFoot))} at the foot; positions are counted from there.`]
  }
  const found = footApart(sheet, original)
  return found && found.apart !== 0 ? [apartNote(original, who, found, say)] : []
}

/** The foot and the datum tell one length twice, and differently. */
function apartNote(
  { datum }: Original,
  who: string,
  { apart, unread }: { apart: number; unread: boolean },
  say: Say,
): string {
  const [place, from] = [datum?.name.trim() || 'datum', datum?.fromFoot ?? 0]
  if (unread) {
    return `On ${who} the lowest station read lies ${say(Math.abs(apart))} ${apart > 0 ? 'above' : 'below'} the foot, if the ${place} is ${say(from)} from it: read the foot too, or measure that length again.`
  }
  return `On ${who} the foot reads ${say(Math.abs(from - apart))} from the ${place}, which is entered as ${say(from)} from the foot: measure that length again. Positions are counted by the ${say(from)}.`
}

/** A worn foot that was no plain cylinder cannot be carried down as it was. */
function wearNote(sheet: Sheet, { drafts }: Made, say: Say): string[] {
  const worn = sheet.originals.map(({ wear }) => wear ?? 0).filter((wear) => nm(wear) > 0)
  const [foot, next] = drafts
  if (worn.length === 0 || !foot || !next) return []
  const plain = foot.then === 'straight' && nm(foot.diameter ?? 0) === nm(next.diameter ?? 0)
  if (plain || foot.then === 'square') return []
  return [
    `The foot is worn by up to ${say(Math.max(...worn))}: its diameter is carried down to where the foot was, and the span at the foot is drawn longer by it. Where it tapered or was rounded there, change the diameter at the foot.`,
  ]
}

/** Stations read on fewer originals than others, whose mean leans on those few. */
function fewNotes(sheet: Sheet, { gathered }: Made): string[] {
  const all = sheet.originals.length
  if (all < 2) return []
  return (['at', 'diameter'] as const).flatMap((field) => {
    const few = gathered.filter((station) => (station[field]?.n ?? all) < all)
    if (few.length === 0) return []
    const places = listText(few.map(({ index }) => stationText(sheet, index)))
    const what = field === 'at' ? 'position' : 'diameter'
    return [`Not every original tells the ${what} at ${places}: the mean there is of those that do.`]
  })
}

function ovalNotes(sheet: Sheet, say: Say): string[] {
  return sheet.originals.flatMap((original, k) =>
    original.readings.flatMap(({ diameters: [a, b] }, i) => {
      if (a === undefined || b === undefined) return []
      const apart = mmOfNm(Math.abs(nm(a) - nm(b)))
      if (apart <= Math.max(a, b) * OVAL_MOST) return []
      return [
        `On ${nameOf(sheet, original, k)} the two diameters at ${stationText(sheet, i)} differ by ${say(apart)}, more than wood ovals by drying: measure them again.`,
      ]
    }),
  )
}

/** Arcs entered deeper than a half round, and shapes on the first station of a step. */
function shapeNotes(sheet: Sheet, { drafts }: Made, say: Say): string[] {
  return sheet.stations.flatMap(({ then, sagitta }, i) => {
    const [draft, next] = [drafts[i]!, drafts[i + 1]]
    if (!next || then === 'straight') return []
    const width = next.at - draft.at
    if (nm(width) === 0) {
      return [
        `The ${then} at ${stationText(sheet, i)} is left out: both sides of a step stand at one position.`,
      ]
    }
    const arc = then === 'bead' || then === 'cove'
    if (!arc || sagitta === undefined || !(width > 0) || nm(sagitta) * 2 <= nm(width)) return []
    return [
      `The ${then} at ${stationText(sheet, i)} is drawn a half round, ${say(width / 2)} from its chord: ${say(sagitta)} is more than its width of ${say(width)} allows.`,
    ]
  })
}

/** What a turner should know of a profile made of a sheet, in sentences. */
export function sheetNotes(sheet: Sheet, made: Made): string[] {
  const say: Say = (mm) => lengthText(mm, styleOf(sheet.units))
  const named = (indices: readonly number[]): string => listText(indices.map((i) => stationText(sheet, i)))
  return [
    ...sheet.originals.flatMap((original, k) => startNotes(sheet, original, nameOf(sheet, original, k), say)),
    ...made.wrong.map(
      (i) =>
        `The position of ${stationText(sheet, i)}, ${say(made.drafts[i]!.at)} from the foot, does not lie between its neighbours: measure it again.`,
    ),
    ...wearNote(sheet, made, say),
    ...fewNotes(sheet, made),
    ...ovalNotes(sheet, say),
    ...shapeNotes(sheet, made, say),
    ...(made.unsnapped.length > 0
      ? [
          `Positions at ${named(made.unsnapped)} stay as measured: they lie nearer together than the snap tells.`,
        ]
      : []),
  ]
}
