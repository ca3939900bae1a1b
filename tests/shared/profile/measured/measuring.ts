import fc from 'fast-check'
import type { Datum, Original, Sheet, SheetStation } from '../../../../shared/profile/measured/sheet.ts'

// the same pieces in every run
fc.configureGlobal({ seed: 1919 })

/** A piece of known size in whole nanometres, as a measuring machine would have it. */
export interface Known {
  /** From the foot as it was made; the first is 0. */
  at: number[]
  diameter: number[]
}

const mm = (nanometres: number): number => nanometres / 1e6

/** How somebody goes about measuring it: what is left of the foot, where the tape starts, which way it goes. */
export interface Habit {
  wear: number
  way: 'running' | 'span'
  /** The tape's start, nanometres from the worn foot; at the foot itself where absent. */
  start?: number
  towards: 'top' | 'foot'
  /** Whether the foot is read from the datum, and whether the datum's distance from the foot is entered. */
  readsFoot: boolean
  entersDistance: boolean
}

/**
 * The readings that a tape gives on the worn piece: every place is a point on a ruler whose zero lies at the foot as
 * it is today, and is read as the ruler distance from wherever the tape is hooked.
 */
export function measuredBy({ at, diameter }: Known, habit: Habit): Original {
  const today = at.map((x, i) => (i === 0 ? 0 : x - habit.wear))
  const datum: Datum | undefined =
    habit.start === undefined
      ? undefined
      : {
          name: 'seat',
          towards: habit.towards,
          ...(habit.entersDistance && { fromFoot: mm(habit.start) }),
        }
  const hook = habit.start ?? 0
  const down = datum?.towards === 'foot'
  const order = today.map((_, i) => i).filter((i) => i > 0 || habit.readsFoot)
  if (down) order.reverse()
  const reads = new Map<number, number>()
  let from = hook
  for (const i of order) {
    reads.set(i, down ? from - today[i]! : today[i]! - from)
    if (habit.way === 'span') from = today[i]!
  }
  return {
    name: 'the original',
    ...(datum && { datum }),
    ...(habit.wear > 0 && { wear: mm(habit.wear) }),
    readings: diameter.map((d, i) => {
      const read = reads.get(i)
      return { ...(read !== undefined && { at: mm(read) }), diameters: [mm(d)] }
    }),
  }
}

/** A sheet with that many plain stations. */
export const sheetOf = (
  stations: number | Partial<SheetStation>[],
  originals: Original[],
  more: Partial<Sheet> = {},
): Sheet => ({
  units: 'mm',
  way: 'running',
  choice: 'larger',
  stations: (typeof stations === 'number' ? Array.from({ length: stations }, () => ({})) : stations).map(
    (station) => ({ then: 'straight', ...station }),
  ),
  originals,
  ...more,
})

/** An original from a table of [position, …diameters]. */
export const originalOf = (
  rows: readonly (readonly (number | undefined)[])[],
  more: Partial<Original> = {},
): Original => ({
  name: '',
  readings: rows.map(([at, ...diameters]) => ({
    ...(at !== undefined && { at }),
    diameters: diameters.filter((d) => d !== undefined),
  })),
  ...more,
})

/** Any piece of 2 to 14 stations whose foot is a plain cylinder for at least 12 mm, steps among them. */
export const anyPiece: fc.Arbitrary<Known> = fc
  .array(
    fc.record({
      width: fc.oneof({ weight: 4, arbitrary: fc.integer({ min: 1_000, max: 200_000_000 }) }, fc.constant(0)),
      diameter: fc.integer({ min: 1_000_000, max: 120_000_000 }),
    }),
    { minLength: 0, maxLength: 12 },
  )
  .map((spans) => {
    const at = [0, 12_000_000]
    const diameter = [30_000_000, 30_000_000]
    let steps = 0
    for (const span of spans) {
      // a step is two stations at one position, never three
      steps = span.width === 0 ? steps + 1 : 0
      at.push(at.at(-1)! + (steps > 1 ? 1_000_000 : span.width))
      if (steps > 1) steps = 0
      diameter.push(span.diameter)
    }
    return { at, diameter }
  })

export const anyHabit: fc.Arbitrary<Habit> = fc
  .record({
    wear: fc.integer({ min: 0, max: 11_000_000 }),
    way: fc.constantFrom('running' as const, 'span' as const),
    start: fc.option(fc.integer({ min: 0, max: 900_000_000 }), { nil: undefined }),
    towards: fc.constantFrom('top' as const, 'foot' as const),
    readsFoot: fc.boolean(),
    entersDistance: fc.boolean(),
  })
  // one of the two has to tell where the foot is; without a datum the tape is hooked at the foot
  .filter(({ start, readsFoot, entersDistance }) => start === undefined || readsFoot || entersDistance)
