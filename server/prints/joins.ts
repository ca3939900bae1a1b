import { cross } from './cross.ts'
import { BENCH_PT, ink, line, type Print, pt } from './print.ts'

/**
 * A dashed line with crosses where two sheets meet: it lies on both of them, one is stuck line on line to the other.
 * Places in points; `crossesAt` are shares of the line.
 */
export function joinLine(
  { doc }: Print,
  [x0, y0]: [number, number],
  [x1, y1]: [number, number],
  crossesAt: number[],
): void {
  doc
    .lineWidth(pt(0.15))
    .dash(pt(2), { space: pt(2) })
    .moveTo(x0, y0)
    .lineTo(x1, y1)
    .stroke('#000')
    .undash()
  for (const t of crossesAt) {
    const [x, y] = [x0 + (x1 - x0) * t, y0 + (y1 - y0) * t]
    cross(doc, x, y, 4)
    doc.circle(x, y, pt(2)).stroke('#000')
  }
}

/** What is joined to what, beside the line. */
export function joinWords({ doc }: Print, words: string, x: number, y: number, upwards: boolean): void {
  doc.save()
  if (upwards) doc.rotate(-90, { origin: [x, y] })
  ink(doc, 'plain', BENCH_PT)
  line(doc, words, x, y)
  doc.restore()
}
