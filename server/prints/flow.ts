import { BENCH_PT, ensure, type Face, ink, type Print } from './print.ts'

const width = (print: Print): number => print.box.right - print.box.left

/** A heading, kept with at least `keep` points of what follows. */
export function heading(print: Print, text: string, keep = 40): void {
  ensure(print, 22 + keep)
  print.y += print.y > print.box.top ? 8 : 0
  ink(print.doc, 'bold', 12)
  put(print, text, 3)
}

/** Lines of running text. */
export function paragraph(
  print: Print,
  text: string,
  { face = 'plain' as Face, size = BENCH_PT, after = 3 } = {},
): void {
  ink(print.doc, face, size)
  ensure(print, print.doc.heightOfString(text, { width: width(print) }))
  ink(print.doc, face, size)
  put(print, text, after)
}

function put(print: Print, text: string, after: number): void {
  const { doc, box } = print
  const height = doc.heightOfString(text, { width: width(print) })
  doc.text(text, box.left, print.y, { width: width(print) })
  print.y += height + after
}

/** Something to mind, in a ruled frame that cannot be overlooked. */
export function caution(print: Print, text: string): void {
  const { doc, box } = print
  const inner = width(print) - 26
  ink(doc, 'bold', BENCH_PT)
  const height = doc.heightOfString(text, { width: inner })
  ensure(print, height + 10)
  doc
    .lineWidth(1)
    .rect(box.left, print.y, width(print), height + 6)
    .stroke('#000')
  ink(doc, 'bold', BENCH_PT)
  doc.text('⚠', box.left + 5, print.y + 3, { lineBreak: false })
  doc.text(text, box.left + 21, print.y + 3, { width: inner })
  print.y += height + 10
}
