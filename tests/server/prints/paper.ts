import { execFileSync } from 'node:child_process'
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'

/** A printed page as an eye of another make sees it: the renderer and text reader are poppler's. */
export interface Page {
  width: number
  height: number
  /** How dark a pixel is, 0 … 255; outside the page 0. */
  ink: (x: number, y: number) => number
}

function withFile<T>(pdf: Buffer, use: (file: string, folder: string) => T): T {
  const folder = mkdtempSync(join(tmpdir(), 'print-'))
  try {
    const file = join(folder, 'print.pdf')
    writeFileSync(file, pdf)
    return use(file, folder)
  } finally {
    rmSync(folder, { recursive: true })
  }
}

/** The pages rasterised; `dpi` pixels an inch. */
export function pagesOf(pdf: Buffer, dpi: number): Page[] {
  return withFile(pdf, (file, folder) => {
    execFileSync('pdftoppm', ['-r', String(dpi), '-gray', file, join(folder, 'page')])
    return readdirSync(folder)
      .filter((name) => name.endsWith('.pgm'))
      .sort()
      .map((name) => readPage(readFileSync(join(folder, name))))
  })
}

/** A grey map of the raw kind: `P5 width height 255` and the pixels. */
function readPage(bytes: Buffer): Page {
  const head = /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(bytes.subarray(0, 60).toString('latin1'))
  if (!head) throw new Error('pdftoppm gave no grey map')
  const [width, height, start] = [Number(head[1]), Number(head[2]), head[0].length]
  const ink = (x: number, y: number) =>
    x < 0 || y < 0 || x >= width || y >= height ? 0 : 255 - bytes[start + y * width + x]!
  return { width, height, ink }
}

/** The text of all pages, or of one (from 1), laid out as printed. */
export function textOf(pdf: Buffer, page?: number): string {
  const only = page === undefined ? [] : ['-f', String(page), '-l', String(page)]
  return withFile(pdf, (file) =>
    execFileSync('pdftotext', ['-layout', ...only, file, '-'], { encoding: 'utf8' }),
  )
}

/** The same with every run of blanks as one, to look for phrases in. */
export const phrasesOf = (pdf: Buffer, page?: number): string => textOf(pdf, page).replace(/\s+/g, ' ')

/** The text in the order it was set, so that columns are read one after the other. */
export const readingOrderOf = (pdf: Buffer): string =>
  withFile(pdf, (file) => execFileSync('pdftotext', ['-raw', file, '-'], { encoding: 'utf8' }))

export const infoOf = (pdf: Buffer): Record<string, string> =>
  withFile(pdf, (file) =>
    Object.fromEntries(
      execFileSync('pdfinfo', ['-isodates', file], { encoding: 'utf8' })
        .split('\n')
        .map((row) => /^([^:]+):\s*(.*)$/.exec(row))
        .flatMap((found) => (found ? [[found[1]!, found[2]!] as const] : [])),
    ),
  )

export interface Word {
  page: number
  text: string
  x0: number
  x1: number
  y0: number
  y1: number
}

/** Every word with its box in points. */
export function wordsOf(pdf: Buffer): Word[] {
  const html = withFile(pdf, (file) =>
    execFileSync('pdftotext', ['-bbox', file, '-'], { encoding: 'utf8', maxBuffer: 1e8 }),
  )
  return html
    .split('<page ')
    .slice(1)
    .flatMap((part, i) =>
      [
        ...part.matchAll(
          /<word xMin="([\d.-]+)" yMin="([\d.-]+)" xMax="([\d.-]+)" yMax="([\d.-]+)">([^<]*)</g,
        ),
      ].map(([, x0, y0, x1, y1, text]) => ({
        page: i + 1,
        text: text!,
        x0: Number(x0),
        x1: Number(x1),
        y0: Number(y0),
        y1: Number(y1),
      })),
    )
}

/** Sizes of type used, points. */
export function typeSizesOf(pdf: Buffer): number[] {
  const xml = withFile(pdf, (file) =>
    execFileSync('pdftohtml', ['-xml', '-zoom', '1', '-i', '-stdout', file], {
      encoding: 'utf8',
      maxBuffer: 1e8,
    }),
  )
  return [...xml.matchAll(/<fontspec [^>]*size="(\d+)"/g)].map(([, size]) => Number(size))
}

/** Middle of the ink between two pixels along a row or a column, in pixels (pixel centres at .5). */
export function middleOfInk(inkAt: (i: number) => number, from: number, to: number): number {
  let [sum, moment] = [0, 0]
  for (let i = Math.floor(from); i <= Math.ceil(to); i++) {
    sum += inkAt(i)
    moment += inkAt(i) * (i + 0.5)
  }
  if (sum < 128) throw new Error(`no ink between ${from} and ${to}`)
  return moment / sum
}
