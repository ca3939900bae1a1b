import { mmOfNm, nm } from '../../units/length.ts'
import { chosenDiameter, meanMm, outOfRound } from './diameter.ts'
import { positionsFromFoot } from './positions.ts'
import type { Sheet } from './sheet.ts'

/** One length read on several originals, mm; `n` tells on how many. */
export interface Spread {
  n: number
  mean: number
  least: number
  greatest: number
  range: number
}

/** What all originals together tell of a place; absent where none of them was read there. */
export interface GatheredStation {
  index: number
  /** From the foot as it was made. */
  at?: Spread
  diameter?: Spread
  /** Greatest difference of two diameters at 90° on one original. */
  outOfRound?: number
}

/**
 * Mean, least, greatest and range of lengths in mm, to the nanometre; readings that are missing do not count.
 *
 * @example spreadOf([10, undefined, 10.5]) // { n: 2, mean: 10.25, least: 10, greatest: 10.5, range: 0.5 }
 */
export function spreadOf(lengths: readonly (number | undefined)[]): Spread | undefined {
  const read = lengths.filter((mm) => mm !== undefined)
  if (read.length === 0) return undefined
  const [least, greatest] = [Math.min(...read), Math.max(...read)]
  const range = mmOfNm(nm(greatest) - nm(least))
  return { n: read.length, mean: meanMm(read), least, greatest, range }
}

type Positions = (number | undefined)[]

/** Whether every original with both places read has them at one position, and at least one has. */
function isStep(originals: readonly Positions[], i: number): boolean {
  const both = originals.filter((at) => at[i] !== undefined && at[i + 1] !== undefined)
  return both.length > 0 && both.every((at) => nm(at[i]!) === nm(at[i + 1]!))
}

/** Positions with the two sides of a step told by whichever was read, so that a missing reading opens no gap there. */
function withWholeSteps(originals: readonly Positions[], places: number): Positions[] {
  const filled = originals.map((at) => [...at])
  for (let i = 0; i + 1 < places; i++) {
    if (!isStep(originals, i)) continue
    for (const at of filled) {
      at[i] ??= at[i + 1]
      at[i + 1] ??= at[i]
    }
  }
  return filled
}

/** The positions of a place that count: an original that was not read down to its foot tells nothing of the foot. */
function counting(positions: readonly Positions[], index: number): Positions {
  const all = positions.map((places) => places[index])
  return index === 0 && all.includes(0) ? all.filter((at) => at === 0) : all
}

/**
 * Every place of the sheet over all originals: position and diameter with their spread. Each original counts once
 * with the diameter chosen there.
 */
export function gatheredStations(sheet: Sheet): GatheredStation[] {
  const { stations, originals, choice } = sheet
  const positions = withWholeSteps(
    originals.map((original) => positionsFromFoot(sheet, original)),
    stations.length,
  )
  return stations.map((_, index) => {
    const read = originals.map(({ readings }) => readings[index]?.diameters ?? [])
    const at = spreadOf(counting(positions, index))
    const diameter = spreadOf(read.map((diameters) => chosenDiameter(diameters, choice)))
    const ovals = read.flatMap((diameters) => outOfRound(diameters) ?? [])
    return {
      index,
      ...(at && { at }),
      ...(diameter && { diameter }),
      ...(ovals.length > 0 && { outOfRound: Math.max(...ovals) }),
    }
  })
}
