import { type Breach, badInput } from '../../shared/problem.ts'
import {
  inches,
  lengthText,
  nm,
  READABLE_LENGTHS,
  readLength,
  styleOf,
  type Units,
} from '../../shared/units/length.ts'

/** Paper from a roll, mm: sheets are as wide as the roll and as long as they need to be, up to `longest`. */
export interface Roll {
  width: number
  longest: number
}

export type Paper = 'letter' | 'a4' | Roll

/** What paper can be asked for by name. */
export const papers = ['letter', 'a4', 'roll'] as const

/** As asked for: lengths of a roll are text, those without a unit in the units of the shop. */
export interface PaperAsked {
  paper?: (typeof papers)[number]
  width?: string
  length?: string
}

/** A side of a sheet, mm, in portrait. Letter: ANSI/ASME Y14.1 size A; A4: ISO 216. */
const sizes = { letter: [inches(8.5), inches(11)], a4: [210, 297] } as const

/** Narrowest roll that takes the heading of a print, and the widest plotters have, mm. Common practice, no source. */
const NARROWEST = 200
const WIDEST = 2_000
/** No page of a PDF is longer: 14,400 units of 1/72 in (ISO 32000-1, annex C; from memory). */
const LONGEST = inches(200)

export const isRoll = (paper: Paper): paper is Roll => typeof paper === 'object'

/** Width and height of a sheet with words on it, mm. One from a roll is as wide as the roll. */
export function sheetSize(paper: Paper, layout: 'portrait' | 'landscape'): { width: number; height: number } {
  if (isRoll(paper)) return { width: paper.width, height: sizes.letter[1] }
  const [short, long] = sizes[paper]
  return layout === 'portrait' ? { width: short, height: long } : { width: long, height: short }
}

function rollLength(
  written: string,
  path: string,
  [least, most]: [number, number],
  units: Units,
): number | Breach {
  const mm = readLength(written, units)
  const read = `; read ${JSON.stringify(written.slice(0, 60))}`
  if (mm === undefined) return { path, message: `must be a length: ${READABLE_LENGTHS}${read}` }
  if (nm(mm) >= nm(least) && nm(mm) <= nm(most)) return mm
  const [from, to] = [least, most].map((limit) => lengthText(limit, styleOf(units)))
  return { path, message: `must lie between ${from} and ${to}${read}` }
}

/**
 * The paper asked for, else what the shop's units suggest. `before` stands before the names of fields in what is
 * said of them.
 * @throws Problem `bad-input` that names `width` or `length`, what was read and what is allowed
 */
export function paperOf({ paper, width, length }: PaperAsked, units: Units, before = ''): Paper {
  if (paper !== 'roll') {
    const beside = [
      ['width', width],
      ['length', length],
    ].flatMap(([name, given]) => (given === undefined ? [] : [name]))
    if (beside.length > 0) {
      const message = `goes with the paper roll only; the paper is ${paper ?? 'not said'}`
      throw badInput(beside.map((name) => ({ path: `${before}${name}`, message })))
    }
    return paper ?? (units === 'mm' ? 'a4' : 'letter')
  }
  const wide =
    width === undefined
      ? {
          path: `${before}width`,
          message: 'is missing; the width of the roll is needed, e.g. 36 in or 914 mm',
        }
      : rollLength(width, `${before}width`, [NARROWEST, WIDEST], units)
  const longest =
    length === undefined ? LONGEST : rollLength(length, `${before}length`, [NARROWEST, LONGEST], units)
  if (typeof wide === 'number' && typeof longest === 'number') return { width: wide, longest }
  throw badInput([wide, longest].filter((one): one is Breach => typeof one !== 'number'))
}
