import { chosenDiameter, outOfRound } from '../../shared/profile/measured/diameter.ts'
import type { ShapeName } from '../../shared/profile/profile.ts'
import { nm, readLength } from '../../shared/units/length.ts'
import { lengthEntryText } from '../entry.ts'
import type { Entered } from '../job-file.ts'
import { length } from '../session.ts'
import type { EnteredPlace, EnteredReading, EnteredSheet } from '../sheet-file.ts'

/** The figures of one place. */
export type FigureName = 'at' | 'first' | 'second' | 'size'

/** A place as the person has it in hand. */
export interface PlaceInHand {
  sheet: EnteredSheet
  original: number
  /** Index of the place; one beyond either end for a place that is not on the sheet yet. */
  place: number
  entered: EnteredPlace
  reading: EnteredReading
}

interface Size {
  field: 'sagitta' | 'side'
  label: string
  hint?: string
}

const sizes: Partial<Record<ShapeName, Size>> = {
  bead: { field: 'sagitta', label: 'Rise', hint: 'half round' },
  cove: { field: 'sagitta', label: 'Depth', hint: 'half round' },
  square: { field: 'side', label: 'Side' },
}

/** What sizes a span beyond the diameters at its ends; nothing where these do. */
export const sizeOf = ({ then = 'straight' }: EnteredPlace): Size | undefined => sizes[then]

/** A figure as it was typed. */
export function figureText(
  { entered, reading: { at, diameters } }: Pick<PlaceInHand, 'entered' | 'reading'>,
  figure: FigureName,
): string {
  const size = sizeOf(entered)
  const value: Entered | undefined = {
    at,
    first: diameters[0],
    second: diameters[1],
    size: size && entered[size.field],
  }[figure]
  return lengthEntryText(value)
}

/** Where a figure stands in the sheet that is sent. */
export function figurePath({ original, place, entered, reading }: PlaceInHand, figure: FigureName): string {
  const index = Math.max(0, place)
  const read = `originals[${original}].readings[${index}]`
  if (figure === 'at') return `${read}.at`
  if (figure === 'size') return `stations[${index}].${sizeOf(entered)?.field}`
  // Empty diameters are not sent: a second one alone is read as the first.
  return `${read}.diameters[${figure === 'second' && reading.diameters[0] !== '' ? 1 : 0}]`
}

/** Where the places of the original in hand lie, and where all originals together have the one in hand; mm from the foot. */
interface Lies {
  positions: readonly (number | undefined)[]
  expected?: number | undefined
  /** The position is being typed: it is not told yet where it lies wrong. */
  typing: boolean
}

/** What positions are counted from, and where this one lies; told when it does not lie above the one below. */
export function whereText(
  { sheet, original, place, reading }: PlaceInHand,
  { positions, expected, typing }: Lies,
): string {
  const { datum, wear } = sheet.originals[original] ?? {}
  const here = place < 0 ? undefined : positions[place]
  const below = positions
    .slice(0, Math.max(0, place))
    .filter((mm) => mm !== undefined)
    .at(-1)
  if (here !== undefined && !typing && below !== undefined && nm(here) < nm(below))
    return `▲ ${length(here, sheet.units)} from the foot lies below the station before it, ${length(below, sheet.units)}.`
  if (here !== undefined && (datum || sheet.way === 'span' || wear))
    return `${length(here, sheet.units)} from the foot`
  if (sheet.originals.length > 1 && reading.at === undefined && expected !== undefined)
    return `${length(expected, sheet.units)} from the foot on the others`
  if (sheet.way === 'span') return 'from the station before'
  return datum ? `from the ${datum.name || 'datum'} towards the ${datum.towards}` : ''
}

/** By how much two diameters of one place differ, and which counts; nothing to say of one alone. */
export function roundText({ sheet: { units, choice }, reading: { diameters } }: PlaceInHand): string {
  const read = diameters.flatMap((text) => readLength(text, units) ?? [])
  const [chosen, by] = [chosenDiameter(read, choice), outOfRound(read)]
  return chosen === undefined || by === undefined
    ? ''
    : `out of round by ${length(by, units)}; ${length(chosen, units)} counts`
}
