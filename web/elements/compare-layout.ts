import { type OutlinePoint, outlineRadius } from '../../shared/profile/outline.ts'
import { type PartLayout, partLayout } from './part-layout.ts'

/** At which end two parts are laid against each other. */
export type CompareEnd = 'foot' | 'top'

/** Two parts laid over each other about one axis; px. */
export interface CompareLayout {
  layout: PartLayout
  /** Where the foot of each part lies along the drawing. */
  feet: [number, number]
  /** Place along the drawing of a place counted from the common end, mm. */
  along: (fromEnd: number) => number
}

/** Characters of the longest figure beside the drawing, e.g. `A 1-63/64 in`. */
const LONGEST = 12

/** Lays two outlines against each other at their foot or at their top, in one scale. */
export function compareLayout(
  outlines: readonly [readonly OutlinePoint[], readonly OutlinePoint[]],
  end: CompareEnd,
  room: number,
): CompareLayout {
  const lengths = outlines.map((points) => points.at(-1)?.x ?? 0) as [number, number]
  const most = Math.max(...lengths)
  const layout = partLayout({
    lengthMm: most,
    diameterMm: 2 * Math.max(...outlines.map(outlineRadius)),
    room,
    orientation: 'auto',
    labels: 1,
    longestLabel: LONGEST,
  })
  const feet = lengths.map((length) => (end === 'foot' ? 0 : (most - length) * layout.scale))
  return {
    layout,
    feet: feet as [number, number],
    along: (fromEnd) => (end === 'foot' ? fromEnd : most - fromEnd) * layout.scale,
  }
}
