import type { RouteContext } from '../context.ts'
import { draftOf } from '../draft.ts'
import type { OperationDraft } from '../operation.ts'

/** Strips left to spring before they are planed; wet ones for slender parts until they are dry. */
export function restStrips(context: RouteContext): OperationDraft[] {
  const { blank, maxSide, gluedUp, slender, wet, serviceMoisture } = context
  const drying = wet && slender
  if (!drying && maxSide === 0 && !gluedUp) return []
  return [
    draftOf('rest-strips', {
      name: drying ? 'Dry the squares in stickers' : 'Rest the strips in stickers overnight',
      tool: drying ? 'stickers, moisture meter' : 'stickers',
      work: { length: blank.length * blank.layers, count: blank.layers, diameter: blank.sawn },
      why: drying
        ? `Slender parts stay square until the wood is near ${serviceMoisture} %: rough-turned wet they warp past saving.`
        : 'Ripped strips spring; planed the same hour they would not stay straight.',
    }),
  ]
}
