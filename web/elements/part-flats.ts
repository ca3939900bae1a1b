import type { Profile, Shoulder } from '../../shared/profile/profile.ts'

/** A face left square, seen straight on; drawing units along and about the axis. */
export interface Flat {
  from: number
  to: number
  half: number
  path: string
}

const tenth = (n: number): number => Math.round(n * 10) / 10

/**
 * Half the width of the flat at `u` from a rounded shoulder of length `a`: what the circle of the rounding,
 * rho(u) = side/2 + (side/√2 - side/2)·√(1 - (1 - u/a)²), leaves of the face side/2 from the axis.
 */
export function flatHalfWidth(side: number, u: number, a: number): number {
  const half = side / 2
  if (u >= a) return half
  const rho = half + (side * Math.SQRT1_2 - half) * Math.sqrt(1 - (1 - u / a) ** 2)
  return Math.sqrt(Math.max(0, rho * rho - half * half))
}

const PARTS = 14

function flatEdge(
  from: number,
  to: number,
  side: number,
  a: number,
  shoulders: [boolean, boolean],
): [number, number][] {
  const points: [number, number][] = []
  const along = Array.from({ length: PARTS + 1 }, (_, k) => a * (1 - Math.cos(((k / PARTS) * Math.PI) / 2)))
  if (shoulders[0]) for (const u of along) points.push([from + u, flatHalfWidth(side, u, a)])
  else points.push([from, side / 2])
  if (shoulders[1]) for (const u of [...along].reverse()) points.push([to - u, flatHalfWidth(side, u, a)])
  else points.push([to, side / 2])
  return points
}

/** The faces of the spans left square, with their shoulders cut straight in or rounded over. */
export function flatsOf(profile: Profile, scale: number): Flat[] {
  return profile.stations.flatMap((station, i) => {
    const next = profile.stations[i + 1]
    if (station.then !== 'square' || !next || next.at <= station.at || station.side === undefined) return []
    const side = station.side * scale
    const given = station.shoulder ?? 'square'
    const pair: [Shoulder, Shoulder] = Array.isArray(given) ? given : [given, given]
    const [from, to] = [station.at * scale, next.at * scale]
    // An end of the part has no shoulder to round.
    const rounded: [boolean, boolean] = [
      pair[0] === 'rounded' && i > 0,
      pair[1] === 'rounded' && i + 1 < profile.stations.length - 1,
    ]
    const a = Math.min(
      station.shoulderLength !== undefined ? station.shoulderLength * scale : (side * (Math.SQRT2 - 1)) / 2,
      to - from,
    )
    const edge = flatEdge(from, to, side, a, rounded)
    const down = edge.map(([x, y]) => `${tenth(x)} ${tenth(y)}`)
    const back = [...edge].reverse().map(([x, y]) => `${tenth(x)} ${tenth(-y)}`)
    return [{ from, to, half: side / 2, path: `M${[...down, ...back].join('L')}Z` }]
  })
}
