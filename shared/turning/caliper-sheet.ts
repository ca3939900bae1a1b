import { nm } from '../units/length.ts'
import type { CaliperRound } from './caliper-rounds.ts'
import type { CaliperMounting, Calipers, SettingSum } from './calipers.ts'

/** When a sizing cut is made on the pieces of a round, with which caliper, and whether that is set anew for it. */
export interface SizingTurn {
  /** 1 is the first sizing cut of the piece. */
  place: number
  /** A letter; absent in older plans, which did not tell. */
  caliper?: string
  reset?: boolean
}

/** A sizing cut as it stands on the caliper card; diameter in mm. */
export interface CaliperRow {
  diameter: number
  stations: string[]
  sums: SettingSum[]
  /** One for each round. */
  turns: SizingTurn[]
}

/** Caliper settings in the order of work. */
export interface CaliperSheet {
  /** Which pieces go by each round, in words. */
  rounds: string[]
  /** In the order the first piece meets them. */
  rows: CaliperRow[]
}

/** Calipers are told apart by letters. */
const letterOf = (caliper: number): string =>
  caliper <= 26 ? String.fromCharCode(64 + caliper) : `${caliper}`

/** More pieces of a round than these are left to be counted on. */
const LISTED_MAX = 3

/** `piece 1`, `pieces 2, 4, 6, …`, `from piece 2 on`; of so many pieces there are. */
function piecesOf({ first, every }: CaliperRound, pieces: number): string {
  if (every === undefined) return `piece ${first}`
  if (every === 1) return first === 1 ? 'every piece' : `from piece ${first} on`
  const all = Array.from({ length: LISTED_MAX + 1 }, (_, i) => first + i * every).filter((n) => n <= pieces)
  return `pieces ${all.slice(0, LISTED_MAX).join(', ')}${all.length > LISTED_MAX ? ' …' : ''}`
}

const sumsOf = ({ settings }: Calipers, diameter: number): SettingSum[] =>
  settings.filter((one) => nm(one.diameter) === nm(diameter)).flatMap(({ sums = [] }) => sums)

/** Plans from before rounds were told: there on odd pieces and back on even ones, or every piece alike. */
function sheetOfOld(calipers: Calipers): CaliperSheet {
  const { order, settings, oneWay } = calipers
  return {
    rounds: oneWay ? ['every piece'] : ['odd pieces', 'even pieces'],
    rows: order.map((diameter, i) => ({
      diameter,
      stations: settings
        .filter((one) => nm(one.diameter) === nm(diameter))
        .flatMap(({ stations }) => stations),
      sums: [],
      turns: [{ place: i + 1 }, { place: order.length - i }].slice(0, oneWay ? 1 : 2),
    })),
  }
}

function sheetOf(calipers: Calipers, { rounds }: CaliperMounting, pieces: number): CaliperSheet {
  const keyOf = ({ diameter, stations }: { diameter: number; stations: string[] }): string =>
    `${nm(diameter)} ${stations}`
  const turnsOf = (key: string): SizingTurn[] =>
    rounds.map(({ cuts }) => {
      const at = cuts.findIndex((cut) => keyOf(cut) === key)
      const { caliper, reset } = cuts[at]!
      return { place: at + 1, caliper: letterOf(caliper), reset }
    })
  return {
    rounds: rounds.map((round) => piecesOf(round, pieces)),
    rows: (rounds[0]?.cuts ?? []).map((cut) => ({
      diameter: cut.diameter,
      stations: cut.stations,
      sums: sumsOf(calipers, cut.diameter),
      turns: turnsOf(keyOf(cut)),
    })),
  }
}

/**
 * The settings as they are worked through, for card and screen, one sheet for each mounting; of plans of any age. None
 * where nothing is sized.
 */
export function caliperSheets(calipers: Calipers, pieces: number): CaliperSheet[] {
  const { mountings } = calipers
  const sheets = mountings
    ? mountings.map((mounting) => sheetOf(calipers, mounting, pieces))
    : [sheetOfOld(calipers)]
  return sheets.filter(({ rows }) => rows.length > 0)
}

const times = (count: number): string => `${count} ${count === 1 ? 'time' : 'times'}`

/** How often the calipers are set in all, and how sure it is that no order asks for less. */
export function resetWords({ total, oneWay, mountings }: Calipers, blanks: number): string {
  const byRounds = mountings?.reduce((sum, mounting) => sum + (mounting.byRounds ?? mounting.total), 0)
  const made = byRounds ?? oneWay?.total ?? total
  const set = `calipers are set ${times(made)} in all for ${blanks} ${blanks === 1 ? 'blank' : 'blanks'}`
  if (!mountings) return set
  if (!mountings.every(({ proven }) => proven)) return `${set}; fewer may be possible`
  if (made === total) return `${set}, and no order of cuts needs fewer`
  return `${set}; ${total} at the least, with the order changed from piece to piece`
}
