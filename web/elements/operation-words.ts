import type { CheckStation } from '../../shared/profile/check-stations.ts'
import type { Profile } from '../../shared/profile/profile.ts'
import { stationOfKey } from '../../shared/profile/station-key.ts'
import type { Operation, Stage } from '../../shared/route/operation.ts'
import { type LengthStyle, lengthText } from '../../shared/units/length.ts'

/** Operations that are done at one place in the shop, in order. */
export interface OperationGroup {
  heading: string
  /** Place of the first of them in the whole order, from 0. */
  first: number
  operations: Operation[]
}

/** The order of work under headings that say where it is done. */
export function operationGroups(operations: readonly Operation[]): OperationGroup[] {
  const groups: OperationGroup[] = []
  const last = operations.reduce(
    (found, { rpm, rpmCeiling }, i) => ((rpm ?? rpmCeiling) !== undefined ? i : found),
    -1,
  )
  let mounted = 0
  operations.forEach((operation, i) => {
    mounted = Math.max(mounted, operation.pass)
    const heading =
      i > last ? 'After the lathe' : mounted === 0 ? 'Before the lathe' : `On the lathe, mounting ${mounted}`
    const group = groups.at(-1)
    if (group?.heading === heading) group.operations.push(operation)
    else groups.push({ heading, first: i, operations: [operation] })
  })
  return groups
}

/** `1650`: whole, as on a lathe's plate, and never above the speed itself. */
export const rpmFigure = (rpm: number): string => String(Math.floor(rpm))

/** Figures such as `2-17/64 in` stay on one line. */
export const unbroken = (text: string): string =>
  text.replace(/(\d)-(\d)/g, '$1\u2011$2').replace(/(\d) (in|mm|rpm)\b/g, '$1\u00a0$2')

/** Where on the part: `from 1-1/4 in to 1-3/4 in`, or the one place of a cut. */
export function whereText(where: readonly [number, number] | null, style: LengthStyle): string {
  if (!where) return 'the whole piece'
  const [from, to] = where.map((mm) => lengthText(mm, style))
  return from === to ? `at ${from}` : `${from} to ${to}`
}

/** What a station of the profile is called: its name, else its number from the foot, 0. */
export function stationName({ stations }: Profile, key: string): string {
  const place = stationOfKey(stations, key)
  if (!place) return key
  const name = stations[place.index]!.name ?? `station ${place.index}`
  return place.point ? `${name} ${place.point}` : name
}

/** What a check station is called. */
export const checkName = (check: CheckStation, profile: Profile): string =>
  check.name ?? stationName(profile, check.key)

export const stageNames: Record<Stage, string> = {
  layout: 'Layout',
  milling: 'Milling',
  joinery: 'Joinery',
  'set-up': 'Set-up',
  turning: 'Turning',
  sharpening: 'Sharpening',
  checking: 'Checking',
  sanding: 'Sanding',
  handwork: 'Handwork',
  finish: 'Finish',
  packing: 'Packing',
}
