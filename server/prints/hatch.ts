import { pt } from './print.ts'

/** A place on the drawing, mm. */
interface Field {
  x: number
  y: number
  width: number
  height: number
}

/** Slanting lines over wood that is cut away, `apart` mm from each other. */
export function hatch(doc: PDFKit.PDFDocument, { x, y, width, height }: Field, apart: number): void {
  doc.save().rect(pt(x), pt(y), pt(width), pt(height)).clip().lineWidth(pt(0.2))
  for (let low = -width; low < height; low += apart)
    doc.moveTo(pt(x), pt(y + low + width)).lineTo(pt(x + width), pt(y + low))
  doc.stroke('#000').restore()
}
