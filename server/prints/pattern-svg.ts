import type { Plan } from '../../shared/plan.ts'
import { outlineOf } from '../../shared/profile/outline.ts'
import { lengthText, styleOf } from '../../shared/units/length.ts'
import { batchText } from './figures.ts'
import { positionsOf, thicknessesText } from './positions.ts'
import { plainText } from './print.ts'
import { spreadPlaces, weightiest } from './spread.ts'

/** Card beyond the ends of the part and beyond its thickest place, mm; the figures stand there. */
const CARD_MM = 12
const FIGURES_MM = 70
const LEAD_MM = 8
/** Type height of the engraved figures, mm. */
const TYPE_MM = 4
const PITCH_MM = 5
/** The cut is nowhere farther from the true profile, mm. */
const CHORD_MM = 0.005

const n = (value: number): string => String(Math.round(value * 1e4) / 1e4)
const text = (value: string): string =>
  plainText(value)
    .replace(/[<>&"']/g, (sign) => `&#${sign.charCodeAt(0)};`)
    .replace(/[\uD800-\uDFFF\uFFFE\uFFFF]/gu, '')

/** Station lines down to the axis, and the figures they lead to, apart from each other. */
function engraving(plan: Plan, width: number, axis: number): { lines: string[]; figures: string[] } {
  const style = styleOf(plan.job.units)
  const stations = positionsOf(plan.job.profile)
  const written = weightiest(stations, Math.floor((width - 2 * PITCH_MM) / PITCH_MM))
  const wanted = written.map(({ at }) => at + CARD_MM)
  const places = spreadPlaces(wanted, PITCH_MM, PITCH_MM, width - PITCH_MM)
  const line = (x0: number, y0: number, x1: number, y1: number) =>
    `<line x1="${n(x0)}" y1="${n(y0)}" x2="${n(x1)}" y2="${n(y1)}"/>`
  const [top, middle] = [FIGURES_MM - LEAD_MM, TYPE_MM / 3]
  return {
    lines: [
      ...stations.map(({ at }) => line(at + CARD_MM, FIGURES_MM, at + CARD_MM, axis)),
      ...places.map((place, i) => line(place, top, wanted[i]!, FIGURES_MM)),
    ],
    figures: written.map((position, i) => {
      const words = [lengthText(position.at, style), thicknessesText(position, style), position.name]
      const place = `translate(${n(places[i]! + middle)} ${n(top - 1)}) rotate(-90)`
      return `<text transform="${place}">${text(words.filter(Boolean).join(', '))}</text>`
    }),
  }
}

/**
 * The pattern for a cutter, 1:1 in mm: a card with the half profile cut through it, so that one side is
 * offered up to the work and the other traced or followed. Class `cut` goes through, class `engraved` does not.
 */
export function patternSvg(plan: Plan): string {
  const outline = outlineOf(plan.job.profile, CHORD_MM)
  const length = outline.at(-1)!.x
  const radius = outline.reduce((most, { r }) => Math.max(most, r), 0)
  const [width, height] = [length + 2 * CARD_MM, radius + FIGURES_MM + CARD_MM]
  const axis = height - CARD_MM
  const x = (at: number) => n(at + CARD_MM)
  const profile = outline.map((p) => `L${x(p.x)} ${n(axis - p.r)}`).join('')
  const { lines, figures } = engraving(plan, width, axis)
  const title = `${plan.job.name}, ${batchText(plan)}, half profile 1:1`
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<svg xmlns="http://www.w3.org/2000/svg" width="${n(width)}mm" height="${n(height)}mm" viewBox="0 0 ${n(width)} ${n(height)}">`,
    `<title>${text(title)}</title>`,
    '<style>.cut{fill:none;stroke:#f00;stroke-width:.1}.engraved line{stroke:#00f;stroke-width:.1}',
    `.engraved text{font:${TYPE_MM}px sans-serif;fill:#00f}</style>`,
    '<g class="cut">',
    `<path class="profile" d="M${x(0)} ${n(axis)}${profile}L${x(length)} ${n(axis)}Z"/>`,
    `<rect class="card" x="0" y="0" width="${n(width)}" height="${n(height)}"/>`,
    '</g>',
    '<g class="engraved">',
    ...lines,
    ...figures,
    `<text x="${x(0)}" y="${n(axis + CARD_MM / 2 + TYPE_MM / 3)}">${text(`foot ← ${title} → top`)}</text>`,
    '</g>',
    '</svg>',
    '',
  ].join('\n')
}
