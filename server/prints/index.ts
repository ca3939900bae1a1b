import type { Plan } from '../../shared/plan.ts'
import { caliperCardPdf } from './caliper-card.ts'
import { cutListPdf } from './cut-list.ts'
import { labelsPdf } from './labels.ts'
import { patternPdf } from './pattern.ts'
import type { PrintOptions } from './print.ts'
import { quotePdf } from './quote.ts'
import { workOrderPdf } from './work-order.ts'

export { patternSvg } from './pattern-svg.ts'
export type { PrintOptions } from './print.ts'

const prints = {
  pattern: patternPdf,
  'cut-list': cutListPdf,
  'caliper-card': caliperCardPdf,
  'work-order': workOrderPdf,
  labels: labelsPdf,
  quote: quotePdf,
} satisfies Record<string, (plan: Plan, options: PrintOptions) => Promise<Buffer>>

export type PrintName = keyof typeof prints

/** Everything a plan can be printed as. */
export const printNames = Object.keys(prints) as PrintName[]

/**
 * A print of a plan as a PDF for Letter or A4 paper, lengths in the style asked for. The same plan and options
 * give the same bytes.
 */
export function printPdf(what: PrintName, plan: Plan, options: PrintOptions): Promise<Buffer> {
  return prints[what](plan, options)
}
