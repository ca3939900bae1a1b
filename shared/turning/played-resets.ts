import type { CaliperCut } from './kept-settings.ts'
import { codeOf, type Kinds, openClasses, openCuts, type Reset } from './sizing-state.ts'

/** The settings themselves: which cuts of each are made on this piece, as bits, and which caliper is set to it. */
interface Bench {
  kinds: Kinds
  made: number[]
  caliperOf: (number | undefined)[]
}

const codeAt = ({ kinds, made, caliperOf }: Bench, setting: number): number =>
  codeOf(kinds.kindOf[setting]!, made[setting]!, caliperOf[setting] !== undefined)

/** Makes every cut that the calipers as they stand allow, the settings in that order; `anew` was just set. */
function cutAll(bench: Bench, settings: number[], anew?: number): CaliperCut[] {
  const { kinds, made, caliperOf } = bench
  const cuts: CaliperCut[] = []
  for (;;) {
    const codes = settings.map((setting) => codeAt(bench, setting))
    const open = openClasses(kinds, codes)
    const at = settings.findIndex(
      (setting, i) => caliperOf[setting] !== undefined && openCuts(kinds, codes[i]!, open) > 0,
    )
    if (at < 0) return cuts
    const setting = settings[at]!
    const bits = openCuts(kinds, codes[at]!, open)
    const bit = kinds.cutsOf[setting]!.findIndex((_, i) => (bits >> i) & 1)
    made[setting]! |= 1 << bit
    const reset = setting === anew && !cuts.some(({ reset }) => reset)
    cuts.push({ cut: kinds.cutsOf[setting]![bit]!, caliper: caliperOf[setting]!, reset })
  }
}

/** Sets a caliper over; the next one that was not set yet where none is given up. */
function setOver(bench: Bench, settings: number[], { set, given }: Reset): number {
  const { caliperOf } = bench
  const withCode = (code: number): number => settings.find((setting) => codeAt(bench, setting) === code)!
  const wanted = withCode(set)
  if (given === undefined) caliperOf[wanted] = caliperOf.filter((caliper) => caliper !== undefined).length
  else {
    const old = withCode(given)
    caliperOf[wanted] = caliperOf[old]
    caliperOf[old] = undefined
  }
  return wanted
}

/**
 * Plays the resets of each piece through with real settings, to tell the order of the cuts and which caliper is set: on
 * odd pieces the thicker first where there is a choice, on even ones the thinner.
 */
export function played(kinds: Kinds, pieces: Reset[][]): CaliperCut[][] {
  const caliperOf: Bench['caliperOf'] = kinds.kindOf.map(() => undefined)
  return pieces.map((resets, piece) => {
    const bench = { kinds, made: kinds.kindOf.map(() => 0), caliperOf }
    const settings = [...kinds.kindOf.keys()]
    if (piece % 2 === 1) settings.reverse()
    const cuts = cutAll(bench, settings)
    for (const reset of resets) cuts.push(...cutAll(bench, settings, setOver(bench, settings, reset)))
    return cuts
  })
}
