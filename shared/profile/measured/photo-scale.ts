import { type Breach, badInput } from '../../problem.ts'
import type { Photo, PhotoLine, Pixel } from './sheet.ts'

/** What known lengths tell of a photograph. */
export interface PhotoScale {
  /** Pixels to a millimetre, by least squares over all known lengths. */
  pxPerMm: number
  /** The same over those along the axis; over those across it, or as along where none is known. */
  along: number
  across: number
  /** Turn of the axis, foot to top, from the photograph's left-to-right, degrees clockwise as seen. */
  angle: number
  /** By how much the scales of the lines differ, % of `pxPerMm`; absent with one known length. */
  disagreement?: number
  /** By how much a line across the axis is out of square to it, degrees; absent where there is none. */
  skew?: number
}

/** A known length with its vector on the photograph. */
interface Known {
  x: number
  y: number
  px: number
  mm: number
  way: 'along' | 'across'
}

const DEGREES = 180 / Math.PI
/** Two ends on one pixel are no line. */
const LEAST_PX = 1

function lineBreach({ from, to, length }: PhotoLine, i: number): Breach[] {
  if (!(Math.hypot(to[0] - from[0], to[1] - from[1]) >= LEAST_PX)) {
    return [
      {
        path: `lines[${i}].to`,
        message: `must lie at least one pixel from the other end; read ${to.join(', ')} for both ends`,
      },
    ]
  }
  if (length === undefined || length > 0) return []
  return [{ path: `lines[${i}].length`, message: `must be more than 0; read ${length} mm` }]
}

/** The lines whose length is entered; the first one runs along the axis unless a line says otherwise. */
function knownLengths(lines: readonly PhotoLine[]): Known[] {
  const measured = lines.filter(({ length }) => length !== undefined)
  const first = measured[0]
  if (!first) return []
  const [u, v] = [first.to[0] - first.from[0], first.to[1] - first.from[1]]
  const [ax, ay] = first.way === 'across' ? [v, -u] : [u, v]
  return measured.map(({ from, to, length, way }) => {
    const [x, y] = [to[0] - from[0], to[1] - from[1]]
    const seen = Math.abs(ax * y - ay * x) > Math.abs(ax * x + ay * y) ? 'across' : 'along'
    return { x, y, px: Math.hypot(x, y), mm: length!, way: way ?? seen }
  })
}

/** The scale that leaves the least squares of px − scale·mm. */
const fitted = (lines: readonly Known[]): number =>
  lines.reduce((sum, { px, mm }) => sum + px * mm, 0) / lines.reduce((sum, { mm }) => sum + mm * mm, 0)

/** Direction of the axis: the sum of the lines along it, all pointing as the first one does. */
function axisAngle(along: readonly Known[]): number {
  const { x: x0, y: y0 } = along[0]!
  const sense = ({ x, y }: Known): number => (x * x0 + y * y0 < 0 ? -1 : 1)
  return Math.atan2(
    along.reduce((sum, line) => sum + sense(line) * line.y, 0),
    along.reduce((sum, line) => sum + sense(line) * line.x, 0),
  )
}

/** Degrees by which a line departs from square to the axis, the greatest of them. */
function skewOf(across: readonly Known[], angle: number): number | undefined {
  if (across.length === 0) return undefined
  return Math.max(
    ...across.map(({ x, y, px }) => {
      const onAxis = Math.abs(x * Math.cos(angle) + y * Math.sin(angle)) / px
      return Math.asin(Math.min(1, onAxis)) * DEGREES
    }),
  )
}

/**
 * Scale and turn of a photograph from lengths known on the original: two or more tell by how much they disagree, which
 * is what a tilted camera or a line drawn beside its mark gives. Lines without a length yet are left out.
 *
 * @throws Problem `bad-input` for a line of no length, and where no known length runs along the axis
 * @example photoScale([{ from: [100, 50], to: [1100, 50], length: 500 }]).pxPerMm // 2
 */
export function photoScale(lines: readonly PhotoLine[]): PhotoScale {
  const breaches = lines.flatMap(lineBreach)
  if (breaches.length > 0) throw badInput(breaches)
  const known = knownLengths(lines)
  const along = known.filter(({ way }) => way === 'along')
  const across = known.filter(({ way }) => way === 'across')
  if (along.length === 0) {
    throw badInput([{ path: 'lines', message: 'must hold a known length along the axis; read none' }])
  }
  const [pxPerMm, angle] = [fitted(known), axisAngle(along)]
  const scales = known.map(({ px, mm }) => px / mm)
  const skew = skewOf(across, angle)
  return {
    pxPerMm,
    along: fitted(along),
    across: fitted(across.length > 0 ? across : along),
    angle: angle * DEGREES,
    ...(known.length > 1 && {
      disagreement: ((Math.max(...scales) - Math.min(...scales)) / pxPerMm) * 100,
    }),
    ...(skew !== undefined && { skew }),
  }
}

/**
 * Where the axis meets the foot on the photograph, px: as it was tapped, else where the first length along it begins.
 *
 * @example photoFoot({ lines: [{ from: [100, 50], to: [1100, 50], length: 500 }] }) // [100, 50]
 */
export function photoFoot({ lines, foot }: Photo): Pixel {
  const first = lines.find(({ length, way }) => length !== undefined && way !== 'across')
  return foot ?? first?.from ?? [0, 0]
}

/**
 * The six numbers of SVG's `matrix(a b c d e f)` that lay a photograph, drawn at one unit a pixel, behind a drawing
 * in mm whose x runs from the foot along the axis and whose y is square to it: known lengths along and across then
 * come out at their size.
 *
 * @throws Problem `bad-input` as `photoScale` does
 * @example photoPlacement({ lines: [{ from: [100, 50], to: [1100, 50], length: 500 }] }) // [0.5, 0, 0, 0.5, -50, -25]
 */
export function photoPlacement(photo: Photo): [number, number, number, number, number, number] {
  const { along, across, angle } = photoScale(photo.lines)
  const [fx, fy] = photoFoot(photo)
  const [cos, sin] = [Math.cos(angle / DEGREES), Math.sin(angle / DEGREES)]
  const [a, c, b, d] = [cos / along, sin / along, -sin / across, cos / across].map((n) => n + 0) as Four
  return [a, b, c, d, 0 - (a * fx + c * fy), 0 - (b * fx + d * fy)]
}

type Four = [number, number, number, number]
