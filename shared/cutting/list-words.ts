import { edgeSurfacedWidth } from '../blank/dressed-sizes.ts'
import { inches, type LengthStyle, lengthFigure, lengthText, nm, roundedUpMm } from '../units/length.ts'
import type { GradeFit } from './board-grade.ts'
import type { GradeChoice, YardList } from './yard-list.ts'
import type { YardService } from './yard-terms.ts'

const dryWords = { kiln: 'kiln dried', air: 'air dried', green: 'green' } as const
const grainWords = {
  any: 'any sound grain',
  straight: 'straight grain, slope under 1 in 15',
  rift: 'rift: rings about 45° to the faces, as near the edges of flat-sawn boards',
} as const

/** What the lumber is called at the yard: `8/4, FAS, kiln dried, rough`. */
export const sortWords = ({ nominal, softwood, gradeName, dryness, surfaced }: YardList): string =>
  [nominal, softwood ? 'clear' : gradeName, dryWords[dryness], surfaced ? 'surfaced two sides' : 'rough']
    .filter((word) => word !== undefined)
    .join(', ')

/**
 * A least size as a rule at the yard reads it, mm: up to a whole sixteenth of an inch, or a whole millimetre.
 *
 * @example yardSize(37, 'fraction') // 38.1
 * @example yardSize(37.2, 'mm') // 38
 */
export const yardSize = (mm: number, style: LengthStyle): number =>
  roundedUpMm(mm, style === 'mm' ? 1 : inches(1 / 16))

const unit = (style: LengthStyle): string => (style === 'mm' ? 'mm' : 'in')

/** What every board must be, a line for each, with its name: thickness, width, lengths, sapwood, grain. */
export function demands(list: YardList, style: LengthStyle): [name: string, words: string][] {
  const { stripWidths, sap, grain, oneBoard, surfaced } = list
  const more = stripWidths.slice(1, 5).map(({ width }) => lengthFigure(yardSize(width, style), style))
  return [
    [
      'Thickness',
      `${lengthText(yardSize(list.leastThickness, style), style)} at least, as it measures ${surfaced ? 'surfaced' : 'rough'}`,
    ],
    [
      'Width',
      `${lengthText(yardSize(list.leastWidth, style), style)} at least${more.length > 0 ? `; a strip more from ${more.join(', ')} ${unit(style)}` : ''}${surfaced ? edgeSurfaced(list.leastWidth, style) : ''}`,
    ],
    ['Sapwood', sap === 'none' ? 'none: heartwood only' : 'allowed'],
    ['Grain', grainWords[grain]],
    ['From', oneBoard ? 'one board for all' : 'one board or one log where it can be had'],
  ]
}

const fits: Record<GradeFit, string> = {
  all: 'every least cutting holds the blank',
  some: 'only the longer of its least cuttings hold the blank',
  none: 'its least cuttings are too small for the blank: look for longer ones',
}

/** What a grade promises and how that suits the largest blank, in words. */
export function gradeWords({ fit, promise }: Pick<GradeChoice, 'fit' | 'promise'>): string {
  if (!promise) return fits[fit]
  const { surfaceMeasure, units, cuts } = promise
  const within = cuts === undefined ? '' : ` in ${cuts} ${cuts === 1 ? 'cutting' : 'cuttings'} at most`
  return `of a board of ${surfaceMeasure} sq ft ${units} of ${12 * surfaceMeasure} units clear${within}; ${fits[fit]}`
}

/** Widths boards are sold by, whole inches. */
const WIDTHS = Array.from({ length: 23 }, (_, i) => i + 2)

/** The width to ask for where the edges are surfaced too; nothing where no board would be wide enough. */
function edgeSurfaced(width: number, style: LengthStyle): string {
  const nominal = WIDTHS.find((each) => nm(edgeSurfacedWidth(inches(each))) >= nm(width))
  return nominal === undefined
    ? ''
    : `; with surfaced edges ask for ${nominal} in, which measures ${lengthText(edgeSurfacedWidth(inches(nominal)), style)}`
}

const perWords = {
  'board-foot': 'a board foot',
  board: 'a board',
  foot: 'a foot',
  order: 'an order',
} as const

/** What a service costs, in words; `money` writes an amount in currency units. */
export const serviceWords = (
  { name, per, price, cost }: YardService & { cost?: number },
  money: (amount: number) => string,
): string => `${name}: ${money(price)} ${perWords[per]}${cost === undefined ? '' : `, about ${money(cost)}`}`
