import type { Clip, Edited } from '../../shared/profile/edit/edited.ts'
import { sagittaField } from '../../shared/profile/edit/fitted-arc.ts'
import {
  mirroredAfter,
  mirroredGroup,
  mirroredPart,
  pastedClip,
  repeatedGroup,
} from '../../shared/profile/edit/group.ts'
import { insertedAt, splitSpan } from '../../shared/profile/edit/insert.ts'
import { movedSagitta, movedStation } from '../../shared/profile/edit/move.ts'
import { withoutStations } from '../../shared/profile/edit/remove.ts'
import { scaledDiameters, scaledLengths } from '../../shared/profile/edit/scale.ts'
import { dragged, pressStep, type Snap } from '../../shared/profile/edit/snap.ts'
import type { Station } from '../../shared/profile/profile.ts'
import { READABLE_LENGTHS, readLength, type Units } from '../../shared/units/length.ts'
import { inUnitsFirst } from '../field-words.ts'
import type { Handle } from './drawing-handles.ts'
import type { Tool } from './profile-tools.ts'
import { middleAfter } from './station-spans.ts'

/** A refusal that the editor shows as a sentence. */
export class NotDone extends Error {}

/** What the editor works on. */
export interface Ground {
  stations: Station[]
  /** First and last chosen station. */
  from: number
  to: number
  snap: Snap
  units: Units
  clip?: Clip | undefined
}

/** A change and what it is called. */
export interface Done {
  label: string
  edited: Edited
}

/** The sagitta that brings the middle of the arc after a station to a radius, mm. */
function sagittaFor(stations: readonly Station[], i: number, r: number): number {
  const line = ((stations[i]!.diameter ?? 0) + (stations[i + 1]?.diameter ?? 0)) / 4
  return Math.max(0, sagittaField(stations[i]!.then) === 'depth' ? line - r : r - line)
}

/** The stations with what is held dragged to a place and a radius, mm. */
export function draggedTo(
  { stations, snap, units }: Ground,
  { index, field }: Handle,
  { at, r }: { at?: number; r?: number },
): Edited {
  const near = (mm: number) => dragged(mm, snap, units)
  if (field === 'sagitta')
    return movedSagitta(stations, index, near(sagittaFor(stations, index, r ?? 0)), snap)
  if (field === 'side')
    return movedStation(stations, index, r === undefined ? {} : { side: near(2 * r) }, snap)
  return movedStation(
    stations,
    index,
    { ...(at !== undefined && { at: near(at) }), ...(r !== undefined && { diameter: near(2 * r) }) },
    snap,
  )
}

/** The stations with the one at hand moved or sized by so many steps of the grid. */
export function nudged(
  { stations, snap, units }: Ground,
  index: number,
  field: 'at' | 'diameter' | 'size',
  steps: number,
): Done {
  const station = stations[index]!
  const by = steps * pressStep(snap, units)
  const label = (what: string) => `${what} of station ${index}`
  if (field === 'at') {
    return {
      label: `Move station ${index}`,
      edited: movedStation(stations, index, { at: station.at + by }, snap),
    }
  }
  if (field === 'diameter') {
    if (station.diameter === undefined)
      throw new NotDone(`Station ${index} has no diameter of its own: the square beside it has a side.`)
    return {
      label: label('Diameter'),
      edited: movedStation(stations, index, { diameter: station.diameter + by }, snap),
    }
  }
  if (station.then === 'square')
    return {
      label: label('Side'),
      edited: movedStation(stations, index, { side: (station.side ?? 0) + by }, snap),
    }
  const arc = sagittaField(station.then)
  if (!arc) throw new NotDone(`A ${station.then} has no rise, depth or side.`)
  const half = ((stations[index + 1]?.at ?? station.at) - station.at) / 2
  const sagitta = station[arc] ?? half
  return {
    label: label(arc === 'rise' ? 'Rise' : 'Depth'),
    edited: movedSagitta(stations, index, Math.max(0, sagitta + by), snap),
  }
}

