import type { Plan } from '../../shared/plan.ts'
import { finishPrint, openPrint, type PrintOptions } from './print.ts'
import { scaleCheck } from './scale-check.ts'

/** A strip to glue on a stick. */
export function storyStickPdf(plan: Plan, options: PrintOptions): Promise<Buffer> {
  return finishPrint(openPrint('Story stick 1:1', plan, options, { layout: 'landscape', foot: scaleCheck }))
}
