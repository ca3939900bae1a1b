/** How a finish goes on. Hours until it can be handled; all figures common practice, no source. */
export interface Finishing {
  kind: 'none' | 'oil' | 'wax' | 'polish' | 'film'
  onLathe: boolean
  coats: number
  dryHours: number
  why: string
  caution?: string
}

const MAKER = 'The finish maker’s instructions come first; gloves off while the lathe runs; fresh air.'
const RAGS = 'Oily rags ignite by themselves: lay them flat outdoors or put them in water at once.'

/** Hours a coat dries, and coats. Common practice, no source: the label on the tin comes first. */
const finishes: Record<Finishing['kind'], Finishing> = {
  none: {
    kind: 'none',
    onLathe: false,
    coats: 0,
    dryHours: 0,
    why: 'Left bare: the set goes out unfinished.',
  },
  oil: {
    kind: 'oil',
    onLathe: true,
    coats: 2,
    dryHours: 24,
    why: 'Wiped on at a low speed with a pad, never a cloth; a second coat off the lathe.',
    caution: `${RAGS} ${MAKER}`,
  },
  wax: {
    kind: 'wax',
    onLathe: true,
    coats: 1,
    dryHours: 1,
    why: 'Rubbed on and buffed at a low speed with a pad, never a cloth.',
    caution: MAKER,
  },
  polish: {
    kind: 'polish',
    onLathe: true,
    coats: 2,
    dryHours: 1,
    why: 'Friction polish sets with the warmth of the pad: a low speed, a pad and never a cloth.',
    caution: MAKER,
  },
  film: {
    kind: 'film',
    onLathe: false,
    coats: 3,
    dryHours: 6,
    why: 'Brushed or sprayed off the lathe, tenons and mortises masked; it adds to the diameter.',
    caution: `${MAKER} Spray only with extraction and away from any flame.`,
  },
}

/** How the job’s finish goes on: on the lathe or off it, coats, hours between them, and what to mind. */
export const finishingOf = (kind: Finishing['kind']): Finishing => finishes[kind]
