import type { RouteContext } from '../context.ts'
import { draftOf } from '../draft.ts'
import type { OperationDraft } from '../operation.ts'

/** Strips left to spring before they are planed; those sawn wet, and wet ones for slender parts, until they are dry. */
export function restStrips(context: RouteContext): OperationDraft[] {
  const { blank, maxSide, gluedUp, slender, wet, moisture, serviceMoisture, stripsDry: drying } = context
  if (!drying && maxSide === 0 && !gluedUp) return []
  return [
    draftOf('rest-strips', {
      name: drying
        ? `Dry the ${gluedUp ? 'strips' : 'squares'} in stickers`
        : 'Rest the strips in stickers overnight',
      tool: drying ? 'stickers, moisture meter' : 'stickers',
      work: { length: blank.length * blank.layers, count: blank.layers, diameter: blank.sawn },
      why: drying
        ? wet && gluedUp
          ? `Seal the ends; until the wood is near ${serviceMoisture} % it is not glued: layers joined wet shrink each its own way, and the joints open.`
          : wet && slender
            ? `Slender parts stay square until the wood is near ${serviceMoisture} %: rough-turned wet they warp past saving.`
            : `Seal the ends; until the wood is near ${moisture} % it is neither glued nor turned, or joints open and parts go oval.`
        : 'Ripped strips spring; planed the same hour they would not stay straight.',
    }),
  ]
}
