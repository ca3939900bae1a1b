import { createRequire } from 'node:module'
import PDFDocument from 'pdfkit'
import type { Piece } from '../../shared/piece.ts'
import type { Plan } from '../../shared/plan.ts'
import type { Shop } from '../../shared/shop.ts'
import { type LengthStyle, MM_PER_INCH } from '../../shared/units/length.ts'
import { batchText, partText } from './figures.ts'
import { isRoll, type Paper, sheetSize } from './paper.ts'

/** How a print is to look; nothing in here changes a figure. */
export interface PrintOptions {
  style: LengthStyle
  paper: Paper
  shop: Shop
  /** Pieces of a started batch, for the labels. */
  pieces?: Pick<Piece, 'number' | 'spare'>[]
  /** Legs to a stand of a matching set; as many as its number suggests when absent. */
  legs?: number
  /** The wood's own name; without it the species key is written out. */
  wood?: string
  /** What is printed, in the heading instead of the quantity and its blanks. */
  batch?: string
  /** What the print is about where that is more than the one job: its name, and a line of words below it. */
  subject?: { name: string; words: string }
  /** When the plan was made, ISO 8601: the print's only date. */
  madeAt?: string
}

/** Where on the page things may stand, in points from the top left corner. */
export interface Box {
  left: number
  right: number
  top: number
  bottom: number
}

/** A document being laid out; `y` is where the next line goes, in points. */
export interface Print {
  doc: PDFKit.PDFDocument
  plan: Plan
  options: PrintOptions
  title: string
  layout: 'portrait' | 'landscape'
  /** Where words may stand on this page. */
  box: Box
  /** Every page's own room, for what goes on all of them at the end. */
  pages: Box[]
  y: number
  /** Drawn on every page when the document is finished, e.g. a check bar. */
  foot?: (print: Print) => void
}

/** Points of a length in mm. */
export const pt = (mm: number): number => (mm * 72) / MM_PER_INCH

/** No printer is asked to reach closer to the edge than this, mm. */
export const MARGIN_MM = 10

/** Words on a wider sheet keep to so much of it, to be read line by line, mm. */
const WORDS_MM = 260

/** Least size of type that is read at the bench, points. */
export const BENCH_PT = 10

export const HEADING_PT = 48
/** Room kept at the foot of each page for what is drawn there, points. */
export const FOOT_PT = pt(9)

const fontFile = createRequire(import.meta.url).resolve
const fonts = {
  plain: 'DejaVuSansCondensed.ttf',
  bold: 'DejaVuSansCondensed-Bold.ttf',
}
export type Face = keyof typeof fonts

/** What a document without a date of its own carries, so that the same plan gives the same bytes. */
const NO_DATE = '2000-01-01T00:00:00Z'

/** Opens a document with its first page. `foot` keeps the lowest 9 mm of each page free and is drawn there. */
export function openPrint(
  title: string,
  plan: Plan,
  options: PrintOptions,
  { layout = 'portrait', foot, sheet }: Partial<Pick<Print, 'layout' | 'foot'>> & { sheet?: Sheet } = {},
): Print {
  const doc = new PDFDocument({
    margin: 0,
    autoFirstPage: false,
    bufferPages: true,
    displayTitle: true,
    lang: 'en',
    info: {
      Title: `${title}: ${plainText(options.subject?.name ?? plan.job.name)}`,
      Author: plainText(options.shop.name),
      Creator: 'Setwright',
      Producer: 'Setwright',
      CreationDate: new Date(options.madeAt ?? (plan.job.due ? `${plan.job.due}T00:00:00Z` : NO_DATE)),
    },
  })
  for (const [name, file] of Object.entries(fonts))
    doc.registerFont(name, fontFile(`dejavu-fonts-ttf/ttf/${file}`))
  neverScaled(doc)
  const print: Print = {
    doc,
    plan,
    options,
    title,
    layout,
    box: { left: 0, right: 0, top: 0, bottom: 0 },
    pages: [],
    y: 0,
    foot,
  }
  newPage(print, sheet)
  return print
}

/** Asks the viewer not to fit the page to the paper: a pattern is only good at its own size. */
function neverScaled(doc: PDFKit.PDFDocument): void {
  const root = (
    doc as unknown as { _root: { data: { ViewerPreferences: { data: Record<string, string> } } } }
  )._root
  root.data.ViewerPreferences.data.PrintScaling = 'None'
}

