import { Problem } from '../shared/problem.ts'
import { layoutLines } from '../shared/profile/measured/layout-lines.ts'
import { nm, readLength } from '../shared/units/length.ts'
import { enteredLength } from './entered-stations.ts'
import { type EnteredSheet, insertedPlace, readingAt, withPlace, withReading } from './sheet-file.ts'

/** Regular lines as asked for: the ends as read on the tape, the pitch between. */
export interface LinesAsked {
  from: string
  to: string
  pitch: string
}

const fieldNames: Record<keyof LinesAsked, string> = { from: 'From', to: 'To', pitch: 'Every' }

/** Nanometres of what is read at each place of an original. */
const placesRead = (sheet: EnteredSheet, original: number): number[] =>
  sheet.stations.map((_, i) => {
    const { at } = readingAt(sheet, original, i)
    return at === undefined ? Number.NaN : nm(readLength(at, sheet.units) ?? Number.NaN)
  })

/** The sheet with a place for each line, its position filled in; a place that stands on a line stays as it is. */
function withLinesAt(sheet: EnteredSheet, original: number, lines: readonly number[]): EnteredSheet {
  const down = sheet.originals[original]?.datum?.towards === 'foot'
  let made = sheet
  for (const line of lines) {
    const read = placesRead(made, original)
    if (read.includes(nm(line))) continue
    const above = read.findIndex((place) => (down ? place < nm(line) : place > nm(line)))
    const place = above < 0 ? read.length : above
    const then = made.stations[place - 1]?.then ?? 'straight'
    if (above > 0 && then !== 'straight' && then !== 'curve')
      throw new Problem(
        'bad-input',
        `A line would cut the ${then} above station ${place - 1}: lay lines out on plain lengths only.`,
      )
    made = withReading(insertedPlace(made, place), original, place, { at: enteredLength(line, made.units) })
    if (then === 'curve' && above > 0) made = withPlace(made, place, { then })
  }
  return made
}

/**
 * The sheet with regular lines laid out on an original, read as its tape reads, so that only diameters are left to
 * type. Both ends get a place too.
 * @throws Problem `bad-input` that says what is not right, for a person
 */
export function withLines(sheet: EnteredSheet, original: number, asked: LinesAsked): EnteredSheet {
  if (sheet.way === 'span')
    throw new Problem(
      'bad-input',
      'Lines have positions of their own: have positions read “from one place” for them.',
    )
  const [from, to, pitch] = (['from', 'to', 'pitch'] as const).map((field) => {
    const mm = readLength(asked[field], sheet.units)
    if (mm === undefined)
      throw new Problem('bad-input', `${fieldNames[field]}: “${asked[field]}” is no length.`)
    return mm
  }) as [number, number, number]
  const between = layoutLines(Math.min(from, to), Math.max(from, to), pitch)
  return withLinesAt(sheet, original, [Math.min(from, to), ...between, Math.max(from, to)])
}
