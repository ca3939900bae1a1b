import { BENCH_PT, fitted, ink, line } from './print.ts'
import { spreadPlaces, weightiest } from './spread.ts'

/** Runs `draw` with the page turned so that text reads upwards from x, y (points). */
export function upright(doc: PDFKit.PDFDocument, x: number, y: number, draw: () => void): void {
  doc.save().rotate(-90, { origin: [x, y] })
  draw()
  doc.restore()
}

/** Type that figures are written in, points, and the distance from one to the next, mm. */
export interface FigureType {
  size: number
  pitch: number
}

/** Large enough for arm's length in bad light where there is room, else the least for the bench. */
const types: [FigureType, FigureType] = [
  { size: 13, pitch: 5.6 },
  { size: BENCH_PT, pitch: 4.4 },
]

/** A place whose figures are written upwards: `lead` plain, `figure` bold, `name` plain and cut short where it must be. */
export interface UprightFigure {
  /** Where it belongs, mm along the drawing. */
  x: number
  weight: number
  lead: string
  figure: string
  name: string
}

const SPACES = '   '
const wordsOf = (doc: PDFKit.PDFDocument, { size }: FigureType, { lead, figure }: UprightFigure) => {
  const leadWidth = lead === '' ? 0 : ink(doc, 'plain', size).widthOfString(`${lead}${SPACES}`)
  return { leadWidth, width: leadWidth + ink(doc, 'bold', size).widthOfString(figure) }
}

/** The figures that can be written between two places, the type they are written in, and where each stands, mm. */
export function placedFigures(
  doc: PDFKit.PDFDocument,
  figures: UprightFigure[],
  [from, to]: [number, number],
  room: number,
): { type: FigureType; placed: { figure: UprightFigure; place: number }[]; unwritten: number } {
  const most = (type: FigureType) =>
    Math.max(Math.floor((to - type.pitch - (from + 1.5 * type.pitch)) / type.pitch) + 1, 1)
  const fits = (type: FigureType) =>
    figures.length <= most(type) && figures.every((one) => wordsOf(doc, type, one).width <= room)
  const type = fits(types[0]) ? types[0] : types[1]
  const shown = weightiest(figures, most(type))
  const places = spreadPlaces(
    shown.map(({ x }) => x),
    type.pitch,
    from + 1.5 * type.pitch,
    to - type.pitch,
  )
  return {
    type,
    placed: shown.flatMap((figure, i) => (places[i] === undefined ? [] : [{ figure, place: places[i] }])),
    unwritten: figures.length - Math.min(shown.length, places.length),
  }
}

/**
 * Writes one figure upwards with its foot at x, y: lead, figure, name. With `hangs` it ends there instead, the
 * name before the figure. `room` and places in points.
 */
export function writeUpright(
  doc: PDFKit.PDFDocument,
  figure: UprightFigure,
  type: FigureType,
  { x, y, room, hangs = false }: { x: number; y: number; room: number; hangs?: boolean },
): void {
  const { leadWidth, width } = wordsOf(doc, type, figure)
  const gap = ink(doc, 'plain', type.size).widthOfString(SPACES)
  const left = room - width - gap
  // A long name is written smaller before it is cut short.
  const nameSize = doc.widthOfString(figure.name) <= left ? type.size : BENCH_PT
  ink(doc, 'plain', nameSize)
  const name = figure.name === '' || left < 24 ? '' : fitted(doc, figure.name, left)
  const named = name === '' ? 0 : doc.widthOfString(name) + gap
  const [column, start] = [x - type.size, hangs ? y + width + named : y]
  upright(doc, column, start, () => {
    const lead = column + (hangs ? named : 0)
    ink(doc, 'plain', type.size)
    if (figure.lead) line(doc, figure.lead, lead, start)
    ink(doc, 'plain', nameSize)
    // On one base line with the figure: DejaVu’s lies 0.93 of the size below the top of a line.
    const down = start + 0.93 * (type.size - nameSize)
    if (name) line(doc, name, hangs ? column : column + width + gap, down)
    ink(doc, 'bold', type.size)
    line(doc, figure.figure, lead + leadWidth, start)
  })
}
