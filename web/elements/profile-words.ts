import { type OutlinePoint, outlineRadius } from '../../shared/profile/outline.ts'
import type { Profile } from '../../shared/profile/profile.ts'
import { type LengthStyle, lengthText } from '../../shared/units/length.ts'
import { keptOutline } from './part-outlines.ts'

/** How long and how thick a part is, and how many stations say so. */
export function profileWords(profile: Profile, style: LengthStyle): string {
  const outline: readonly OutlinePoint[] = keptOutline(profile)
  const long = lengthText(outline.at(-1)?.x ?? 0, style)
  return `${long} long, ${lengthText(2 * outlineRadius(outline), style)} at its thickest, ${profile.stations.length} stations`
}
