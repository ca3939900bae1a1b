/** How the part lies on the drawing; figures in px. Along the part 0 is the foot, across it 0 is the axis. */
export interface PartLayout {
  vertical: boolean
  /** px of one mm, the same both ways. */
  scale: number
  length: number
  radius: number
  width: number
  height: number
  /** Drawing position of a point of the part. */
  place(x: number, y: number): [number, number]
  /** SVG transform that lays part coordinates on the drawing. */
  transform: string
  /** Reach of labels along the part, in part coordinates. */
  reach: [number, number]
  /** Room one label takes along the part. */
  gap: number
  /** Labels stand across the part, read from the side. */
  turnedLabels: boolean
}

export interface LayoutInput {
  lengthMm: number
  diameterMm: number
  /** Room on the screen, px. */
  room: number
  orientation: 'auto' | 'horizontal' | 'vertical'
  /** Labels along the busier edge, and characters of the longest. */
  labels: number
  longestLabel: number
  /** Most px across (horizontal) or along (vertical) the part. */
  most?: number
}

const NARROW = 560
const CHARACTER = 7.2
const LINE = 15
const LEADER = 30
const EDGE = 16
/** Room for the line that says what the figures are. */
const HEADING = 20

/** Lays out a part: across where there is room for it, upright on a narrow screen. */
export function partLayout(input: LayoutInput): PartLayout {
  const upright = input.orientation === 'vertical' || (input.orientation === 'auto' && input.room < NARROW)
  return upright ? uprightLayout(input) : lyingLayout(input)
}

const labelRoom = ({ labels, longestLabel }: LayoutInput): number =>
  labels > 0 ? longestLabel * CHARACTER + 8 : 0

function lyingLayout(input: LayoutInput): PartLayout {
  const { lengthMm, diameterMm, labels, most = 300 } = input
  const across = labelRoom(input)
  const turnedLabels = labels * across > input.room - EDGE
  const gap = turnedLabels ? LINE : across
  const edge = labels === 0 ? 4 : turnedLabels ? EDGE : Math.max(EDGE, across / 2)
  const width = Math.max(input.room, labels * gap + EDGE)
  const scale = Math.min((width - 2 * edge) / lengthMm, most / diameterMm)
  const [length, radius] = [lengthMm * scale, (diameterMm * scale) / 2]
  const margin = labels === 0 ? 8 : LEADER + (turnedLabels ? across : LINE + 4) + HEADING
  const [left, middle] = [(width - length) / 2, radius + margin]
  return {
    vertical: false,
    scale,
    length,
    radius,
    width,
    height: 2 * (radius + margin),
    gap,
    turnedLabels,
    place: (x, y) => [left + x, middle + y],
    transform: `translate(${left} ${middle})`,
    reach: [gap / 2 - left, width - gap / 2 - left],
  } // prettier-ignore
}

function uprightLayout(input: LayoutInput): PartLayout {
  const { lengthMm, diameterMm, labels, most = 760 } = input
  const margin = labels === 0 ? 4 : LEADER + labelRoom(input)
  const scale = Math.min(
    Math.max(most, labels * LINE) / lengthMm,
    Math.max(40, input.room - 2 * margin) / diameterMm,
  )
  const [length, radius] = [lengthMm * scale, (diameterMm * scale) / 2]
  const heading = labels === 0 ? 0 : HEADING
  const height = Math.max(length, labels * LINE) + 2 * EDGE + heading
  const width = Math.max(input.room, 2 * (radius + margin))
  const [middle, foot] = [width / 2, (height + heading + length) / 2]
  return {
    vertical: true,
    scale,
    length,
    radius,
    width,
    height,
    gap: LINE,
    turnedLabels: false,
    place: (x, y) => [middle + y, foot - x],
    transform: `matrix(0 -1 1 0 ${middle} ${foot})`,
    reach: [LINE / 2 - (height - foot), foot - heading - LINE / 2],
  } // prettier-ignore
}
