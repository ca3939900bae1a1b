import type { Stand, StandingLeg } from './set-layout.ts'

/** Why the legs stand as they do, and what is only taken for true. */
export function setWords(stands: readonly Stand[]): string {
  const legs = stands.flatMap((stand) => stand.legs)
  if (legs.every(({ heart }) => !heart))
    return 'Glue-ups have rings of their own in every layer: turn the best face out. Faces are lettered as they stand.'
  const assumed = legs.some((leg) => leg.assumed)
    ? ' The heart of some boards is not known and taken to lie under the middle of the face (dashed): look at the foot ends, and turn each leg until its rings run as drawn.'
    : ''
  return `Rings curve around the inside of the stand and mirror each other left and right; where they would not, one leg is turned end for end. The straighter grain looks out at front and back.${assumed}`
}

/**
 * Where a leg stands, in words.
 *
 * @example standText({ row: 'front', side: 'left' }) // 'front left'
 * @example standText({ row: 'back', side: 'middle' }) // 'back, by itself'
 */
export const standText = ({ row, side }: Pick<StandingLeg, 'row' | 'side'>): string =>
  side === 'middle' ? `${row}, by itself` : `${row} ${side}`

/**
 * How the rings of a leg lie to the front, in words.
 *
 * @example frontRings({ rings: 52.1 }) // '52°'
 */
export const frontRings = ({ rings, assumed }: Pick<StandingLeg, 'rings' | 'assumed'>): string =>
  rings === undefined || assumed ? 'not known' : `${Math.round(rings)}°`
