import type { RouteContext } from '../context.ts'
import { draftOf } from '../draft.ts'
import type { OperationDraft } from '../operation.ts'

const grainWords = {
  any: 'straight grain, never with the pith',
  rift: 'rings about 45° to the faces, all from one board',
  straight: 'grain that runs out less than 1 in 15',
}

/** Strips ripped to the sawn size of the blank; one for each layer of a glue-up. */
export function rip(context: RouteContext): OperationDraft[] {
  const { blank, grain, slender, text } = context
  return [
    draftOf('rip', {
      name: `Rip strips ${text(blank.sawn)} wide`,
      tool: 'table saw or band saw',
      work: { length: blank.length * blank.layers, count: blank.layers, diameter: blank.sawn },
      why: `Choose ${grainWords[slender && grain === 'any' ? 'straight' : grain]}; defects are cut round now, not found at the lathe.`,
      cautions: ['Guard and riving knife on; push sticks for narrow strips.'],
    }),
  ]
}
