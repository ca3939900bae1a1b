import { type LengthStyle, MM_PER_INCH } from '../../../shared/units/length.ts'
import { unitOf } from '../../prints/figures.ts'

/** A difference, finer than a rule shows: to 0.01 mm or 0.001 in, without its unit. */
export function fineFigure(mm: number, style: LengthStyle): string {
  const figure = style === 'mm' ? mm.toFixed(2) : (mm / MM_PER_INCH).toFixed(3)
  return Number(figure) === 0 ? figure.replace('-', '') : figure
}

/** A difference with its unit: `-0.23 mm`, `0.009 in`. */
export const fineText = (mm: number, style: LengthStyle): string =>
  `${fineFigure(mm, style)} ${unitOf(style)}`
