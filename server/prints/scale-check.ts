import { inches } from '../../shared/units/length.ts'
import { BENCH_PT, FOOT_PT, ink, line, type Print, pt } from './print.ts'

/** A bar of true length with a tick at every `step`, both mm, its left end at x, y in points. */
function bar({ doc }: Print, x: number, y: number, length: number, step: number): void {
  doc.lineWidth(0.7).lineCap('butt')
  doc
    .moveTo(x, y)
    .lineTo(x + pt(length), y)
    .stroke('#000')
  const ticks = Math.round(length / step)
  for (let i = 0; i <= ticks; i++) {
    const long = i === 0 || i === ticks
    doc
      .lineWidth(long ? 0.7 : 0.4)
      .moveTo(x + pt(i * step), y - pt(long ? 2.2 : 1.2))
      .lineTo(x + pt(i * step), y)
    doc.stroke('#000')
  }
}

/** Two bars to lay a rule on, 100 mm and 4 in, in the lowest 9 mm of the page. */
export function scaleCheck(print: Print): void {
  const { doc, box } = print
  const x = box.left + 0.5
  const y = box.bottom + FOOT_PT
  bar(print, x, y - pt(5.6), 100, 10)
  bar(print, x, y - 0.5, inches(4), inches(1 / 2))
  ink(doc, 'bold', BENCH_PT)
  line(doc, '100 mm', x + pt(104), y - pt(8.8))
  line(doc, '4 in', x + pt(104), y - pt(4))
  ink(doc, 'plain', BENCH_PT)
  line(doc, 'Print at 100 %, never “fit to page”.', x + pt(122), y - pt(8.8))
  line(doc, 'Lay a rule on both bars before use.', x + pt(122), y - pt(4))
}