/** A sheet to draw on, mm. */
export interface Sheet {
  width: number
  height: number
}

/** Starts a page, one for words unless a sheet is given; `print.y` stands below the heading. */
export function newPage(print: Print, sheet?: Sheet): void {
  const { doc, options, layout, foot } = print
  const { width, height } = sheet ?? sheetSize(options.paper, layout)
  doc.addPage({ size: [pt(width), pt(height)], margin: 0 })
  const margin = pt(MARGIN_MM)
  const page = {
    left: margin,
    right: doc.page.width - margin,
    top: margin + HEADING_PT,
    bottom: doc.page.height - margin - (foot ? FOOT_PT : 0),
  }
  print.pages.push(page)
  print.box = sheet ? { ...page } : { ...page, right: wordsRight(print, page) }
  print.y = print.box.top
}

/** Where words end on a page: on a roll well before its edge. */
export const wordsRight = ({ options }: Print, { left, right }: Box): number =>
  isRoll(options.paper) ? Math.min(right, left + pt(WORDS_MM)) : right

/** Makes sure so many points are left on the page, else turns to the next. */
export function ensure(print: Print, height: number): void {
  if (print.y + height > print.box.bottom && print.y > print.box.top) newPage(print)
}

/** Shop, job, quantity and the count of pages go on every page; then the bytes. */
export async function finishPrint(print: Print): Promise<Buffer> {
  const { doc } = print
  const { count } = doc.bufferedPageRange()
  for (let page = 0; page < count; page++) {
    doc.switchToPage(page)
    print.box = print.pages[page]!
    drawHeading(print, page + 1, count)
    print.foot?.(print)
  }
  const chunks: Buffer[] = []
  doc.on('data', (chunk: Buffer) => chunks.push(chunk))
  const done = new Promise<void>((resolve, reject) => doc.on('end', resolve).on('error', reject))
  doc.end()
  await done
  return Buffer.concat(chunks)
}

function drawHeading(print: Print, page: number, pages: number): void {
  const { doc, plan, options, box } = print
  const top = pt(MARGIN_MM)
  const width = box.right - box.left
  const ofPages = `page ${page} of ${pages}`
  ink(doc, 'plain', BENCH_PT)
  const pageWidth = doc.widthOfString(ofPages)
  line(doc, ofPages, box.right - pageWidth, top)
  line(
    doc,
    fitted(doc, plainText(options.shop.heading || options.shop.name), width - pageWidth - 12),
    box.left,
    top,
  )
  ink(doc, 'bold', 13)
  const titleWidth = doc.widthOfString(print.title)
  line(doc, print.title, box.right - titleWidth, top + 13)
  line(
    doc,
    fitted(doc, plainText(options.subject?.name ?? plan.job.name), width - titleWidth - 12),
    box.left,
    top + 13,
  )
  ink(doc, 'plain', BENCH_PT)
  line(
    doc,
    fitted(
      doc,
      options.subject?.words ?? `${options.batch ?? batchText(plan)} · ${partText(plan, options)}`,
      width,
    ),
    box.left,
    top + 29,
  )
  doc
    .lineWidth(0.5)
    .moveTo(box.left, top + 43)
    .lineTo(box.right, top + 43)
    .stroke('#000')
}

/** Sets face, size and colour of the type that follows. */
export function ink(doc: PDFKit.PDFDocument, face: Face, size: number, colour = '#000'): PDFKit.PDFDocument {
  return doc.font(face).fontSize(size).fillColor(colour)
}

/** One line of type with its top left corner at x, y; it is never broken. */
export function line(doc: PDFKit.PDFDocument, text: string, x: number, y: number): void {
  doc.text(text, x, y, { lineBreak: false })
}

/** The text, cut with an ellipsis where it is wider than `width` in the type now set. */
export function fitted(doc: PDFKit.PDFDocument, text: string, width: number): string {
  if (doc.widthOfString(text) <= width) return text
  let [short, long] = [0, text.length]
  while (short < long) {
    const middle = Math.ceil((short + long) / 2)
    if (doc.widthOfString(`${text.slice(0, middle)}…`) <= width) short = middle
    else long = middle - 1
  }
  return `${text.slice(0, short).trimEnd()}…`
}

/** The text on one line, without signs that cannot be printed. */
export function plainText(text: string): string {
  return text.replace(/[\p{Cc}\p{Zl}\p{Zp}\s]+/gu, ' ').trim()
}
