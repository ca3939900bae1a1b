import type { OutlinePoint } from '../../shared/profile/outline.ts'

/** Drawing figures: a tenth of a pixel is as fine as anything shows. */
export const tenth = (n: number): number => Math.round(n * 10) / 10

/** The outline in drawing units, `scale` of them to a mm. */
export const scaledOutline = (outline: readonly OutlinePoint[], scale: number): OutlinePoint[] =>
  outline.map(({ x, r }) => ({ x: x * scale, r: r * scale }))

/**
 * SVG path of one half of the part between its axis (y = 0) and its outline: `side` -1 above the axis, 1 below.
 * Squeezed towards the axis it is the same surface seen at another angle round it.
 */
export function halfPath(outline: readonly OutlinePoint[], side: -1 | 1): string {
  const first = outline[0]
  const last = outline.at(-1)
  if (!first || !last) return ''
  let path = `M${tenth(first.x)} 0`
  for (const { x, r } of outline) path += `L${tenth(x)} ${tenth(side * r)}`
  return `${path}L${tenth(last.x)} 0Z`
}

/** SVG path of the whole silhouette about the axis y = 0. */
export function silhouettePath(outline: readonly OutlinePoint[]): string {
  if (outline.length === 0) return ''
  let path = 'M'
  for (const { x, r } of outline) path += `${tenth(x)} ${tenth(-r)}L`
  for (let i = outline.length - 1; i >= 0; i--)
    path += `${tenth(outline[i]!.x)} ${tenth(outline[i]!.r)}${i > 0 ? 'L' : 'Z'}`
  return path
}

/** The outline with points added so that no two neighbours lie farther apart than `most` along the axis. */
export function closeSet(outline: readonly OutlinePoint[], most: number): OutlinePoint[] {
  const points: OutlinePoint[] = []
  outline.forEach((point, i) => {
    const before = outline[i - 1]
    const parts = before ? Math.ceil((point.x - before.x) / most) : 1
    for (let k = 1; before && k < parts; k++) {
      const t = k / parts
      points.push({ x: before.x + (point.x - before.x) * t, r: before.r + (point.r - before.r) * t })
    }
    points.push(point)
  })
  return points
}

/** Places where the radius jumps: a step or a shoulder; `r` is the larger of the two. */
export function stepsOf(outline: readonly OutlinePoint[]): OutlinePoint[] {
  return outline.flatMap((point, i) => {
    const next = outline[i + 1]
    return next && next.x - point.x < 1e-9 && Math.abs(next.r - point.r) > 1e-9
      ? [{ x: point.x, r: Math.max(point.r, next.r) }]
      : []
  })
}
