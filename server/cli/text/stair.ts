import type { Plan } from '../../../shared/plan.ts'
import type { LengthStyle } from '../../../shared/units/length.ts'
import { stairFigures, stairHeading } from '../../prints/stair-figures.ts'
import { heading, pairs, paragraph } from './page.ts'

/** Spacing, count and bending of stair parts, with what is to be minded right beside them; nothing for other work. */
export function stairLines({ stair }: Plan, style: LengthStyle): string[] {
  if (!stair) return []
  return [
    ...heading(stairHeading(stair)),
    ...pairs(stairFigures(stair, style)),
    ...stair.cautions.flatMap((text) => paragraph(text, { lead: '  ! ' })),
  ]
}
