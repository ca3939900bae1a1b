import { mmOfNm, nm } from '../units/length.ts'
import type { CutOrder, Offcut } from './board.ts'
import { type ClearWood, overlap, type Run, without } from './clear.ts'
import type { SectionLayout, StripLayout } from './layout.ts'
import { startIn } from './runs.ts'
import type { BlankSize } from './sorted-order.ts'

/** Stretches of `whole` a kerf clear of what is cut from it. */
const between = (whole: Run, cut: readonly Run[], kerf: number): Run[] =>
  without(
    whole,
    cut.map(([from, to]): Run => [from - kerf, to + kerf]),
  )

/** A band beside the stripes of crook, sap or pith that run all along it: they are ripped off. */
function besideStripes({ defects }: ClearWood, within: Run, band: Run, kerf: number): Run[] {
  const stripes = defects.filter((d) => d.along[0] <= within[0] && d.along[1] >= within[1])
  let end = Number.NEGATIVE_INFINITY
  return without(
    band,
    stripes.map((d) => d.across),
  ).flatMap((clear): Run[] => {
    const run: Run = [startIn(clear, end, kerf), clear[1]]
    if (run[1] <= run[0]) return []
    end = run[1]
    return [run]
  })
}

/**
 * What is left of a board and long enough to keep: ends of strips, and wood beside strips and sections that is
 * at least as wide as the narrowest blank. Clear of defects and trim, a kerf from every blank.
 */
export function offcutsOf(
  wood: ClearWood,
  { strips = [], sections = [] }: { strips?: StripLayout[]; sections?: SectionLayout[] },
  sizes: BlankSize[],
  order: CutOrder,
): Offcut[] {
  const kerf = nm(order.kerf)
  const least = nm(order.minOffcut)
  const narrowest = Math.min(...sizes.map((s) => s.side))
  const { along, across } = wood.usable
  const offcuts: Offcut[] = []
  const keep = (within: Run, band: Run, cut: Run[] = []) => {
    if (band[1] - band[0] < narrowest) return
    const over = wood.defects.filter((d) => overlap(d.across, band)).map((d) => d.along)
    let end = Number.NEGATIVE_INFINITY
    for (const clear of without(within, over)) {
      // A check may be narrower than the saw.
      for (const [from, to] of between([startIn(clear, end, kerf), clear[1]], cut, kerf)) {
        if (to - from < least) continue
        end = to
        offcuts.push({ from: mmOfNm(from), to: mmOfNm(to), across: [mmOfNm(band[0]), mmOfNm(band[1])] })
      }
    }
  }
  const keepBeside = (within: Run, band: Run) => {
    for (const clear of besideStripes(wood, within, band, kerf)) keep(within, clear)
  }
  for (const strip of strips) {
    const cut = strip.spots.map((s): Run => [s.along, s.along + sizes[s.size]!.length])
    keep(along, [strip.across, strip.across + strip.side], cut)
  }
  if (strips.length > 0) {
    const cut = strips.map((s): Run => [s.across, s.across + s.side])
    for (const band of between(across, cut, kerf)) keepBeside(along, band)
  }
  for (const section of sections) {
    const cut = section.spots.map((s): Run => [s.across, s.across + sizes[s.size]!.side])
    for (const band of between(across, cut, kerf)) keepBeside(section.along, band)
  }
  if (sections.length > 0) {
    const cut = sections.map((s) => s.along)
    for (const [from, to] of between(along, cut, kerf)) keepBeside([from, to], across)
  }
  return offcuts
}
