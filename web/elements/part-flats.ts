import { type Profile, type Span, spansOf } from '../../shared/profile/profile.ts'
import { spanSection } from '../../shared/profile/radius.ts'
import { halfFlat } from '../../shared/profile/section.ts'
import { tenth } from './part-silhouette.ts'

/** A face left square, seen straight on; drawing units along and about the axis. */
export interface Flat {
  from: number
  to: number
  half: number
  path: string
}

const PARTS = 14

/** Places along a square where its flat changes: closely where a rounded shoulder begins, its ends elsewhere. */
function placesOf({ from, to, rounding: [foot, top] = [0, 0] }: Span): number[] {
  const along = (length: number) =>
    Array.from({ length: PARTS + 1 }, (_, k) => length * (1 - Math.cos(((k / PARTS) * Math.PI) / 2)))
  const fromFoot = foot > 0 ? along(foot).map((u) => from + u) : [from]
  const fromTop = top > 0 ? along(top).map((u) => to - u) : [to]
  return [...fromFoot, ...fromTop].filter((x) => x >= from && x <= to).sort((a, b) => a - b)
}

/** The faces of the spans left square, with their shoulders cut straight in or rounded over; `scale` to a mm. */
export function flatsOf(profile: Profile, scale: number): Flat[] {
  return spansOf(profile)
    .filter((span) => span.shape === 'square')
    .map((span) => {
      const edge = placesOf(span).map(
        (x) => [tenth(x * scale), tenth(halfFlat(spanSection(span, x)) * scale)] as const,
      )
      const down = edge.map(([x, y]) => `${x} ${y}`)
      const back = [...edge].reverse().map(([x, y]) => `${x} ${-y}`)
      const path = `M${[...down, ...back].join('L')}Z`
      return { from: span.from * scale, to: span.to * scale, half: (span.d0 / 2) * scale, path }
    })
}
