import { inches, nm } from '../units/length.ts'
import type { RouteContext } from './context.ts'
import type { Zone } from './features.ts'

/** Width of the straight a steady rest runs on. Common practice, no source. */
const JOURNAL = inches(2)

/** The straight that the steady rest runs on. Lengths mm. */
export interface Journal {
  zone: Zone
  at: number
  from: number
  to: number
}

/** The limberest place, mm from the foot of its own part: along a stick of several parts they repeat. */
function limberestPlace({ whip, blank, parts, length }: RouteContext): number {
  if (parts === 1) return whip.at
  const pitch = length + blank.lengthParts.between / (parts - 1)
  return Math.min(length, whip.at - Math.floor(whip.at / pitch) * pitch)
}

/** Where the steady rest stands, in the turned wood next to the limberest place; none where no rest is called for. */
export function journalOf(context: RouteContext): Journal | undefined {
  if (!context.slender || context.zones.length === 0) return undefined
  const limberest = context.spans[0]!.from + limberestPlace(context)
  const zone = context.zoneAt(limberest)
  const at = Math.min(Math.max(limberest, zone.from), zone.to)
  const width = Math.min(JOURNAL, zone.to - zone.from)
  const from = Math.min(Math.max(zone.from, at - width / 2), zone.to - width)
  return { zone, at, from, to: from + width }
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
