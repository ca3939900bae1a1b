import { type OutlinePoint, outlineOf, outlineRadius } from '../../shared/profile/outline.ts'
import type { Profile } from '../../shared/profile/profile.ts'
import { scaledOutline, silhouettePath } from './part-silhouette.ts'

/** A part as a small flat shape, foot at x = 0, 1000 units long. */
export interface Silhouette {
  path: string
  half: number
}

const outlines = new WeakMap<Profile, OutlinePoint[]>()
const silhouettes = new WeakMap<Profile, Silhouette>()

/** The outline of a profile, worked out once for each. */
export function keptOutline(profile: Profile): OutlinePoint[] {
  const kept = outlines.get(profile) ?? outlineOf(profile)
  outlines.set(profile, kept)
  return kept
}

export const SILHOUETTE_LENGTH = 1000

/** The silhouette of a profile, worked out once for each. */
export function silhouetteOf(profile: Profile): Silhouette {
  const kept = silhouettes.get(profile)
  if (kept) return kept
  const outline = keptOutline(profile)
  const points = scaledOutline(outline, SILHOUETTE_LENGTH / (outline.at(-1)?.x ?? 1))
  const made = { path: silhouettePath(points), half: outlineRadius(points) }
  silhouettes.set(profile, made)
  return made
}
