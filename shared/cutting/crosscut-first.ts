import { type Grid, overlap, type Run, without } from './clear.ts'
import { bestFill } from './fill.ts'
import { copyOf, type Layout, repeats, type SectionLayout, sumOf, use, type Wanted } from './layout.ts'
import { bestOf } from './rip-first.ts'
import { type Filled, fillRuns, startIn, startsOf, weighed } from './runs.ts'
import type { BoardKind, SortedOrder } from './sorted-order.ts'

/** Places tried for the next section on a board with defects here and there. */
const PLACES_MAX = 4

interface Section extends Filled {
  /** As long as its longest blank. */
  length: number
}

/** The best blanks side by side in a section of at most this length; `undefined` when none is wanted. */
function sectionOf(
  sorted: SortedOrder,
  kind: BoardKind,
  bands: readonly Run[],
  most: number,
  wanted: Wanted,
): Section | undefined {
  const sizes = kind.thickEnough.sizes.filter((s) => sorted.sizes[s]!.length <= most)
  const filled = fillRuns(
    sorted,
    bands,
    { name: `section ${kind.thickEnough.name} ${most}`, sizes, measure: 'side' },
    wanted,
  )
  if (filled.value <= 0) return undefined
  return { ...filled, length: Math.max(...[...filled.takes.keys()].map((s) => sorted.sizes[s]!.length)) }
}

/** Lengths still wanted on this board, long ones first. */
function lengthsWanted(sorted: SortedOrder, kind: BoardKind, wanted: Wanted): number[] {
  const lengths = new Set<number>()
  for (const s of kind.thickEnough.sizes) if (wanted.left[s]! > 0) lengths.add(sorted.sizes[s]!.length)
  return weighed(
    [...lengths].sort((a, b) => b - a),
    sorted.breadth.parts,
    wanted,
  )
}

/** The sections there are to choose from, one of each length. */
function sectionChoices(
  sorted: SortedOrder,
  kind: BoardKind,
  bands: readonly Run[],
  room: number,
  wanted: Wanted,
): Section[] {
  const byLength = new Map<number, Section>()
  for (const most of lengthsWanted(sorted, kind, wanted)) {
    if (most + sorted.kerf > room) continue
    const section = sectionOf(sorted, kind, bands, most, wanted)
    if (section && section.value > (byLength.get(section.length)?.value ?? 0))
      byLength.set(section.length, section)
  }
  return [...byLength.values()].sort((a, b) => b.length - a.length)
}

/** Sections for one run, chosen together as if none took from another, then cut while blanks last, and again. */
function sectionsIn(
  sorted: SortedOrder,
  kind: BoardKind,
  bands: readonly Run[],
  room: number,
  wanted: Wanted,
): Section[] {
  const { kerf } = sorted
  const cut: Section[] = []
  for (let left = room; ; ) {
    const options = sectionChoices(sorted, kind, bands, left, wanted)
    const choices = options.map((o, size) => ({
      size,
      room: o.length + kerf,
      value: o.value,
      limit: repeats(o.takes, wanted.left),
    }))
    const chosen = bestFill(left, choices, wanted.effort)
    const before = cut.length
    chosen.sizes.forEach((o, i) => {
      const option = options[o]!
      const times = Math.min(chosen.counts[i]!, repeats(option.takes, wanted.left))
      use(wanted.left, option.takes, times)
      for (let n = 0; n < times; n++) cut.push(option)
      left -= times * (option.length + kerf)
    })
    if (cut.length === before) return cut
  }
}

/** The best sections on a board whose clear wood is a grid. */
export function crosscutFirst(sorted: SortedOrder, kind: BoardKind, grid: Grid, wanted: Wanted): Layout {
  const own = copyOf(wanted)
  const cut: { along: number; section: Section; bands: readonly Run[] }[] = []
  let end = Number.NEGATIVE_INFINITY
  for (const run of grid.runs) {
    let along = startIn(run, end, sorted.kerf)
    for (const section of sectionsIn(sorted, kind, grid.bands, run[1] - along + sorted.kerf, own)) {
      cut.push({ along, section, bands: grid.bands })
      end = along + section.length
      along = end + sorted.kerf
    }
  }
  return sectionsLayout(sorted, cut)
}

function sectionsLayout(
  sorted: SortedOrder,
  cut: { along: number; section: Section; bands: readonly Run[] }[],
): Layout {
  return {
    process: 'crosscut-first',
    takes: sumOf(cut.map(({ section }) => section.takes)),
    value: cut.reduce((sum, { section }) => sum + section.value, 0),
    sections: () =>
      cut.map(({ along, section, bands }): SectionLayout => {
        const spots = startsOf(sorted, section.fills, bands, 'side').map(({ size, at }) => ({
          size,
          along,
          across: at,
        }))
        return { along: [along, along + section.length], spots }
      }),
  }
}

/** Sections laid one after another from the butt end, each seeing only the defects in it. */
export function crosscutFirstAround(sorted: SortedOrder, kind: BoardKind, wanted: Wanted): Layout {
  const { usable, defects } = kind.wood
  const own = copyOf(wanted)
  const cut: { along: number; section: Section; bands: Run[] }[] = []
  const ends = defects.map((d) => d.along[1]).sort((a, b) => a - b)
  for (let next = usable.along[0]; ; ) {
    const places = [...new Set([next, ...ends.filter((e) => e > next)])].slice(0, PLACES_MAX)
    const best = bestOf(
      places.flatMap((along) =>
        lengthsWanted(sorted, kind, own).flatMap((most) => {
          if (along + most > usable.along[1]) return []
          own.effort.steps += 2 * defects.length
          const over = defects.filter((d) => overlap(d.along, [along, along + most]))
          const bands = without(
            usable.across,
            over.map((d) => d.across),
          )
          const section = sectionOf(sorted, kind, bands, most, own)
          if (!section) return []
          return [
            { along, section, bands, worth: section.value / (along - next + section.length + sorted.kerf) },
          ]
        }),
      ),
    )
    if (!best) return sectionsLayout(sorted, cut)
    cut.push(best)
    use(own.left, best.section.takes)
    next = best.along + best.section.length + sorted.kerf
  }
}
