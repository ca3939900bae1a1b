import { nm } from '../../shared/units/length.ts'

/** One sheet of a drawing that is larger than the paper. All in mm of the drawing. */
export interface Tile {
  /** Rows are letters, columns numbers: `A1` is at the foot, on top. */
  label: string
  row: number
  column: number
  x: number
  y: number
}

export interface Tiling {
  tiles: Tile[]
  rows: number
  columns: number
}

/** Shared by neighbouring sheets, mm; they are joined in the middle of it. */
export const OVERLAP_MM = 10

const sheets = (content: number, window: number): number =>
  nm(content) <= nm(window) ? 1 : 1 + Math.ceil(nm(content - window) / nm(window - OVERLAP_MM))

/** A length of a strip that is shorter has no room for its headings, mm. */
const SHORT_MM = 100

/** How long each length of a strip is, mm: all alike where the last of full ones would be too short to be read. */
export function stripWindow(length: number, window: number): number {
  const count = sheets(length, window)
  const last = length - (count - 1) * (window - OVERLAP_MM)
  if (count === 1 || last >= SHORT_MM) return window
  // Upwards, so that rounding asks for no further length.
  return Math.ceil((1000 * (length + (count - 1) * OVERLAP_MM)) / count) / 1000
}

/** `A` … `Z`, `AA` … for rows. */
const rowLetters = (row: number): string =>
  (row < 26 ? '' : rowLetters(Math.floor(row / 26) - 1)) + String.fromCharCode(65 + (row % 26))

/** The sheets that cover a drawing of `width` × `height`, each showing `window`, neighbours overlapping. */
export function tilesOf(width: number, height: number, window: { width: number; height: number }): Tiling {
  const columns = sheets(width, window.width)
  const rows = sheets(height, window.height)
  const tiles: Tile[] = []
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      const x = column * (window.width - OVERLAP_MM)
      const y = row * (window.height - OVERLAP_MM)
      tiles.push({ label: `${rowLetters(row)}${column + 1}`, row, column, x, y })
    }
  }
  return { tiles, rows, columns }
}
