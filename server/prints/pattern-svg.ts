import type { Plan } from '../../shared/plan.ts'
import { outlineOf, outlineRadius } from '../../shared/profile/outline.ts'
import { type LengthStyle, lengthText, styleOf } from '../../shared/units/length.ts'
import { batchText, countText } from './figures.ts'
import { CHORD_MM } from './pattern-source.ts'
import { type Position, positionsOf, thicknessesText } from './positions.ts'
import { plainText } from './print.ts'
import { spreadPlaces, weightiest } from './spread.ts'

/** Card beyond the ends of the part, mm; and where lines lead from the written figures to their stations. */
const CARD_MM = 12
const LEAD_MM = 8
/** Type height of the engraved figures, most room a letter of it takes, and figure to figure, mm. */
const TYPE_MM = 4
const LETTER_MM = 2.4
const PITCH_MM = 5
/** A longer name is cut short on the card; the title of the file has it whole. */
const NAME_MOST = 40

/** The look stands on the elements: a server’s content security policy takes a style sheet within a picture away. */
const hairline = (colour: string): string => `stroke="${colour}" stroke-width="0.1"`

const n = (value: number): string => String(Math.round(value * 1e4) / 1e4)
const escaped = (value: string): string =>
  plainText(value)
    .replace(/[\uD800-\uDFFF\uFFFE\uFFFF]/gu, '')
    .replace(/[<>&"']/g, (sign) => `&#${sign.charCodeAt(0)};`)
const shortName = (name: string): string =>
  [...plainText(name)].length <= NAME_MOST
    ? plainText(name)
    : `${[...plainText(name)].slice(0, NAME_MOST - 1).join('')}…`

/** The card and what stands where on it, mm from its top left corner. */
interface Card {
  width: number
  height: number
  /** Where the written figures end and the station lines begin. */
  figures: number
  axis: number
}

/**
 * The pattern for a cutter, 1:1 in mm: a card with the half profile cut through it, so that one side is
 * offered up to the work and the other traced or followed. Lengths are written in the job’s own style unless said. Class `cut` goes through, class `engraved` does not.
 */
export function patternSvg(plan: Plan, style: LengthStyle = styleOf(plan.job.units)): string {
  const outline = outlineOf(plan.job.profile, CHORD_MM)
  const length = outline.at(-1)!.x
  const radius = outlineRadius(outline)
  const stations = positionsOf(plan.job.profile).map((position) => ({
    ...position,
    words: wordsOf(position, style),
  }))
  const batch = `foot ← ${shortName(plan.job.name)}, ${countText(plan.job.quantity, 'piece')}, 1:1 → top`
  const longest = Math.max(...stations.map(({ words }) => words.length))
  const figures = longest * LETTER_MM + LEAD_MM + 4
  const axis = figures + radius
  const width = Math.max(length, batch.length * LETTER_MM) + 2 * CARD_MM
  const card: Card = { width, height: axis + CARD_MM, figures, axis }
  const x = (at: number) => n(at + CARD_MM)
  const profile = outline.map((p) => `L${x(p.x)} ${n(axis - p.r)}`).join('')
  const size = `width="${n(width)}mm" height="${n(card.height)}mm" viewBox="0 0 ${n(width)} ${n(card.height)}"`
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<svg xmlns="http://www.w3.org/2000/svg" ${size}>`,
    `<title>${escaped(`${plan.job.name}, ${batchText(plan)}, half profile 1:1`)}</title>`,
    `<g class="cut" fill="none" ${hairline('#f00')}>`,
    `<path class="profile" d="M${x(0)} ${n(axis)}${profile}L${x(length)} ${n(axis)}Z"/>`,
    `<rect class="card" x="0" y="0" width="${n(width)}" height="${n(card.height)}"/>`,
    '</g>',
    `<g class="engraved" fill="#00f" font-family="sans-serif" font-size="${TYPE_MM}">`,
    ...engraved(stations, card),
    `<text x="${x(0)}" y="${n(axis + CARD_MM / 2 + TYPE_MM / 3)}">${escaped(batch)}</text>`,
    '</g>',
    '</svg>',
    '',
  ].join('\n')
}

function wordsOf(position: Position, style: LengthStyle): string {
  const words = [lengthText(position.at, style), thicknessesText(position, style), shortName(position.name)]
  return words.filter(Boolean).join(', ')
}

/** Station lines down to the axis, and the figures they lead to, apart from each other. */
function engraved(stations: (Position & { words: string })[], { width, figures, axis }: Card): string[] {
  const written = weightiest(stations, Math.floor((width - 2 * PITCH_MM) / PITCH_MM))
  const wanted = written.map(({ at }) => at + CARD_MM)
  const places = spreadPlaces(wanted, PITCH_MM, PITCH_MM, width - PITCH_MM)
  const line = (x0: number, y0: number, x1: number, y1: number) =>
    `<line x1="${n(x0)}" y1="${n(y0)}" x2="${n(x1)}" y2="${n(y1)}" ${hairline('#00f')}/>`
  const top = figures - LEAD_MM
  return [
    ...stations.map(({ at }) => line(at + CARD_MM, figures, at + CARD_MM, axis)),
    ...places.map((place, i) => line(place, top, wanted[i]!, figures)),
    ...written.map(({ words }, i) => {
      const place = `translate(${n(places[i]! + TYPE_MM / 3)} ${n(top - 1)}) rotate(-90)`
      return `<text transform="${place}">${escaped(words)}</text>`
    }),
  ]
}
