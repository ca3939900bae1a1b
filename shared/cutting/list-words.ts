import { type LengthStyle, lengthFigure, lengthText } from '../units/length.ts'
import type { GradeFit } from './board-grade.ts'
import type { YardList } from './yard-list.ts'

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

const unit = (style: LengthStyle): string => (style === 'mm' ? 'mm' : 'in')

/** What every board must be, a line for each, with its name: thickness, width, lengths, sapwood, grain. */
export function demands(list: YardList, style: LengthStyle): [name: string, words: string][] {
  const { stripWidths, sap, grain, oneBoard, surfaced } = list
  const more = stripWidths.slice(1, 5).map(({ width }) => lengthFigure(width, style))
  return [
    [
      'Thickness',
      `${lengthText(list.leastThickness, style)} at least, as it measures ${surfaced ? 'surfaced' : 'rough'}`,
    ],
    [
      'Width',
      `${lengthText(list.leastWidth, style)} at least${more.length > 0 ? `; a strip more from ${more.join(', ')} ${unit(style)}` : ''}`,
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

/** How the cuttings a grade promises suit the largest blank, in words. */
export const fitWords = (fit: GradeFit): string => fits[fit]