/** A station put in at a place, mm from the foot. */
export const insertedThere = ({ stations, snap }: Ground, at: number): Done => ({
  label: 'Insert a station',
  edited: insertedAt(stations, at, snap),
})

function wholeNumber(text: string, what: string, least: number): number {
  const number = Number(text.trim())
  if (!Number.isInteger(number) || number < least)
    throw new NotDone(`${what} must be a whole number from ${least} on; read ${text || 'nothing'}.`)
  return number
}

function lengthTyped(text: string, what: string, units: Units): number {
  const mm = readLength(text, units)
  if (mm === undefined || mm <= 0)
    throw new NotDone(
      `${what} must be a length of more than 0 (${inUnitsFirst(READABLE_LENGTHS, units)}); read ${text}.`,
    )
  return mm
}

/** How many times larger: `× 1.1`, `110 %`, or a new size beside the present one, mm. */
function factorTyped(text: string, present: number, units: Units): number {
  const times = /^(?:[×x*]\s*([\d.,]+)|([\d.,]+)\s*%)$/i.exec(text.trim())
  if (!times) return lengthTyped(text, 'The new size', units) / present
  const factor = times[1] ? Number(times[1].replace(',', '.')) : Number(times[2]!.replace(',', '.')) / 100
  if (!(factor > 0)) throw new NotDone(`The factor must be more than 0; read ${text}.`)
  return factor
}

/** The largest diameter or side of a square, mm: what scaling to a thickness goes by. */
export const thickestSize = (stations: readonly Station[]): number =>
  Math.max(
    0,
    ...stations.map(({ diameter = 0, then, side = 0 }) => Math.max(diameter, then === 'square' ? side : 0)),
  )

function scaled(
  { stations, snap, units }: Ground,
  { what, to, keepRound }: Tool & { tool: 'scale' },
): Edited {
  const present = what === 'lengths' ? stations.at(-1)!.at : thickestSize(stations)
  const factor = factorTyped(to, present, units)
  return what === 'lengths'
    ? scaledLengths(stations, factor, { keepRound, snap })
    : scaledDiameters(stations, factor, { keepRound, snap })
}

/**
 * The change a tool makes of the chosen stations; nothing for a tool that changes none.
 * @throws Problem or NotDone, with a sentence that says why not
 */
export function toolEdit(ground: Ground, tool: Tool): Done | undefined {
  const { stations, from } = ground
  // A group has at least one span.
  const to = ground.to > from ? ground.to : Math.min(from + 1, stations.length - 1)
  const reach = `stations ${from} to ${to}`
  switch (tool.tool) {
    case 'insert':
      return insertedThere(ground, middleAfter(stations, ground.to))
    case 'delete':
      return {
        label: ground.to > from ? `Delete ${reach}` : `Delete station ${from}`,
        edited: withoutStations(stations, from, ground.to, false),
      }
    case 'close-up':
      return { label: `Take out ${reach}`, edited: withoutStations(stations, from, to, true) }
    case 'mirror':
      return { label: `Mirror ${reach}`, edited: mirroredGroup(stations, from, to) }
    case 'mirror-after':
      return { label: `Mirror image of ${reach}`, edited: mirroredAfter(stations, from, to) }
    case 'turn':
      return { label: 'Turn the part end for end', edited: mirroredPart(stations) }
    case 'split': {
      const parts = wholeNumber(tool.parts, 'Equal parts', 2)
      return { label: `Split the span after station ${from}`, edited: splitSpan(stations, from, parts) }
    }
    case 'repeat': {
      const times = wholeNumber(tool.times, 'Times in a row', 2)
      const pitch = tool.pitch.trim() ? lengthTyped(tool.pitch, 'The pitch', ground.units) : undefined
      return { label: `Repeat ${reach}`, edited: repeatedGroup(stations, from, to, times, pitch) }
    }
    case 'paste':
      if (!ground.clip) throw new NotDone('Nothing is copied yet.')
      return { label: 'Paste spans', edited: pastedClip(stations, ground.to, ground.clip) }
    case 'scale':
      return { label: `Scale ${tool.what}`, edited: scaled(ground, tool) }
    default:
      return undefined
  }
}
