import { pt } from './print.ts'

/** A fine cross at x, y (points), each of its arms `arm` mm long. */
export function cross(doc: PDFKit.PDFDocument, x: number, y: number, arm: number): void {
  doc
    .lineWidth(pt(0.15))
    .moveTo(x - pt(arm), y)
    .lineTo(x + pt(arm), y)
    .moveTo(x, y - pt(arm))
    .lineTo(x, y + pt(arm))
    .stroke('#000')
}
