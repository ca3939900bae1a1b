import type { RackBoard } from '../shared/contract/board.ts'
import type { Defect } from '../shared/cutting/board.ts'
import type { Breach } from '../shared/problem.ts'
import { lengthText, nm, readLength, styleOf, type Units } from '../shared/units/length.ts'
import { enteredNumber, pathSteps } from './entry.ts'

/** A defect as written: along the board from the butt end, and across it from the edge where it is not as wide. */
export interface DefectRow {
  kind?: string
  from?: string
  to?: string
  low?: string
  high?: string
}

/** A board of the rack as written in its form. */
export interface StockEntry {
  key: string
  units: Units
  species?: string
  width?: string
  length?: string
  thickness?: string
  count?: string
  /** As many as are needed: a board that never runs out. */
  endless?: boolean
  priceOf: 'board-foot' | 'board'
  price?: string
  grade?: string
  moisture?: string
  crook?: string
  heartAcross?: string
  heartBelow?: string
  trimmed?: boolean
  from?: string
  notes?: string
  defects: DefectRow[]
}

export const freshStock = (units: Units, species?: string): StockEntry => ({
  key: '',
  units,
  priceOf: 'board-foot',
  defects: [],
  ...(species && { species }),
})

/** A length as it would be written, in the units where that is exact, else in millimetres. */
function writtenLength(mm: number, units: Units): string {
  const text = lengthText(mm, styleOf(units))
  const read = readLength(text, units)
  return read !== undefined && nm(read) === nm(mm) ? text : `${mm} mm`
}

/** A board of the rack, to be changed: every figure reads back as it is. */
export function stockEntryOf(board: RackBoard, units: Units): StockEntry {
  const written = (mm: number | undefined) => (mm === undefined ? undefined : writtenLength(mm, units))
  const figure = (value: number | null | undefined) =>
    value === undefined || value === null ? undefined : String(value)
  const { key, width, length, thickness, count, price, pricePerBoardFoot, crook, heart, defects = [] } = board
  return {
    key,
    units,
    species: board.species,
    width: written(width),
    length: written(length),
    thickness: written(thickness),
    count: figure(count),
    endless: count === null,
    priceOf: price === undefined ? 'board-foot' : 'board',
    price: figure(price ?? pricePerBoardFoot),
    grade: board.grade,
    moisture: figure(board.moisture),
    crook: written(crook),
    heartAcross: written(heart?.across),
    heartBelow: written(heart?.below),
    trimmed: board.trimmed,
    from: board.from,
    notes: board.notes,
    defects: defects.map(({ kind, from, to, across }) => ({
      kind,
      from: written(from),
      to: written(to),
      low: written(across?.[0]),
      high: written(across?.[1]),
    })),
  }
}

/** The same board once more under another name, for one that is much like it; its defects are its own. */
export const alikeEntry = (board: RackBoard, units: Units): StockEntry => ({
  ...stockEntryOf(board, units),
  key: '',
  defects: [],
  crook: undefined,
})

/** What is written next after a board was stored: its wood, thickness, moisture and load are likely the same. */
export const nextStock = ({
  units,
  species,
  thickness,
  moisture,
  grade,
  price,
  priceOf,
  from,
}: StockEntry): StockEntry => ({
  ...freshStock(units),
  priceOf,
  ...Object.fromEntries(
    Object.entries({ species, thickness, moisture, grade, price, from }).filter(
      ([, value]) => value !== undefined,
    ),
  ),
})

const filled = (text: string | undefined): string | undefined => text?.trim() || undefined

function sentDefect({ kind, from, to, low, high }: DefectRow): Record<string, unknown> {
  const across = filled(low) !== undefined || filled(high) !== undefined ? [low ?? '', high ?? ''] : undefined
  return { from: from ?? '', to: to ?? '', kind: filled(kind), across }
}

/** The board as it is sent: lengths as written, counts and prices as numbers, nothing where nothing was written. */
export function sentStock(entry: StockEntry): Record<string, unknown> & { key: string } {
  const { key, units, priceOf, heartAcross, heartBelow, defects } = entry
  const price = enteredNumber(entry.price ?? '')
  const hasHeart = filled(heartAcross) !== undefined || filled(heartBelow) !== undefined
  return JSON.parse(
    JSON.stringify({
      key: key.trim(),
      units,
      species: filled(entry.species),
      width: entry.width ?? '',
      length: entry.length ?? '',
      thickness: entry.thickness ?? '',
      count: entry.endless ? null : enteredNumber(entry.count ?? ''),
      ...(priceOf === 'board' ? { price } : { pricePerBoardFoot: price }),
      grade: filled(entry.grade),
      moisture: enteredNumber(entry.moisture ?? ''),
      crook: filled(entry.crook),
      heart: hasHeart ? { across: heartAcross ?? '', below: heartBelow ?? '' } : undefined,
      trimmed: entry.trimmed || undefined,
      from: filled(entry.from),
      notes: filled(entry.notes),
      defects: defects.length > 0 ? defects.map(sentDefect) : undefined,
    }),
  )
}

const FIELDS: Record<string, string> = {
  pricePerBoardFoot: 'price',
  'heart.across': 'heartAcross',
  'heart.below': 'heartBelow',
}

/** Where a refusal stands in the form: the paths of a sent board as those of its entry. */
export const entryBreach = ({ path, message }: Breach): Breach => ({
  path: FIELDS[path] ?? path.replace(/\.across\[0\]$/, '.low').replace(/\.across(\[1\])?$/, '.high'),
  message,
})

const WORDS: Record<string, string> = {
  key: 'Name on the board',
  species: 'Wood',
  count: 'How many alike',
  heartAcross: 'Heart, across',
  heartBelow: 'Heart, below the face',
  from: 'Where it came from',
  low: 'across, from',
  high: 'to across',
}

/**
 * What a field of a board is called on screen.
 * @example stockField('defects[1].low') // 'Defect 2, across, from'
 */
export function stockField(path: string): string {
  const [first = '', second, third] = pathSteps(path)
  if (first === 'defects' && typeof second === 'number') {
    const field = String(third ?? '')
    return `Defect ${second + 1}${field ? `, ${field === 'from' ? 'from' : (WORDS[field] ?? field)}` : ''}`
  }
  const name = String(first)
  return name ? (WORDS[name] ?? `${name.charAt(0).toUpperCase()}${name.slice(1)}`) : 'The board'
}

/** Words of a defect and where it lies, lengths by `text`: `knot, 10 in to 12 in, across 0 in to 2 in`. */
export function defectText({ kind, from, to, across }: Defect, text: (mm: number) => string): string {
  const wide = across ? `, across ${text(across[0])} to ${text(across[1])}` : ''
  return `${kind ?? 'defect'}, ${text(from)} to ${text(to)}${wide}`
}
