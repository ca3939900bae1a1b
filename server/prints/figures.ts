import type { Joint } from '../../shared/job.ts'
import type { Plan } from '../../shared/plan.ts'
import { jointLook } from '../../shared/profile/joint-reach.ts'
import { type LengthStyle, lengthFigure, lengthText, nm } from '../../shared/units/length.ts'

/** Two lengths over each other with one unit: `2-1/4 × 2-1/4 in`. */
export function sizeText(lengths: number[], style: LengthStyle): string {
  return `${lengths.map((mm) => lengthFigure(mm, style)).join(' × ')} ${unitOf(style)}`
}

export const unitOf = (style: LengthStyle): 'in' | 'mm' => (style === 'mm' ? 'mm' : 'in')

/** A range of positions with one unit: `12 – 16-1/2 in`. */
export function rangeText([from, to]: [number, number], style: LengthStyle): string {
  return `${lengthFigure(from, style)} – ${lengthText(to, style)}`
}

/** Minutes as a turner says them: `4.5 min`, `2 h 05 min`. */
export function minutesText(minutes: number): string {
  if (minutes < 100) return `${minutes < 10 ? minutes.toFixed(1) : Math.round(minutes)} min`
  const whole = Math.round(minutes)
  return `${Math.floor(whole / 60)} h ${String(whole % 60).padStart(2, '0')} min`
}

/** Mass of so many grams. */
export const massText = (grams: number): string =>
  grams < 1000 ? `${Math.round(grams)} g` : `${(grams / 1000).toFixed(2)} kg`

export const boardFeetText = (boardFeet: number): string => `${boardFeet.toFixed(2)} board feet`

/** `1 piece`, `8 pieces`. */
export const countText = (count: number, one: string, many = `${one}s`): string =>
  `${count} ${count === 1 ? one : many}`

/** The quantity ordered: `8 pieces`, of split pairs `8 halves`. */
export const quantityText = ({ profile, quantity }: Plan['job']): string =>
  profile.split ? countText(quantity, 'half', 'halves') : countText(quantity, 'piece')

/** Quantity with what one piece is, and the blanks cut for it. */
export function batchText({ job, blank }: Plan): string {
  return `${quantityText(job)}${job.match && job.quantity > 1 ? ', a matching set' : ''} · ${countText(blank.count, 'blank')}`
}

/** The wood in words. */
export function woodText(species: string, name?: string): string {
  if (name) return name
  const words = species.replace(/-/g, ' ')
  return words.charAt(0).toUpperCase() + words.slice(1)
}

/** Wood and main dimensions of one part. */
export function partText(
  { job, part }: Plan,
  { style, wood }: { style: LengthStyle; wood?: string },
): string {
  return `${woodText(job.species, wood)} · ${thicknessText(part, style)} × ${lengthText(part.length, style)} long`
}

/** The thickest place: across the flats where it is square, else the diameter. */
export function thicknessText(part: Plan['part'], style: LengthStyle): string {
  const square = part.maxSide !== undefined && nm(part.maxSide) >= nm(part.maxDiameter)
  return square ? `${lengthText(part.maxSide!, style)} square` : `⌀ ${lengthText(part.maxDiameter, style)}`
}

/** Where a joint looks: the letter of its face, or its angle from face A and towards which it is turned. */
export const lookText = (joint: Pick<Joint, 'face' | 'angle'>): string =>
  joint.angle === undefined ? (joint.face ?? 'A') : jointLook(joint)

/** The same where there is little room: `30° to D`. */
export const lookMark = (joint: Pick<Joint, 'face' | 'angle'>): string =>
  lookText(joint).replace(' from face A', '').replace('towards', 'to')
