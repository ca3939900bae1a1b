import type { PartLayout } from './part-layout.ts'

/** Which stretch of a part is looked at, and how closely. */
export interface View {
  /** 1 shows the whole part. */
  zoom: number
  /** Where the shown stretch begins, mm from the foot. */
  from: number
}

export const wholeView: View = { zoom: 1, from: 0 }

export interface WindowInput {
  lengthMm: number
  diameterMm: number
  /** Room on the screen, px. */
  room: number
  view: View
  /** Characters of the longest figure; 0 where none are written. */
  longestLabel: number
}

/** Most px across the part before its far edge is cut off, and across the whole part unzoomed. */
const WINDOW_MOST = 380
const PART_MOST = 240
/** So much room at both ends that a finger gets hold of the last station. */
const EDGE = 22
const MARGIN = 22
const LINE = 15
const LEADER = 34
const CHARACTER = 7.2

export const MOST_ZOOM = 16

/** px of one mm with the whole part in sight. */
const wholeScale = ({ lengthMm, diameterMm, room }: WindowInput): number =>
  Math.max(1e-3, Math.min((room - 2 * EDGE) / lengthMm, PART_MOST / diameterMm))

/** The view moved so that it shows as much of the part as it can. */
export function viewWithin(input: WindowInput): View {
  const zoom = Math.min(MOST_ZOOM, Math.max(1, input.view.zoom))
  const shown = (input.room - 2 * EDGE) / (wholeScale(input) * zoom)
  return { zoom, from: Math.max(0, Math.min(input.lengthMm - shown, input.view.from)) }
}

/** The view with another zoom that leaves `at` (mm) where it is on the screen. */
export function zoomedView(input: WindowInput, by: number, at: number): View {
  const { zoom, from } = viewWithin(input)
  const next = Math.min(MOST_ZOOM, Math.max(1, zoom * by))
  return viewWithin({ ...input, view: { zoom: next, from: at - ((at - from) * zoom) / next } })
}

/**
 * A part that lies, foot to the left, seen through a window as wide as the room: where it is taller than the window
 * its upper edge, which holds the handles, stays in sight.
 */
export function windowLayout(input: WindowInput): PartLayout {
  const { zoom, from } = viewWithin(input)
  const scale = wholeScale(input) * zoom
  const [length, radius] = [input.lengthMm * scale, (input.diameterMm * scale) / 2]
  const left = Math.max(
    EDGE - from * scale,
    length < input.room - 2 * EDGE ? (input.room - length) / 2 : -Infinity,
  )
  const labels = input.longestLabel > 0 ? LEADER + input.longestLabel * CHARACTER : 0
  const margin = MARGIN + labels
  const middle = margin + radius
  return {
    vertical: false,
    scale,
    length,
    radius,
    width: input.room,
    height: Math.min(2 * radius, WINDOW_MOST) + 2 * margin,
    gap: LINE,
    turnedLabels: true,
    place: (x, y) => [left + x, middle + y],
    transform: `translate(${left} ${middle})`,
    reach: [LINE / 2 - left, input.room - LINE / 2 - left],
  } // prettier-ignore
}

/** Where a point of the window lies on the part: mm from the foot, and mm from the axis towards the upper edge. */
export function pointOnPart(layout: PartLayout, x: number, y: number): { at: number; r: number } {
  const [left, middle] = layout.place(0, 0)
  return { at: (x - left) / layout.scale, r: (middle - y) / layout.scale }
}
