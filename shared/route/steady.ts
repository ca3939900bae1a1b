import { type RestPlace, restPlace } from '../profile/rest-place.ts'
import { nm } from '../units/length.ts'
import type { RouteContext } from './context.ts'
import type { Zone } from './features.ts'

/** The straight that the steady rest runs on. Lengths mm. */
export interface Journal extends RestPlace {
  zone: Zone
}

/** The limberest place, mm from the foot of its own part: along a stick of several parts they repeat. */
function limberestPlace({ whip, blank, parts, length }: RouteContext): number {
  if (parts === 1) return whip.at
  const pitch = length + blank.lengthParts.between / (parts - 1)
  return Math.min(length, whip.at - Math.floor(whip.at / pitch) * pitch)
}

/** Where the steady rest stands, in the turned wood next to the limberest place; none where no rest is called for. */
export function journalOf(context: RouteContext): Journal | undefined {
  if (!context.slender) return undefined
  const place = restPlace(context.spans, context.spans[0]!.from + limberestPlace(context))
  return place && { ...place, zone: context.zoneAt(place.at) }
}

/** What a sizing cut is told that falls into the journal. */
export const grooveCaution = ({ journal }: RouteContext, at: number): string | undefined =>
  journal && nm(at) > nm(journal.from) && nm(at) < nm(journal.to)
    ? 'It lies in the journal: the rollers of the steady rest run beside the groove.'
    : undefined

/** What a cut between two places is told where it comes upon the journal. */
export function journalCaution(context: RouteContext, from: number, to: number): string | undefined {
  const { journal } = context
  if (!journal || nm(from) >= nm(journal.to) || nm(journal.from) >= nm(to)) return undefined
  return `Leave the steady rest its journal, ${context.text(journal.from)} to ${context.text(journal.to)}, until last.`
}
