import type { Plan } from '../../shared/plan.ts'
import { badInput } from '../../shared/problem.ts'
import { caliperCardPdf } from './caliper-card.ts'
import { cutListPdf } from './cut-list.ts'
import { gaugesPdf } from './gauges.ts'
import { labelsPdf } from './labels.ts'
import { isRoll } from './paper.ts'
import { patternPdf } from './pattern.ts'
import type { PrintOptions } from './print.ts'
import { quotePdf } from './quote.ts'
import { storyStickPdf } from './story-stick.ts'
import { workOrderPdf } from './work-order.ts'

export { type PaperAsked, paperOf, papers } from './paper.ts'
export { patternSvg } from './pattern-svg.ts'
export type { PrintOptions } from './print.ts'
export { yardListPdf } from './yard-list.ts'

const prints = {
  pattern: patternPdf,
  'story-stick': storyStickPdf,
  'cut-list': cutListPdf,
  'caliper-card': caliperCardPdf,
  gauges: gaugesPdf,
  'work-order': workOrderPdf,
  labels: labelsPdf,
  quote: quotePdf,
} satisfies Record<string, (plan: Plan, options: PrintOptions) => Promise<Buffer>>

export type PrintName = keyof typeof prints

/** Everything a plan can be printed as. */
export const printNames = Object.keys(prints) as PrintName[]

/** What is drawn at true size, and so goes on a roll as well. */
const onRoll: PrintName[] = ['pattern', 'story-stick', 'gauges']

/**
 * A print of a plan as a PDF for the paper asked for, lengths in the style asked for. The same plan and options
 * give the same bytes.
 * @throws Problem `bad-input` when a roll is asked for what goes on sheets only
 */
export async function printPdf(what: PrintName, plan: Plan, options: PrintOptions): Promise<Buffer> {
  if (isRoll(options.paper) && !onRoll.includes(what)) {
    const message = `must be letter or a4 for ${what}; a roll takes ${onRoll.join(', ')}; read "roll"`
    throw badInput([{ path: 'paper', message }])
  }
  return prints[what](plan, options)
}
