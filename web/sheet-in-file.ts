import type { OtherDraft } from './drafts.ts'
import { inUnits } from './job-entries.ts'
import type { EnteredStation } from './job-file.ts'
import type { LibraryFile } from './library-file.ts'
import { type EnteredSheet, sheetOf } from './sheet-file.ts'
import type { SheetHand } from './sheet-hand.ts'
import { type LiveSheet, stationsOfSheet } from './sheet-live.ts'

/** The file with another sheet in it; its profile follows, as far as it is whole and was not drawn on by hand. */
export function withSheet(
  file: LibraryFile,
  sheet: EnteredSheet,
  live: LiveSheet,
  { byHand, asTolerance }: Pick<SheetHand, 'byHand' | 'asTolerance'>,
): LibraryFile {
  const inItsUnits = file.units === sheet.units ? file : inUnits(file, sheet.units)
  const stations =
    byHand || live.lacking.length > 0
      ? inItsUnits.profile.stations
      : stationsOfSheet(live, sheet, asTolerance)
  return { ...inItsUnits, sheet: { ...sheet }, profile: { ...inItsUnits.profile, stations } }
}

/** A draft told by the stations on its sheet, which are more than those that can be drawn. */
export function asMeasured(other: OtherDraft<LibraryFile>): OtherDraft<LibraryFile> {
  const { file } = other.draft
  const stations = sheetOf(file.sheet, file.units).stations as EnteredStation[]
  return { ...other, draft: { ...other.draft, file: { ...file, profile: { stations } } } }
}

/** The original and the place of a figure, told by its path in the sheet; what the path does not tell is left out. */
export function placeOfPath(path: string): { original?: number; place?: number } {
  const [, original, read] = /originals\[(\d+)\]\.readings\[(\d+)\]/.exec(path) ?? []
  const place = read ?? /^stations\[(\d+)\]/.exec(path)?.[1]
  return {
    ...(original !== undefined && { original: Number(original) }),
    ...(place !== undefined && { place: Number(place) }),
  }
}
